import type { Expression } from "../tree/index.ts"
import { setSymbol, symbolOf } from "./names.ts"
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
  times,
} from "./set.ts"

/** What setting a call needs from its surroundings. */
export interface CallSetting {
  readonly set: (e: Expression) => Piece | null
  readonly isVector: (e: Expression) => boolean
  /** a plain name with a hat instead of an arrow; null for anything else */
  readonly hat: (e: Expression) => Piece | null
}

type Rule = (args: readonly Piece[], raw: readonly Expression[], setting: CallSetting) => Piece | null

const joined =
  (sign: string, word: string): Rule =>
  ([a, b]) => {
    if (!a || !b) return null
    const left = held(a, level.product)
    const right = b.tex.startsWith("-") ? bracketed(b) : held(b, level.product)
    return {
      tex: `${left.tex} ${sign} ${right.tex}`,
      words: `${left.words} ${word} ${right.words}`,
      level: level.sum,
    }
  }

const fenced =
  (open: string, close: string, words: string): Rule =>
  ([a]) =>
    a ? atom(`\\left${open}${a.tex}\\right${close}`, `${words} ${inside(a)}`) : null

const named =
  (tex: string, words: string): Rule =>
  args => {
    const [first] = args
    if (!first) return null
    // sin θ needs no brackets, sin(a + b) does
    const single = args.length === 1 && first.level === level.atom && !first.tex.startsWith("\\left")
    return {
      tex: single ? `${tex} ${first.tex}` : `${tex}\\left(${args.map(one => one.tex).join(",\\,")}\\right)`,
      words: `${words} ${args.length === 1 ? inside(first) : args.map(one => one.words).join(" and ")}`,
      level: single ? level.product : level.power,
    }
  }

const root =
  (index: string, words: string): Rule =>
  ([a]) =>
    a ? atom(`\\sqrt${index}{${a.tex}}`, `${words} ${inside(a)}`) : null

const raised: Rule = ([a, b]) => {
  if (!a || !b) return null
  const base = held(a, level.atom)
  return {
    tex: `{${base.tex}}^{${b.tex}}`,
    words: `${base.words} to the power ${inside(b)}`,
    level: level.power,
  }
}

const unit: Rule = ([a], [raw], setting) => {
  if (!a || !raw) return null
  const hat = setting.hat(raw)
  if (hat) return hat
  return {
    tex: `\\frac{${a.tex}}{\\left|${a.tex}\\right|}`,
    words: `the unit vector of ${inside(a)}`,
    level: level.fraction,
  }
}

const sumOf =
  (sign: string, word: string): Rule =>
  args => {
    if (args.length === 0) return null
    const terms = args.map((one, at) =>
      at > 0 && (sign === "-" || one.tex.startsWith("-")) ? held(one, level.product) : one,
    )
    return {
      tex: terms.map(one => one.tex).join(` ${sign} `),
      words: terms.map(one => one.words).join(` ${word} `),
      level: terms.length > 1 ? level.sum : terms[0]!.level,
    }
  }

const product: Rule = ([a, b]) => {
  if (!a || !b) return null
  return a.signed ? negative(times(a.signed, b)) : times(a, b)
}

const divided: Rule = ([a, b]) => {
  if (!a || !b) return null
  return a.signed ? negative(quotient(a.signed, b)) : quotient(a, b)
}

const negated: Rule = ([a]) => (a ? negative(a) : null)

const column: Rule = (args, raw) => {
  if (args.length !== 3) return null
  if (raw.every(one => one.kind === "number" && one.value === 0)) return atom("\\vec{0}", "the zero vector")
  return atom(
    `\\begin{pmatrix} ${args.map(one => one.tex).join(" \\\\ ")} \\end{pmatrix}`,
    `the vector with components ${args.map(one => one.words).join(", ")}`,
  )
}

const below =
  (sign: string, words: string): Rule =>
  ([a, b]) => {
    if (!a || !b) return null
    const base = held(a, level.atom)
    return atom(`{${base.tex}}_{${sign} ${b.tex}}`, `the part of ${inside(a)} ${words} ${inside(b)}`)
  }

const plus = (a: Piece, b: Piece): Piece => ({
  tex: `${a.tex} + ${b.tex}`,
  words: `${a.words} plus ${b.words}`,
  level: level.sum,
})

/** (r − r₀) × F */
const arm: Rule = ([r, other, about], raw, setting) => {
  if (!r || !other) return null
  const from: Piece = about
    ? {
        tex: `${r.tex} - ${held(about, level.product).tex}`,
        words: `${r.words} minus ${about.words}`,
        level: level.sum,
      }
    : r
  return joined("\\times", "cross")([from, other], raw, setting)
}

/** Functions of the library and, in the other table, methods of vectors: the object is the first argument. */
const functions: Readonly<Record<string, Rule>> = {
  vec3: column,
  dot: joined("\\cdot", "dot"),
  cross: joined("\\times", "cross"),
  magnitude: fenced("|", "|", "the magnitude of"),
  unit,
  sum: sumOf("+", "plus"),
  distance: ([a, b]) =>
    a && b
      ? atom(
          `\\left|${b.tex} - ${held(a, level.product).tex}\\right|`,
          `the distance from ${inside(a)} to ${inside(b)}`,
        )
      : null,
  along: below("\\parallel", "along"),
  across: below("\\perp", "across"),
  component: ([a, b], [, raw], setting) => {
    if (!a || !b || !raw) return null
    const left = held(a, level.product)
    const hat = setting.hat(raw)
    const direction = hat ? hat.tex : `\\frac{${b.tex}}{\\left|${b.tex}\\right|}`
    return {
      tex: `${left.tex} \\cdot ${direction}`,
      words: `the component of ${inside(a)} along ${inside(b)}`,
      level: level.sum,
    }
  },
}

