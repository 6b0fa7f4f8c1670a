/** Answers as students write them; blanks that are not named hold the author's own. All invented. */
export interface Corpus {
  readonly worksheet: string
  readonly right: readonly RightAnswer[]
  readonly wrong: readonly WrongAnswer[]
}

export interface RightAnswer {
  readonly how: string
  readonly answers: Readonly<Record<string, string>>
}

export interface WrongAnswer {
  readonly how: string
  readonly answers: Readonly<Record<string, string>>
  /** names of the slip that fit; empty for a fault that the catalogue does not hold, where none may be named */
  readonly slips: readonly string[]
}

export const right = (how: string, answers: RightAnswer["answers"]): RightAnswer => ({ how, answers })

/** A slip of the catalogue, written in a student's own way. */
export const slip = (
  name: string | readonly string[],
  how: string,
  answers: WrongAnswer["answers"],
): WrongAnswer => ({
  how,
  answers,
  slips: typeof name === "string" ? [name] : name,
})

/** A fault that the catalogue does not hold. */
export const fault = (how: string, answers: WrongAnswer["answers"]): WrongAnswer => ({
  how,
  answers,
  slips: [],
})
