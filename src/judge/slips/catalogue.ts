import { comparisonTurned, floorPulls, frictionWithoutContact, springWithoutRestLength } from "./contact.ts"
import { frictionAlongVelocity, frictionFromWeight } from "./friction.ts"
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
  magnitudeForVector,
  directionMissing,
  signTurned,
  comparisonTurned,
  termMissing,
  factorMissing,
  factorLost,
]

export const slipNamed = (name: string): Slip | undefined => catalogue.find(slip => slip.name === name)
