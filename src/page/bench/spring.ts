import { round } from "./arrows.ts"

/** A spring at rest has a turn about every so many px, within these bounds; pressed, it keeps its turns and brings them closer. */
const restPitch = 9
const fewestTurns = 4
const mostTurns = 12
/** straight ends, px */
const lead = 8

/** A spring as mechanics drawings have it: straight ends, and a zigzag of equal turns, `amplitude` px to either side. `restLength` in px. */
export function springPath(
  from: readonly [number, number],
  to: readonly [number, number],
  restLength: number,
  amplitude = 7,
): string {
  const turns = Math.min(mostTurns, Math.max(fewestTurns, Math.round(restLength / restPitch)))
  const length = Math.hypot(to[0] - from[0], to[1] - from[1])
  if (length < 1) return `M${round(from[0])} ${round(from[1])}L${round(to[0])} ${round(to[1])}`
  const [ux, uy] = [(to[0] - from[0]) / length, (to[1] - from[1]) / length]
  const straight = Math.min(lead, length / 4)
  const pitch = (length - 2 * straight) / turns
  const point = (s: number, n: number) =>
    `${round(from[0] + ux * s - uy * n)} ${round(from[1] + uy * s + ux * n)}`
  const parts = [`M${point(0, 0)}L${point(straight, 0)}`]
  for (let k = 0; k < turns; k++) {
    parts.push(`L${point(straight + (k + 0.25) * pitch, amplitude)}`)
    parts.push(`L${point(straight + (k + 0.75) * pitch, -amplitude)}`)
  }
  parts.push(`L${point(length - straight, 0)}L${point(length, 0)}`)
  return parts.join("")
}
