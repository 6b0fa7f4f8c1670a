import type { Program } from "../contract.ts"
import { type Annotation, type Expression, readTree, type Statement, type Target } from "../tree/index.ts"
import { agesOf } from "./ages.ts"
import { level } from "./set.ts"
import { bodies, type Shapes, shapesOf } from "./shapes.ts"
import { type Setting, typeset } from "./typeset.ts"
import { unitTex, unitWords } from "./unit-text.ts"

/** One assignment of a cell as a formula. */
export interface Equation {
  /** where the assignment stands in the text that was given */
  readonly from: number
  readonly to: number
  /** its line in that text, from 1 */
  readonly line: number
  /** for KaTeX, without dollar signs */
  readonly tex: string
  /** for a screen reader */
  readonly words: string
}

/** Formulas longer than this help nobody. */
const longest = 2000

/**
 * Every assignment of a program, or of a piece of one, that a formula can say: declarations with a value, `=`, `+=`
 * and the like, `n++`. Vectors get arrows, names their subscripts, updates are set as new from old. What does not
 * parse, and what is no mathematics (texts, objects, functions with a block), is left out. Never throws.
 *
 * @param options.vectors names that are vectors although the text does not show it
 */
export function equationsOf(
  source: Program | string,
  options: { readonly vectors?: Iterable<string> } = {},
): Equation[] {
  const text = typeof source === "string" ? source : source.text
  const tree = readTree(text)
  const shapes = shapesOf(tree, options.vectors)
  const found: Equation[] = []
  const ages = agesOf(tree)
  let line = 1
  let counted = 0

  const add = (at: { from: number; to: number }, tex: string, words: string): void => {
    if (tex.length > longest) return
    if (at.from < counted) {
      line = 1
      counted = 0
    }
    for (; counted < at.from; counted++) if (text[counted] === "\n") line++
    found.push({
      from: at.from,
      to: at.to,
      line,
      tex,
      words: words.replace(/\s+/g, " ").replaceAll(" ,", ",").trim(),
    })
  }

  const assignment = (
    at: { from: number; to: number },
    target: Target,
    op: string,
    value: Expression,
    annotation: Annotation | null,
    condition: Condition | null,
  ): void => {
    if (value.kind === "function") {
      definition(at, target, value, shapes, add)
      return
    }
    const setting = settingAt(shapes, ages.at(at.from))
    const left = targetPiece(target, setting)
    const right = op === "=" ? typeset(value, setting) : typeset(compound(target, op, value), setting)
    if (!left || !right) return
    const unit = annotation && isNumeric(value) ? unitOf(annotation) : ""
    const tex = unitTex(unit)
    const suffix = condition ? condition : { tex: "", words: "" }
    const tight = right.level === level.relation && !right.tex.startsWith("\\begin")
    add(
      at,
      `${left.tex} = ${tight ? `\\left(${right.tex}\\right)` : right.tex}${tex && `\\,${tex}`}${suffix.tex}`,
      `${left.words} equals ${right.words} ${unitWords(unit, !isOne(value))}${suffix.words}`,
    )
  }

  const expression = (e: Expression, condition: Condition | null): void => {
    if (e.kind === "assign" && /^([-+*/]|\*\*)?=$/.test(e.op))
      assignment(e, e.target, e.op, e.value, null, condition)
    else if (e.kind === "step" && e.target.kind !== "other") {
      const one: Expression = { kind: "number", value: 1, text: "1", from: e.to, to: e.to }
      assignment(e, placeOfExpression(e.target), `${e.op[0]}=`, one, null, condition)
    } else if (e.kind === "sequence") for (const item of e.items) expression(item, condition)
  }

  const statement = (s: Statement, condition: Condition | null): void => {
    switch (s.kind) {
      case "declare":
        for (const item of s.items)
          if (item.value) assignment(item, item.target, "=", item.value, item.annotation, condition)
        break
      case "expression":
        expression(s.expression, condition)
        break
      case "if": {
        const test = typeset(s.test, settingAt(shapes, ages.at(s.from)))
        const simple = condition === null && test && test.tex.length < 120 ? test : null
        statement(s.yes, simple && { tex: `\\quad\\text{if } ${simple.tex}`, words: `, if ${simple.words}` })
        if (s.no) statement(s.no, simple && s.no.kind !== "if" ? otherwise : null)
        break
      }
      case "block":
        for (const inner of s.body) statement(inner, condition)
        break
      case "functionDeclaration":
        if (Array.isArray(s.function.body)) for (const inner of s.function.body) statement(inner, null)
        break
      default:
        for (const inner of bodies(s)) statement(inner, null)
    }
  }
  for (const one of tree.body) statement(one, null)
  return found
}

