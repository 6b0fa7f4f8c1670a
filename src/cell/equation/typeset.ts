import type { Expression } from "../tree/index.ts"
import { type CallSetting, setCall } from "./functions.ts"
import { setSymbol, symbolOf } from "./names.ts"
import { numberPiece } from "./numbers.ts"
import {
  atom,
  bracketed,
  held,
  inside,
  level,
  negative,
  type Piece,
  powerOf,
  quotient,
  textTex,
  times,
} from "./set.ts"
import { type Shapes, shapeOf } from "./shapes.ts"

/** What typesetting needs to know besides the expression. */
export interface Setting {
  readonly shapes: Shapes
  /** "new" or "old" for names that an update changes; nothing for others */
  readonly age: (name: string) => "new" | "old" | undefined
}

const relations: Readonly<Record<string, readonly [tex: string, words: string]>> = {
  "<": ["<", "is less than"],
  ">": [">", "is greater than"],
  "<=": ["\\le", "is at most"],
  ">=": ["\\ge", "is at least"],
  "==": ["=", "equals"],
  "===": ["=", "equals"],
  "!=": ["\\ne", "is not"],
  "!==": ["\\ne", "is not"],
  "&&": ["\\text{ and }", "and"],
  "||": ["\\text{ or }", "or"],
  "??": ["\\text{ or else }", "or else"],
}

const constants: Readonly<Record<string, Piece>> = {
  PI: atom("\\pi", "pi"),
  E: atom("\\mathrm{e}", "e"),
  SQRT2: atom("\\sqrt{2}", "the square root of 2"),
  SQRT1_2: atom("\\sqrt{\\tfrac{1}{2}}", "the square root of one half"),
  LN2: atom("\\ln 2", "the natural logarithm of 2"),
  LN10: atom("\\ln 10", "the natural logarithm of 10"),
}

/** An expression as a formula; null if it holds something that no formula says. */
export function typeset(e: Expression, setting: Setting): Piece | null {
  switch (e.kind) {
    case "number":
      return numberPiece(e.text, e.value)
    case "name":
      return namePiece(e.name, setting, [])
    case "member":
    case "index":
      return placePiece(e, setting)
    case "string":
      return e.value.length > 60 ? null : atom(textTex(`“${e.value}”`), `the text ${e.value}`)
    case "unary":
      return unaryPiece(e, setting)
    case "binary":
      return binaryPiece(e, setting)
    case "conditional":
      return casesPiece(e, setting)
    case "call": {
      const set = (inner: Expression): Piece | null => typeset(inner, setting)
      const call: CallSetting = {
        set,
        isVector: inner => shapeOf(inner, setting.shapes) === "vector",
        hat: inner => (inner.kind === "name" ? nameWith(inner.name, setting, [], true) : null),
      }
      return setCall(e, call)
    }
    case "as":
      return typeset(e.value, setting)
    case "array": {
      const items = e.items.map(item => typeset(item, setting))
      if (items.length === 0 || items.length > 12 || items.some(item => !item)) return null
      return atom(
        `\\left(${items.map(item => item!.tex).join(",\\;")}\\right)`,
        `the list ${items.map(item => item!.words).join(", ")}`,
      )
    }
    default:
      return null
  }
}

const namePiece = (name: string, setting: Setting, below: readonly string[]): Piece =>
  nameWith(name, setting, below, false)

function nameWith(name: string, setting: Setting, below: readonly string[], hat: boolean): Piece {
  if (name === "Infinity") return atom("\\infty", "infinity")
  if (
    name === "true" ||
    name === "false" ||
    name === "null" ||
    name === "undefined" ||
    name === "NaN" ||
    name === "this"
  )
    return atom(textTex(name), name)
  const symbol = symbolOf(name)
  const vector = setting.shapes.names.get(name) === "vector"
  const age = setting.age(name)
  const more = age ? [...below, `\\text{${age}}`] : below
  const words = [hat ? "unit vector of" : vector ? "vector" : "", symbol.spoken, age ?? ""]
    .filter(Boolean)
    .join(" ")
  return atom(setSymbol(symbol, vector && !hat, more, hat), words)
}

/** `r.y`, `ball.position`, `p[i]`, `bodies[0].position.x`. */
function placePiece(e: Extract<Expression, { kind: "member" | "index" }>, setting: Setting): Piece | null {
  if (e.kind === "member" && e.object.kind === "name" && e.object.name === "Math")
    return constants[e.property] ?? null
  if (e.kind === "member" && /^[xyz]$/.test(e.property)) return componentPiece(e.object, e.property, setting)
  // collect what stands before the last name: the owner's name and the indices go below
  const owners: string[] = []
  const spoken: string[] = []
  let at: Expression = e
  let own: string | null = null
  while (at.kind === "member" || at.kind === "index") {
    if (at.kind === "index") {
      const index = typeset(at.index, setting)
      if (!index) return null
      owners.unshift(index.tex)
      spoken.unshift(`index ${index.words}`)
    } else if (own === null) own = at.property
    else {
      const symbol = symbolOf(at.property)
      owners.unshift(setSymbol(symbol, false))
      spoken.unshift(`of ${symbol.spoken}`)
    }
    at = at.object
  }
  if (at.kind !== "name") return null
  const root = symbolOf(at.name)
  if (own === null) {
    const vector = setting.shapes.names.get(at.name) === "vector"
    return atom(
      setSymbol(root, vector, owners),
      [vector ? "vector" : "", root.spoken, ...spoken].filter(Boolean).join(" "),
    )
  }
  const symbol = symbolOf(own)
  const vector = setting.shapes.keys.get(own) === "vector"
  const rootTex = root.isWord || root.below.length > 0 ? setSymbol(root, false) : `\\text{${root.base}}`
  return atom(
    setSymbol(symbol, vector, [root.base.startsWith("\\") ? setSymbol(root, false) : rootTex, ...owners]),
    [vector ? "vector" : "", symbol.spoken, `of ${root.spoken}`, ...spoken].filter(Boolean).join(" "),
  )
}

