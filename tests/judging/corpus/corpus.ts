/** Answers as students write them; blanks that are not named hold the author's own. All invented. */
export interface Corpus {
  readonly worksheet: string
  readonly right: readonly RightAnswer[]
  readonly wrong: readonly WrongAnswer[]
}

export interface RightAnswer {
  readonly how: string
  readonly answers: Readonly<Record<string, string>>
  /** answers to questions, marked with the checks; questions that are not named are answered rightly and left out */
  readonly questions?: QuestionAnswers
}

export type QuestionAnswers = Readonly<Record<string, string | number | null>>

export interface WrongAnswer extends RightAnswer {
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

/** The author's program with some questions answered in a student's own way. */
export const rightlyAnswered = (how: string, questions: QuestionAnswers): RightAnswer => ({
  how,
  answers: {},
  questions,
})

export const wronglyAnswered = (how: string, questions: QuestionAnswers): WrongAnswer => ({
  ...rightlyAnswered(how, questions),
  slips: [],
})
