import type { CheckRule } from "../../worksheet/contract.ts"
import { type Asked, type Finding, found } from "../finding.ts"
import { ladderOf, recordingOf } from "../ladders.ts"
import { capital, seconds, spoken } from "../quantity.ts"
import { type Track, trackOf } from "../track.ts"
import { acts } from "./activity.ts"
import { massOf } from "./mass.ts"
import { within } from "./system.ts"

type StepperRule = Extract<CheckRule, { kind: "stepper" }>

/**
 * What is left of Δr − p Δt / m may be at most this part of |Δp| Δt / m. The momentum of the step's other end leaves all
 * of it, the mean of both a half.
 */
const allowedPart = 0.1

/**
 * Each step moves the position by the momentum of its end (momentum first) or of its start (position first): both
 * go to the same limit, so this is asked only where the author asks for one. Read from the recorded steps; the
 * mass is the one that the motion itself tells.
 */
export function stepper({ check, student, reference }: Asked, { order, body }: StepperRule): Finding {
  const recording = recordingOf(student, check.cell)
  const position = trackOf(recording, `${body}.position`)
  const momentum = trackOf(recording, `${body}.momentum`)
  if (position === null || momentum === null) {
    const lost = `${body}.${position === null ? "position" : "momentum"}`
    return found({
      met: false,
      departsAt: 0,
      wrong: `Your program does not record ${spoken(lost).name}.`,
      look: "See whether the line with record is reached.",
    })
  }
  const theirs = ladderOf(reference, check.cell, `${body}.momentum`)?.tracks[0] ?? null
  const known = massOf(position, momentum)
  if (known === null || !acts(momentum, theirs))
    return found({
      met: false,
      departsAt: position.times[0]!,
      wrong: `${capital(spoken(`${body}.momentum`).name)} never changes, so its steps show no order.`,
      look: "On the bench, look for the force arrow that should act.",
    })
  const wanted = leftOver(position, momentum, order === "momentum first" ? 1 : 0, known.mass)
  const ratio = wanted.part / allowedPart
  if (ratio <= 1)
    return found({
      met: true,
      right:
        order === "momentum first"
          ? `In each step the new momentum moves the position of ${body}.`
          : `In each step the momentum from before the step moves the position of ${body}.`,
      ratio,
    })
  const other = leftOver(position, momentum, order === "momentum first" ? 0 : 1, known.mass)
  const seen =
    other.part > allowedPart
      ? "with neither the momentum before the step nor the one after it"
      : order === "momentum first"
        ? "with the momentum from before the step"
        : "with the momentum after the step"
  return found({
    met: false,
    departsAt: wanted.worstAt,
    wrong: `The position of ${body} moves ${seen}; this sheet asks for ${order}.`,
    look: `On the bench, go to ${seconds(wanted.worstAt)} and take single steps: which momentum arrow does the move follow?`,
    slip: order === "momentum first" && other.part <= allowedPart ? "old-momentum" : null,
    ratio,
  })
}

/** Root mean square of Δr − p Δt / m over that of Δp Δt / m, and the step where it is largest. */
function leftOver(
  position: Track,
  momentum: Track,
  share: number,
  mass: number,
): { part: number; worstAt: number } {
  let left = 0
  let change = 0
  let worst = 0
  let worstAt = position.times[0]!
  for (let i = 0; i < position.times.length - 1; i++) {
    const dt = position.times[i + 1]! - position.times[i]!
    let here = 0
    for (let k = 0; k < 3; k++) {
      const at = i * 3 + k
      const moved = position.values[at + 3]! - position.values[at]!
      here += (moved - (within(momentum.values, i, k, share) * dt) / mass) ** 2
      change += (((momentum.values[at + 3]! - momentum.values[at]!) * dt) / mass) ** 2
    }
    left += here
    if (here > worst) {
      worst = here
      worstAt = position.times[i + 1]!
    }
  }
  return { part: change > 0 ? Math.sqrt(left / change) : 0, worstAt }
}
