export const unitProblemCodes = ["unknown-unit", "unreadable-unit", "ambiguous-unit"] as const

/** Why a text is no unit, in words for whoever wrote it. */
export interface UnitFailure {
  readonly ok: false
  readonly code: (typeof unitProblemCodes)[number]
  readonly text: string
  readonly todo: string
  /** the unit that was most likely meant; null if none is near */
  readonly near: string | null
}

export const fail = (
  code: UnitFailure["code"],
  text: string,
  todo: string,
  near: string | null = null,
): UnitFailure => ({ ok: false, code, text, todo, near })
