import { lineAt, placeOf } from "./assemble.ts"
import type { Compiled } from "./contract.ts"
import { knownNames } from "./names.ts"
import { nearestName } from "./nearest-name.ts"
import { dottedName } from "./paper-signs.ts"
import type { Problem } from "./problem.ts"
import type { CellProblemCode } from "./problems.ts"
import { notFiniteProblem } from "./trouble/not-finite.ts"
import { type Motion, overshootOf, timeStepProblem } from "./trouble/time-step.ts"
import type { NotFinite } from "./trouble/tracer.ts"

interface Words {
  readonly code: CellProblemCode
  readonly text: string
  readonly todo: string
}

/** What else a run leaves behind that can tell why it failed. */
export interface Evidence {
  /** of the tracing run */
  readonly notFinite?: NotFinite | undefined
  readonly recordings?: readonly Motion[]
}

/**
 * Whatever ended a program, in words a student can act on. Errors of the library, of the operators and stops of the
 * run bring their own words; what the language itself throws is told by its kind and by the place, not by its stack.
 * NaN and infinity are told where they first came up, a time step that is too long by the motion it makes, an endless loop by
 * its condition.
 *
 * @param error what was thrown, of any kind
 * @param lastSite the site that the program noted last; undefined where none is known
 */
export function explainFailure(
  error: unknown,
  compiled: Compiled,
  lastSite: number | undefined,
  evidence: Evidence = {},
): Problem {
  const stretch = lastSite === undefined ? undefined : compiled.sites[lastSite]
  const source = stretch ? compiled.program.text.slice(stretch.from, stretch.to) : ""
  const where = stretch
    ? { where: placeOf(compiled.program, stretch.from, stretch.to), ...excerptAt(compiled, stretch.from) }
    : {}
  const own = ownWords(error)
  const words = own ?? languageWords(error, compiled, source)
  // where in its round a recursion meets the end of the stack is chance: its region is named, not its spot
  if (words.code === deep.code && stretch) {
    const at = regionStart(compiled.program, stretch.from)
    return { ...words, where: placeOf(compiled.program, at, at), ...excerptAt(compiled, at) }
  }
  if (own === null) return { ...words, ...where }
  const placed = { ...where, ...own, ...(own.where || !stretch ? {} : where) }
  if (own.code === "endless-loop") return { ...placed, ...stretch?.endless }
  const found = evidence.notFinite && notFiniteProblem(placed, compiled, evidence.notFinite)
  if (!found) return placed
  const overshoot = evidence.recordings?.map(overshootOf).find(o => o !== null)
  return overshoot ? { ...found, ...timeStepProblem(overshoot) } : found
}

/** The first sign of the blank that an offset lies in, else of its cell. */
function regionStart({ text, blanks, cells }: Compiled["program"], offset: number): number {
  const region = [...blanks, ...cells].find(({ from, to }) => from <= offset && offset <= to)
  if (region === undefined) return offset
  const first = text.slice(region.from, region.to).search(/\S/)
  return region.from + Math.max(first, 0)
}

function excerptAt({ program }: Compiled, offset: number): { excerpt?: string } {
  const excerpt = lineAt(program.text, offset).slice(0, 200)
  return excerpt === "" ? {} : { excerpt }
}

/** A problem that the error carries: a stop of the run as a whole, an error of the library as code, text and todo. */
function ownWords(error: unknown): Problem | null {
  if (typeof error !== "object" || error === null) return null
  const carried = (error as { problem?: unknown }).problem
  if (isWorded(carried)) return { ...carried }
  return isWorded(error) ? { code: error.code, text: error.text, todo: error.todo } : null
}

function isWorded(value: unknown): value is Problem {
  if (typeof value !== "object" || value === null) return false
  const { code, text, todo } = value as Record<string, unknown>
  return (
    typeof code === "string" &&
    /^[a-z][a-z-]*$/.test(code) &&
    typeof text === "string" &&
    typeof todo === "string"
  )
}

function languageWords(error: unknown, compiled: Compiled, source: string): Words {
  if (!(error instanceof Error)) return thrownValue(error)
  const message = String(error.message)
  switch (error.name) {
    case "ReferenceError":
      return missingName(message, compiled, source)
    case "TypeError":
      return wrongKind(message, source)
    case "RangeError":
      return outOfRange(message)
    case "InternalError":
      return deep
    case "SyntaxError":
      return {
        code: "program-error",
        text: `A text could not be read: ${short(message)}.`,
        todo: "Check the text that is given to JSON, RegExp or BigInt here.",
      }
    default:
      return {
        code: "program-error",
        text: `The program stopped itself: ${short(message) || error.name}.`,
        todo: "The message was written in the program; look at the throw that made it.",
      }
  }
}