/** The component of a vector: `p.x` is p_x, `(a + b).x` is (a + b)_x. */
function componentPiece(object: Expression, component: string, setting: Setting): Piece | null {
  const words = (of: string): string => `${component} component of ${of}`
  if (object.kind === "name") {
    const symbol = symbolOf(object.name)
    const age = setting.age(object.name)
    const below = age ? [component, `\\text{${age}}`] : [component]
    return atom(setSymbol(symbol, false, below), words([symbol.spoken, age ?? ""].filter(Boolean).join(" ")))
  }
  const inner = typeset(object, setting)
  if (!inner) return null
  const held = bracketed(inner)
  return atom(`${held.tex}_{${component}}`, words(inside(inner)))
}

function unaryPiece(e: Extract<Expression, { kind: "unary" }>, setting: Setting): Piece | null {
  const argument = typeset(e.argument, setting)
  if (!argument) return null
  if (e.op === "+") return argument
  if (e.op === "-") return negative(argument)
  if (e.op !== "!") return null
  return {
    tex: `\\text{not }${held(argument, level.atom).tex}`,
    words: `not ${inside(argument)}`,
    level: level.relation,
  }
}

function binaryPiece(e: Extract<Expression, { kind: "binary" }>, setting: Setting): Piece | null {
  const left = typeset(e.left, setting)
  const right = typeset(e.right, setting)
  if (!left || !right) return null
  switch (e.op) {
    case "+":
    case "-": {
      // a leading minus right of the sign, and a sum after a minus, need brackets
      const last =
        right.tex.startsWith("-") || e.op === "-" ? held(right, level.product) : held(right, level.sum)
      const first = held(left, level.sum)
      return {
        tex: `${first.tex} ${e.op} ${last.tex}`,
        words: `${first.words} ${e.op === "+" ? "plus" : "minus"} ${last.words}`,
        level: level.sum,
      }
    }
    case "*":
      return left.signed ? negative(times(left.signed, right)) : times(left, right)
    case "/":
      return left.signed ? negative(quotient(left.signed, right)) : quotient(left, right)
    case "%": {
      const first = held(left, level.product)
      const last = held(right, level.atom)
      return {
        tex: `${first.tex} \\bmod ${last.tex}`,
        words: `${first.words} modulo ${last.words}`,
        level: level.sum,
      }
    }
    case "**":
      return powerPiece(left, right)
    default: {
      const relation = relations[e.op]
      if (!relation) return null
      const joins = e.op === "&&" || e.op === "||" || e.op === "??"
      const side = (piece: Piece, of: Expression): Piece =>
        joins && !(of.kind === "binary" && of.op !== e.op && ["&&", "||", "??"].includes(of.op))
          ? piece
          : held(piece, level.sum)
      const first = side(left, e.left)
      const last = side(right, e.right)
      return {
        tex: `${first.tex} ${relation[0]} ${last.tex}`,
        words: `${first.words} ${relation[1]} ${last.words}`,
        level: level.relation,
      }
    }
  }
}

function powerPiece(base: Piece, exponent: Piece): Piece {
  if (/^\d+$/.test(exponent.tex)) return powerOf(base, Number(exponent.tex))
  const first = held(base, level.atom)
  return {
    tex: `{${first.tex}}^{${exponent.tex}}`,
    words: `${first.words} to the power ${inside(exponent)}`,
    level: level.power,
  }
}

/** `test ? yes : no`, and longer chains of it, as cases. */
function casesPiece(e: Extract<Expression, { kind: "conditional" }>, setting: Setting): Piece | null {
  const rows: string[] = []
  const words: string[] = []
  let at: Expression = e
  while (at.kind === "conditional") {
    const test = typeset(at.test, setting)
    const yes = typeset(at.yes, setting)
    if (!test || !yes || rows.length > 6) return null
    rows.push(`${yes.tex} & \\text{if } ${test.tex}`)
    words.push(`${yes.words} if ${test.words}`)
    at = at.no
  }
  const last = typeset(at, setting)
  if (!last) return null
  rows.push(`${last.tex} & \\text{otherwise}`)
  words.push(`${last.words} otherwise`)
  return {
    tex: `\\begin{cases} ${rows.join(" \\\\ ")} \\end{cases}`,
    words: words.join(", "),
    level: level.relation,
  }
}
