import type { Program } from "../contract.ts"
import { decimalComma } from "../paper-signs.ts"
import { type Expression, readTree, type Statement } from "../tree/index.ts"
import { quoted, type Words } from "./words.ts"

/** A stretch of the program's text, and what to say of it. */
export interface Idle {
  readonly from: number
  readonly to: number
  readonly words: Words
}

interface Look {
  readonly program: Program
  report(from: number, to: number, code: Words["code"], text: string, todo: string): void
}

/**
 * What a student typed that the language works out and then drops: a comparison that stands alone, a value that nobody keeps,
 * the part before a comma. It runs without a word, so it is said here; given lines are left alone.
 */
export function idleIn(program: Program): Idle[] {
  const found: Idle[] = []
  const m: Look = {
    program,
    report: (from, to, code, text, todo) => found.push({ from, to, words: { code, text, todo } }),
  }
  for (const statement of readTree(program.text).body) lookAt(m, statement)
  return found
}

const isTyped = ({ blanks }: Program, { from }: Expression): boolean =>
  blanks.some(blank => blank.from <= from && from < blank.to)

function lookAt(m: Look, s: Statement): void {
  switch (s.kind) {
    case "expression":
      if (isTyped(m.program, s.expression)) wholeLine(m, s.expression)
      return
    case "declare":
      for (const { value } of s.items) if (value) inside(m, value)
      return
    case "return":
      if (s.value) inside(m, s.value)
      return
    case "block":
      for (const one of s.body) lookAt(m, one)
      return
    case "if":
      inside(m, s.test)
      lookAt(m, s.yes)
      if (s.no) lookAt(m, s.no)
      return
    case "while":
    case "do":
      inside(m, s.test)
      lookAt(m, s.body)
      return
    // what stands in its head is often a list of steps
    case "for":
    case "forOf":
    case "forIn":
    case "labeled":
      lookAt(m, s.body)
      return
    case "switch":
      for (const { body } of s.cases) for (const one of body) lookAt(m, one)
      return
    case "functionDeclaration":
      inFunction(m, s.function.body)
  }
}

function inFunction(m: Look, body: readonly Statement[] | Expression): void {
  if (isExpression(body)) inside(m, body)
  else for (const one of body) lookAt(m, one)
}

const isExpression = (body: readonly Statement[] | Expression): body is Expression => !Array.isArray(body)

function wholeLine(m: Look, e: Expression): void {
  const { text } = m.program
  if (e.kind === "binary" && /^===?$/.test(e.op)) {
    m.report(
      e.from,
      e.to,
      "no-effect",
      "This line compares two values and changes nothing.",
      `To give ${quoted(text.slice(e.left.from, e.left.to)) || "the left side"} a value write one = sign.`,
    )
  } else if (e.kind === "sequence") comma(m, e, true)
  else if (isIdle(e)) {
    m.report(
      e.from,
      e.to,
      "no-effect",
      "This line works out a value and keeps it nowhere.",
      "Write a name and = before it, or take the line out.",
    )
  } else inside(m, e)
}

/** Commas within a line, wherever a value is made of what they join. */
function inside(m: Look, e: Expression): void {
  switch (e.kind) {
    case "sequence":
      comma(m, e, false)
      return
    case "assign":
    case "as":
      inside(m, e.value)
      return
    case "unary":
      inside(m, e.argument)
      return
    case "binary":
      inside(m, e.left)
      inside(m, e.right)
      return
    case "conditional":
      for (const one of [e.test, e.yes, e.no]) inside(m, one)
      return
    case "call":
      for (const one of e.args) inside(m, one)
      return
    case "array":
      for (const one of e.items) inside(m, one)
      return
    case "function":
      inFunction(m, e.function.body)
  }
}

/** @param alone true where nobody takes the value of the whole: then its last part is lost as well */
function comma(m: Look, e: Extract<Expression, { kind: "sequence" }>, alone: boolean): void {
  if (!isTyped(m.program, e)) return
  const { text } = m.program
  for (const [i, part] of e.items.entries()) {
    const next = e.items[i + 1]
    const whole = /(?<![\p{ID_Continue}$.])\d+$/u.exec(text.slice(part.from, part.to))?.[0]
    const tenths = next && /^\d+(?![.\d])/.exec(text.slice(next.from, next.to))?.[0]
    if (whole && tenths && text.slice(part.to, next.from) === ",") {
      reportDecimalComma(m, part.to - whole.length, next.from + tenths.length)
      return
    }
    if (isIdle(part) && (next !== undefined || alone))
      m.report(
        part.from,
        part.to,
        "no-effect",
        `A comma makes no value of two: ${quoted(text.slice(part.from, part.to)) || "this part"} is worked out here and lost.`,
        "Write the sign that belongs there, or put each part on a line of its own.",
      )
  }
}

function reportDecimalComma(m: Look, from: number, to: number): void {
  const { text, todo } = decimalComma(m.program.text.slice(from, to))
  m.report(from, to, "decimal-comma", text, todo)
}

/** Whether nothing that lasts comes of an expression: names, numbers and arithmetic, and no call that might do something. */
function isIdle(e: Expression): boolean {
  switch (e.kind) {
    case "name":
    case "number":
      return true
    case "member":
      return isIdle(e.object)
    case "unary":
      return /^[-+!~]$/.test(e.op) && isIdle(e.argument)
    case "binary":
      return isIdle(e.left) && isIdle(e.right)
    case "conditional":
      return isIdle(e.test) && isIdle(e.yes) && isIdle(e.no)
    default:
      return false
  }
}