function thrownValue(value: unknown): Words {
  const what =
    typeof value === "string"
      ? `the text "${short(value)}"`
      : typeof value === "object" && value !== null
        ? "an object"
        : typeof value === "function"
          ? "a function"
          : String(value)
  return {
    code: "thrown-value",
    text: `The program stopped itself: it threw ${what}.`,
    todo: 'To stop with a message, throw new Error("what is wrong").',
  }
}

/** Engines word it differently; each puts the name into the message, in quotes or first. */
function missingName(message: string, { program }: Compiled, source: string): Words {
  const name =
    /['"‘“]([\p{ID_Start}_$][\p{ID_Continue}$]*)['"’”]/u.exec(message)?.[1] ??
    /variable:? ([\p{ID_Start}_$][\p{ID_Continue}$]*)/u.exec(message)?.[1] ??
    /^([\p{ID_Start}_$][\p{ID_Continue}$]*) is not defined/u.exec(message)?.[1] ??
    /^[\p{ID_Start}_$][\p{ID_Continue}$]*$/u.exec(source)?.[0]
  if (/initiali[sz]|uninitiali[sz]|lexical/i.test(message)) {
    return {
      code: "used-before-made",
      text:
        name === undefined
          ? "A name is used before it is made."
          : `${plain(name)} is used before it is made.`,
      todo: "Move the line that makes it further up. If it was made before this line already, leave out let or const here.",
    }
  }
  if (name === undefined) {
    return {
      code: "unknown-name",
      text: "A name is used that nothing here makes.",
      todo: "Check its spelling, or make it with let or const.",
    }
  }
  const dotted = dottedName(name)
  if (dotted) return { code: "unknown-name", ...dotted }
  // parts after a dot are no names of their own
  const made = new Set(
    [...program.text.matchAll(/(?<![.\p{ID_Continue}$])[\p{ID_Start}_$][\p{ID_Continue}$]*/gu)].map(
      m => m[0],
    ),
  )
  made.delete(name)
  const near = ofMath(name) ?? nearestName(name, [...made, ...knownNames, ...program.parameters])
  return {
    code: "unknown-name",
    text: `Nothing here is called ${name}.`,
    todo: near === null ? `Check its spelling, or make it first: const ${name} = …` : `Did you mean ${near}?`,
  }
}

/** `sqrt`, `pi`: what mathematics calls so stands in Math. */
function ofMath(name: string): string | null {
  if (name === "π") return "Math.PI"
  const member = Object.getOwnPropertyNames(Math).find(
    one => one === name || (one.length > 1 && one.toLowerCase() === name.toLowerCase()),
  )
  return member === undefined ? null : `Math.${member}`
}

const plain = (name: string): string => name.replace(/^ds\$+/, "").replace(/\$[xyz]$/, "")

function wrongKind(message: string, source: string): Words {
  if (/constant|read[- ]?only|readonly|Attempted to assign/i.test(message)) {
    return {
      code: "constant-changed",
      text: "A const keeps the value it was made with, and this gives it another.",
      todo: "Make it with let if it is to change. To ask whether two values are equal, write === in place of =.",
    }
  }
  if (/not a function|is not callable|not a constructor/i.test(message)) {
    return {
      code: "not-a-function",
      text:
        source === ""
          ? "Something is called that is no function."
          : `This calls something that is no function: ${short(source)}`,
      todo: "Check the name before the bracket; for a product write the * sign.",
    }
  }
  if (/undefined|null/i.test(message)) {
    return {
      code: "no-such-property",
      text:
        source === ""
          ? "A part is asked of something that has no value."
          : `A part is asked of something that has no value: ${short(source)}`,
      todo: "Check the spelling of the part before the dot, and that it was given a value.",
    }
  }
  return {
    code: "program-error",
    text: `This does not work with these values: ${short(message)}.`,
    todo: "Print the values that this line uses and check what each of them is.",
  }
}

/** A function that calls itself until the stack is full. */
export const deep: Words = {
  code: "too-deep",
  text: "A function calls itself again and again without coming to an end.",
  todo: "Give it a case in which it returns without calling itself.",
}

function outOfRange(message: string): Words {
  if (/call stack|recursion|stack size/i.test(message)) return deep
  if (/length|size|allocation|count/i.test(message)) {
    return {
      code: "too-large",
      text: "A list or a text was to become larger than there is room for.",
      todo: "Check the number that gives its length.",
    }
  }
  return {
    code: "program-error",
    text: `A number lies outside what is allowed here: ${short(message)}.`,
    todo: "Check the numbers that this line uses.",
  }
}

const short = (text: string): string => {
  const line = text.replace(/\s+/g, " ").trim().replace(/\.$/, "")
  return line.length > 120 ? `${line.slice(0, 119)}…` : line
}