interface Condition {
  readonly tex: string
  readonly words: string
}

const otherwise: Condition = { tex: "\\quad\\text{otherwise}", words: ", otherwise" }

const settingAt = (shapes: Shapes, age: Setting["age"]): Setting => ({ shapes, age })

/** A name or place that is written to. In an update it is the new value, although the same name on the right is old. */
function targetPiece(target: Target, setting: Setting) {
  const fresh: Setting = { ...setting, age: name => (setting.age(name) === undefined ? undefined : "new") }
  if (target.kind === "variable")
    return typeset({ kind: "name", name: target.name, from: target.from, to: target.to }, fresh)
  return target.kind === "place" ? typeset(target.expression, fresh) : null
}

const placeOfExpression = (e: Expression): Target =>
  e.kind === "name"
    ? { kind: "variable", name: e.name, from: e.from, to: e.to }
    : { kind: "place", expression: e, from: e.from, to: e.to }

/** `p += F * dt` as `p + F * dt`. */
function compound(target: Target, op: string, value: Expression): Expression {
  const left: Expression =
    target.kind === "variable"
      ? { kind: "name", name: target.name, from: target.from, to: target.to }
      : target.kind === "place"
        ? target.expression
        : { kind: "other", from: target.from, to: target.to }
  return {
    kind: "binary",
    op: op.slice(0, -1),
    opFrom: value.from,
    left,
    right: value,
    from: target.from,
    to: value.to,
  }
}

/** A number, or a column of numbers, that an annotation's unit belongs to. */
function isNumeric(e: Expression): boolean {
  if (e.kind === "number") return true
  if (e.kind === "unary") return isNumeric(e.argument)
  return (
    e.kind === "call" &&
    e.callee.kind === "name" &&
    e.callee.name === "vec3" &&
    e.args.every(isNumeric) &&
    !isZero(e)
  )
}

const isOne = (e: Expression): boolean => e.kind === "number" && e.value === 1

const isZero = (e: Expression): boolean =>
  e.kind === "call" && e.args.every(one => one.kind === "number" && one.value === 0)

const unitOf = (annotation: Annotation): string =>
  (annotation.kind === "scalar" || annotation.kind === "vector") && annotation.unit ? annotation.unit : ""

/** `const height = (t) => h - g * t * t / 2` as height(t) = h − ½ g t². */
function definition(
  at: { from: number; to: number },
  target: Target,
  value: Extract<Expression, { kind: "function" }>,
  shapes: Shapes,
  add: (at: { from: number; to: number }, tex: string, words: string) => void,
): void {
  const { body, parameters } = value.function
  if (Array.isArray(body) || target.kind !== "variable") return
  const setting = settingAt(shapes, () => undefined)
  const right = typeset(body as Expression, setting)
  const names = parameters.map(one => (one.target.kind === "variable" && !one.rest ? one.target.name : null))
  if (!right || names.length === 0 || names.some(one => one === null)) return
  const call: Expression = {
    kind: "call",
    callee: { kind: "name", name: target.name, from: target.from, to: target.to },
    args: names.map(name => ({ kind: "name", name: name!, from: at.from, to: at.to })),
    isNew: false,
    from: at.from,
    to: at.to,
  }
  const left = typeset(call, setting)
  if (left) add(at, `${left.tex} = ${right.tex}`, `${left.words} equals ${right.words}`)
}