/** Laws of the library that are formulas of their own. */
const laws: Readonly<Record<string, Rule>> = {
  momentumOf: product,
  velocityOf: divided,
  impulse: product,
  weight: product,
  updateMomentum: ([p, F, dt]) => (p && F && dt ? plus(p, times(F, dt)) : null),
  updateAngularMomentum: ([L, torque, dt]) => (L && torque && dt ? plus(L, times(torque, dt)) : null),
  updatePosition: ([r, p, m, dt]) => (r && p && m && dt ? plus(r, times(quotient(p, m), dt)) : null),
  kineticEnergy: ([p, m]) => (p && m ? quotient(powerOf(p, 2), times(atom("2", "2"), m)) : null),
  torque: arm,
  angularMomentum: arm,
}

const methods: Readonly<Record<string, Rule>> = {
  add: sumOf("+", "plus"),
  subtract: sumOf("-", "minus"),
  times: product,
  over: divided,
  dot: functions.dot!,
  cross: functions.cross!,
  magnitude: functions.magnitude!,
  unit,
  negated,
}

const mathematics: Readonly<Record<string, Rule>> = {
  abs: fenced("|", "|", "the absolute value of"),
  floor: fenced("\\lfloor", "\\rfloor", "the whole part of"),
  ceil: fenced("\\lceil", "\\rceil", "the next whole number above"),
  sqrt: root("", "the square root of"),
  cbrt: root("[3]", "the cube root of"),
  pow: raised,
  exp: ([a]) =>
    a ? { tex: `\\mathrm{e}^{${a.tex}}`, words: `e to the power ${inside(a)}`, level: level.power } : null,
  hypot: args =>
    args.length > 0
      ? atom(
          `\\sqrt{${args.map(one => `{${held(one, level.atom).tex}}^{2}`).join(" + ")}}`,
          `the square root of ${args.map(one => `${inside(one)} squared`).join(" plus ")}`,
        )
      : null,
  sin: named("\\sin", "the sine of"),
  cos: named("\\cos", "the cosine of"),
  tan: named("\\tan", "the tangent of"),
  asin: named("\\arcsin", "the arc sine of"),
  acos: named("\\arccos", "the arc cosine of"),
  atan: named("\\arctan", "the arc tangent of"),
  sinh: named("\\sinh", "the hyperbolic sine of"),
  cosh: named("\\cosh", "the hyperbolic cosine of"),
  tanh: named("\\tanh", "the hyperbolic tangent of"),
  log: named("\\ln", "the natural logarithm of"),
  log10: named("\\log_{10}", "the logarithm to base 10 of"),
  log2: named("\\log_{2}", "the logarithm to base 2 of"),
  min: named("\\min", "the lesser of"),
  max: named("\\max", "the greater of"),
  sign: named("\\operatorname{sgn}", "the sign of"),
}

const ruleOf = (table: Readonly<Record<string, Rule>>, name: string): Rule | undefined =>
  Object.hasOwn(table, name) ? table[name] : undefined

/** A call as a formula: known operations by their signs, any other function by its name and arguments. */
export function setCall(e: Extract<Expression, { kind: "call" }>, setting: CallSetting): Piece | null {
  const { callee, args } = e
  if (e.isNew || args.length > 8 || args.some(one => one.kind === "spread")) return null
  if (callee.kind === "member") {
    const ofMath = callee.object.kind === "name" && callee.object.name === "Math"
    const rule = ofMath ? ruleOf(mathematics, callee.property) : ruleOf(methods, callee.property)
    const all = ofMath ? args : [callee.object, ...args]
    const pieces = all.map(one => setting.set(one))
    if (pieces.some(one => !one)) return null
    if (rule) return rule(pieces as Piece[], all, setting)
    return ofMath ? general(callee.property, pieces as Piece[]) : null
  }
  if (callee.kind !== "name") return null
  const named = argumentPieces(args, setting)
  if (!named) return null
  const rule = ruleOf(functions, callee.name) ?? ruleOf(laws, callee.name)
  return rule?.(named, args, setting) ?? general(callee.name, named, setting.isVector(e))
}

/** Arguments; the fields of an object of options are set as equations. */
function argumentPieces(args: readonly Expression[], setting: CallSetting): Piece[] | null {
  const pieces: Piece[] = []
  for (const one of args) {
    if (one.kind === "object") {
      for (const entry of one.entries) {
        const value = entry.kind === "property" ? setting.set(entry.value) : null
        if (entry.kind !== "property" || !value) return null
        const symbol = symbolOf(entry.key)
        pieces.push({
          tex: `${setSymbol(symbol, setting.isVector(entry.value))} = ${value.tex}`,
          words: `${symbol.spoken} equals ${value.words}`,
          level: level.relation,
        })
      }
    } else {
      const piece = setting.set(one)
      if (!piece) return null
      pieces.push(piece)
    }
  }
  return pieces
}

function general(name: string, args: readonly Piece[], vector = false): Piece {
  const symbol = symbolOf(name)
  const list = args.map(one => one.tex).join(",\\; ")
  const words =
    args.length === 0 ? symbol.spoken : `${symbol.spoken} of ${args.map(one => one.words).join(", ")}`
  return {
    tex: `${setSymbol(symbol, vector)}\\left(${list}\\right)`,
    words,
    level: level.power,
  }
}
