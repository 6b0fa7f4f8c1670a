/** What a caller can hand over that makes no sense in mechanics. Each code has a page in public/problems. */
export const physicsProblemCodes = [
  "missing-option",
  "not-a-force-law",
  "not-a-list",
  "not-a-number",
  "not-a-vector",
  "not-finite",
  "not-positive",
  "out-of-range",
  "too-many-steps",
  "unknown-choice",
  "unknown-option",
  "vector-as-number",
  "wrong-argument-count",
  "zero-length",
] as const

export type PhysicsProblemCode = (typeof physicsProblemCodes)[number]

/**
 * The one kind of error that the physics library throws: a stable code, what was wrong, what to do about it,
 * and the value that was handed over. `message` joins text and todo.
 */
export class PhysicsError extends Error {
  readonly code: PhysicsProblemCode
  readonly text: string
  readonly todo: string
  readonly value: unknown

  constructor(code: PhysicsProblemCode, text: string, todo: string, value?: unknown) {
    super(`${text} ${todo}`)
    this.name = "PhysicsError"
    this.code = code
    this.text = text
    this.todo = todo
    this.value = value
  }
}
