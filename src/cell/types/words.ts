import type { PhysicsProblemCode } from "../../physics/problem.ts"
import type { CellProblemCode } from "../problems.ts"

/** What is wrong and what to do about it, without a place. */
export interface Words {
  readonly code: CellProblemCode | PhysicsProblemCode | "number-for-vector"
  readonly text: string
  readonly todo: string
}

export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)

/** Code in a sentence: as typed while it is short, else nothing. */
export const quoted = (code: string, longest = 40): string =>
  code !== "" && code.length <= longest ? code : ""

/** What a sentence begins with: code as typed, since p and P are not the same, or words for it. */
export const subject = (code: string, otherwise: string): string => quoted(code) || capital(otherwise)

/** "speed is a number", or "this is a number" where the code is too long to be named. */
export const isWhat = (code: string, kind: string): string => `${quoted(code) || "this"} is ${kind}`
