// biome-ignore-all lint/complexity/noArguments: the number of arguments is what is checked here
import { checkedAmount, checkedOptions, checkedPositive, checkedRange, wrongCount } from "../check.ts"
import { math } from "../math.ts"

export interface RestitutionOptions {
  /** k of the contact, N/m, > 0 */
  readonly stiffness: number
  /** m in kg, > 0; for two bodies their reduced mass */
  readonly mass: number
  /** c of the contact, N s/m, ≥ 0 */
  readonly dampingCoefficient: number
}

export interface ContactDampingOptions {
  /** e wanted, without unit, > 0 and ≤ 1 */
  readonly restitution: number
  /** k of the contact, N/m, > 0 */
  readonly stiffness: number
  /** m in kg, > 0; for two bodies their reduced mass */
  readonly mass: number
}

/**
 * The coefficient of restitution of a damped contact that only pushes, without gravity:
 * e = exp(−2 ζ arccos ζ / √(1 − ζ²)) with ζ = c / (2 √(k m)); exp(−2) at ζ = 1; beyond it arcosh ζ / √(ζ² − 1)
 * takes the place of the quotient. A contact that could also pull would return less (0.527 in place of 0.572 at ζ = 0.2).
 *
 * @param options stiffness, mass, dampingCoefficient
 * @returns e = speed after over speed before, 0 to 1
 * @throws not-positive, out-of-range, missing-option, unknown-option, not-a-number, not-finite, wrong-argument-count
 * @source T. Schwager and T. Pöschel, Granular Matter 9, 465 (2007), arXiv:0708.1434, its branches in one form
 * @example
 * contactRestitution({ stiffness: 100, mass: 1, dampingCoefficient: 20 }) // 0.1353352832366127
 */
export function contactRestitution(options: RestitutionOptions): number {
  if (arguments.length > 1) wrongCount("contactRestitution", 1, arguments.length)
  checkedOptions(options, "contactRestitution", { stiffness: "", mass: "", dampingCoefficient: "" })
  const k = checkedPositive(options.stiffness, "stiffness")
  const m = checkedPositive(options.mass, "mass")
  const c = checkedAmount(options.dampingCoefficient, "dampingCoefficient")
  return math.exp(-logarithmicLoss(c / (2 * Math.sqrt(k * m))))
}

/**
 * The damping coefficient that gives a contact a wanted restitution: the inverse of contactRestitution.
 *
 * @param options restitution, stiffness, mass
 * @returns c in N s/m, for dampingCoefficient of a contact
 * @throws not-positive, out-of-range, missing-option, unknown-option, not-a-number, not-finite, wrong-argument-count
 * @source T. Schwager and T. Pöschel, Granular Matter 9, 465 (2007), arXiv:0708.1434, solved by bisection
 * @example
 * contactDamping({ restitution: 1, stiffness: 100, mass: 1 }) // 0
 */
export function contactDamping(options: ContactDampingOptions): number {
  if (arguments.length > 1) wrongCount("contactDamping", 1, arguments.length)
  checkedOptions(options, "contactDamping", { restitution: "", stiffness: "", mass: "" })
  const e = checkedRange(options.restitution, "restitution", 1e-6, 1)
  const k = checkedPositive(options.stiffness, "stiffness")
  const m = checkedPositive(options.mass, "mass")
  const wanted = -math.log(e)
  let low = 0
  let high = 1
  while (logarithmicLoss(high) < wanted) high *= 2
  for (let i = 0; i < 200; i++) {
    const middle = 0.5 * (low + high)
    if (middle === low || middle === high) break
    if (logarithmicLoss(middle) < wanted) low = middle
    else high = middle
  }
  return e === 1 ? 0 : 2 * high * Math.sqrt(k * m)
}

/** −ln e as a function of the damping ratio; close to ζ = 1 the series of both branches, which loses no digits. */
function logarithmicLoss(zeta: number): number {
  const d = 1 - zeta
  if (Math.abs(d) < 1e-5) return 2 * zeta * (1 + d / 3 + (2 / 15) * d * d)
  const root = Math.sqrt(Math.abs(d * (1 + zeta)))
  return (2 * zeta * (zeta < 1 ? math.acos(zeta) : math.acosh(zeta))) / root
}
