import { comparisonTurned, floorPulls, frictionWithoutContact, springWithoutRestLength } from "./contact.ts"
import { frictionAlongVelocity, frictionFromWeight } from "./friction.ts"
import { pairHint, partsOf } from "./pair-words.ts"
import { damperSignTurned, frictionWithMotion, signTurned, springSignTurned } from "./signs.ts"
import type { Slip } from "./slip.ts"
import {
  forceMovesPosition,
  massInverted,
  massMissing,
  momentumNotUpdated,
  momentumOverwritten,
  oldMomentum,
  positionNotUpdated,
  positionOverwritten,
  timeStepMissing,
  timeStepTwice,
  updateOutsideLoop,
} from "./stepping.ts"
import {
  factorLost,
  factorMissing,
  forceMissing,
  onlyLastForce,
  secondBodyForgotten,
  termMissing,
  thirdLawForgotten,
} from "./sums.ts"
import {
  componentsSwapped,
  crossProductTurned,
  degreesForRadians,
  directionMissing,
  magnitudeForVector,
} from "./vectors.ts"

/** Common mistakes, the more particular before the more general: of two that make the same motion the first is named. */
export const catalogue: readonly Slip[] = [
  timeStepMissing,
  timeStepTwice,
  momentumOverwritten,
  positionOverwritten,
  oldMomentum,
  updateOutsideLoop,
  thirdLawForgotten,
  secondBodyForgotten,
  positionNotUpdated,
  momentumNotUpdated,
  forceMovesPosition,
  springWithoutRestLength,
  springSignTurned,
  damperSignTurned,
  frictionWithMotion,
  frictionAlongVelocity,
  frictionWithoutContact,
  frictionFromWeight,
  floorPulls,
  onlyLastForce,
  forceMissing,
  massMissing,
  massInverted,
  crossProductTurned,
  degreesForRadians,
  componentsSwapped,
  signTurned,
  magnitudeForVector,
  directionMissing,
  comparisonTurned,
  termMissing,
  factorMissing,
  factorLost,
]

/** A slip by its name; of two at once, "sign-turned + mass-missing", both in one. */
export function slipNamed(name: string): Slip | undefined {
  const [first, second] = partsOf(name).map(part => catalogue.find(slip => slip.name === part))
  if (first === undefined || partsOf(name).length === 1) return first
  if (second === undefined) return undefined
  return {
    name,
    hint: pairHint(first.hint, second.hint),
    teacher:
      first === second ? `Twice: ${first.teacher}` : `Two slips at once. ${first.teacher} ${second.teacher}`,
    make: () => [],
  }
}
