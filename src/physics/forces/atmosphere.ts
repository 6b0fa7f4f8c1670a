// biome-ignore-all lint/complexity/noArguments: the number of arguments is what is checked here
import { checkedRange, wrongCount } from "../check.ts"
import { math } from "../math.ts"

/** Layers of the standard: geopotential altitude of the base, m; temperature there, K; its change, K/m. */
const layers = [
  { base: 0, temperature: 288.15, lapse: -0.0065 },
  { base: 11000, temperature: 216.65, lapse: 0 },
  { base: 20000, temperature: 216.65, lapse: 0.001 },
  { base: 32000, temperature: 228.65, lapse: 0.0028 },
  { base: 47000, temperature: 270.65, lapse: 0 },
  { base: 51000, temperature: 270.65, lapse: -0.0028 },
  { base: 71000, temperature: 214.65, lapse: -0.002 },
] as const

const seaLevelPressure = 101325
/** The gas constant of that standard, J kmol⁻¹ K⁻¹: not today's CODATA value. */
const gasConstant = 8314.32
const molarMass = 28.9644
const gravity = 9.80665
/** The radius that turns a height above the ground into geopotential altitude, m. */
const effectiveEarthRadius = 6356766

/**
 * The density of air at a height in the standard atmosphere: layers of constant temperature gradient in hydrostatic balance.
 *
 * @param height above sea level, m, from −1000 to 80000
 * @returns ρ in kg/m³
 * @throws out-of-range, not-a-number, not-finite, wrong-argument-count
 * @source U.S. Standard Atmosphere, 1976
 * @example
 * airDensity(0).toFixed(4) // "1.2250"
 */
export function airDensity(height: number): number {
  if (arguments.length > 1) wrongCount("airDensity", 1, arguments.length)
  const z = checkedRange(height, "height", -1000, 80000)
  const h = (effectiveEarthRadius * z) / (effectiveEarthRadius + z)
  const hydrostatic = (gravity * molarMass) / gasConstant
  let pressure = seaLevelPressure
  for (let i = 0; ; i++) {
    const { base, temperature, lapse } = layers[i]!
    const next = layers[i + 1]
    const top = next === undefined || h < next.base ? h : next.base
    const rise = top - base
    const t = temperature + lapse * rise
    pressure *=
      lapse === 0
        ? math.exp((-hydrostatic * rise) / temperature)
        : math.pow(temperature / t, hydrostatic / lapse)
    if (top === h) return (pressure * molarMass) / (gasConstant * t)
  }
}
