/** What an operator was handed that makes no sense in mechanics. Each code has a page in public/problems. */
export const operatorProblemCodes = [
  "number-and-vector",
  "number-over-vector",
  "vector-and-other",
  "vector-component-set",
  "vector-over-vector",
  "vector-over-zero",
  "vector-power",
  "vector-times-vector",
] as const

export type OperatorProblemCode = (typeof operatorProblemCodes)[number]

/** Thrown by an operator: what was wrong and what to do, in words of mechanics. */
export class OperatorError extends Error {
  readonly code: OperatorProblemCode
  readonly text: string
  readonly todo: string

  constructor(code: OperatorProblemCode, text: string, todo: string) {
    super(`${text} ${todo}`)
    this.name = "OperatorError"
    this.code = code
    this.text = text
    this.todo = todo
  }
}
