import type { Node } from "@babel/types"
import type { Emitter } from "../emit/emitter.ts"
import { NUMBER, VECTOR } from "../infer.ts"
import { isCalm } from "./calm.ts"
import { made, type Parts } from "./made.ts"
import { type NumberShape, numberShape, type VectorShape, vectorShape } from "./shape.ts"

/**
 * Writes a vector expression as three number expressions. What takes more than a line of arithmetic, or may do
 * something else besides, goes first, into `before`, in the order of the text. The sums and products are those of
 * operators.ts and of the library, term by term, so the bits are the same; and where a value is not an ordinary one (a length near
 * the ends of the number range, a component that is not finite) the library itself is called with the vector.
 */
export class Pieces {
  readonly before: string[] = []
  private readonly e: Emitter

  constructor(e: Emitter) {
    this.e = e
  }

  /** The three components of a vector expression. */
  vector(node: Node): Parts {
    const inner = plain(node)
    if (inner.type === "Identifier") return this.named(inner)
    const shape = vectorShape(this.e, inner)
    return shape === null ? this.object(this.e.emit(inner)) : this.shaped(shape)
  }

  /** A vector of which all that is known is the object that it is. */
  object(text: string): Parts {
    const name = this.keep(text)
    return { x: `${name}.x`, y: `${name}.y`, z: `${name}.z` }
  }

  /** A number as a word that may be written several times. */
  number(node: Node): string {
    const inner = plain(node)
    if (inner.type === "NumericLiteral") return this.e.emit(inner)
    if (
      inner.type === "UnaryExpression" &&
      inner.operator === "-" &&
      inner.argument.type === "NumericLiteral"
    )
      return `(-${this.e.emit(inner.argument)})`
    if (inner.type === "Identifier" && this.e.o.kinds.of(inner) === NUMBER) return this.e.emit(inner)
    const shape = numberShape(this.e, inner)
    if (shape?.kind === "component") {
      const object = plain(shape.a)
      if (object.type === "Identifier") return this.named(object)[shape.axis]
    }
    return this.keep(this.e.argument(inner))
  }

  /** A number made of vectors, as one expression. */
  numberOf(shape: NumberShape): string {
    switch (shape.kind) {
      case "component":
        return this.vector(shape.a)[shape.axis]
      case "dot": {
        const a = this.vector(shape.a)
        const b = this.vector(shape.b)
        if (shape.method) return `${a.x} * ${b.x} + ${a.y} * ${b.y} + ${a.z} * ${b.z}`
        const p = this.simple(a)
        const q = this.simple(b)
        const s = this.keep(`${p.x} * ${q.x} + ${p.y} * ${q.y} + ${p.z} * ${q.z}`)
        return `${s} - ${s} === 0 ? ${s} : dot(${made(this.e, p)}, ${made(this.e, q)})`
      }
      case "magnitude": {
        const a = this.simple(this.vector(shape.a))
        const vector = made(this.e, a)
        return this.length(a, shape.method ? `${vector}.magnitude()` : `magnitude(${vector})`)
      }
      case "distance": {
        const a = this.simple(this.vector(shape.a))
        const b = this.simple(this.vector(shape.b))
        const d = this.simple({ x: `${b.x} - ${a.x}`, y: `${b.y} - ${a.y}`, z: `${b.z} - ${a.z}` })
        return this.length(d, `distance(${made(this.e, a)}, ${made(this.e, b)})`)
      }
    }
  }

  /** Components as words that may be written several times. */
  simple({ x, y, z }: Parts): Parts {
    return { x: this.word(x), y: this.word(y), z: this.word(z) }
  }

  private shaped(shape: VectorShape): Parts {
    switch (shape.kind) {
      case "sum": {
        const a = this.vector(shape.a)
        const b = this.vector(shape.b)
        return each(i => `(${a[i]} ${shape.sign} ${b[i]})`)
      }
      case "product": {
        let s: string
        let v: Parts
        if (shape.vectorFirst) {
          v = this.vector(shape.b)
          s = this.number(shape.a)
        } else {
          s = this.number(shape.a)
          v = this.vector(shape.b)
        }
        return each(i => (shape.vectorFirst ? `(${v[i]} * ${s})` : `(${s} * ${v[i]})`))
      }
      case "quotient": {
        const given = this.vector(shape.a)
        const s = this.number(shape.b)
        if (!shape.checked || /^[1-9][\d.]*$/.test(s)) return each(i => `(${given[i]} / ${s})`)
        const v = this.simple(given)
        this.before.push(`${s} === 0 && ${this.e.o.hidden.of("divideByZero")}(${made(this.e, v)})`)
        return each(i => `(${v[i]} / ${s})`)
      }
      case "opposite": {
        const v = this.vector(shape.a)
        return each(i => `(-${v[i]})`)
      }
      case "choice":
        return this.choice(shape.test, shape.a, shape.b)
      case "vec3":
        return this.given(shape.values)
      case "cross": {
        const a = this.simple(this.vector(shape.a))
        const b = this.simple(this.vector(shape.b))
        const c = {
          x: `(${a.y} * ${b.z} - ${a.z} * ${b.y})`,
          y: `(${a.z} * ${b.x} - ${a.x} * ${b.z})`,
          z: `(${a.x} * ${b.y} - ${a.y} * ${b.x})`,
        }
        if (shape.method) return c
        const kept = this.simple(c)
        this.finite([kept.x, kept.y, kept.z], `cross(${made(this.e, a)}, ${made(this.e, b)})`)
        return kept
      }
      case "unit":
        return this.direction(shape)
    }
  }

  private named(node: Node & { name: string }): Parts {
    const binding = this.e.o.scopes.references.get(node)?.binding
    const split = binding && this.e.o.split?.parts(binding)
    return split ?? { x: `${node.name}.x`, y: `${node.name}.y`, z: `${node.name}.z` }
  }

  private given(values: readonly Node[]): Parts {
    const texts = values.map(v => this.number(v))
    const open = texts.filter(t => !/^[\d.e]+$|^\(-[\d.e]+\)$/.test(t))
    if (open.length > 0) this.finite(open, `vec3(${texts.join(", ")})`)
    return { x: texts[0]!, y: texts[1]!, z: texts[2]! }
  }

  /** Where one of the numbers is not finite, the library is asked, and says so. */
  private finite(numbers: readonly string[], call: string): void {
    const sum = numbers.length === 1 ? numbers[0]! : this.keep(numbers.join(" + "))
    this.before.push(`${sum} - ${sum} === 0 || ${call}`)
  }

  private direction(shape: VectorShape & { kind: "unit" }): Parts {
    const a = this.simple(this.vector(shape.a))
    const square = this.keep(`${a.x} * ${a.x} + ${a.y} * ${a.y} + ${a.z} * ${a.z}`)
    const [l, x, y, z, o] = [this.fresh(), this.fresh(), this.fresh(), this.fresh(), this.fresh()]
    const vector = made(this.e, a)
    const call = shape.method ? `${vector}.unit()` : `unit(${vector})`
    const root = `${this.e.o.hidden.of("squareRoot")}(${square})`
    this.before.push(
      `${ordinary(square)} ? (${l} = ${root}, ${x} = ${a.x} / ${l}, ${y} = ${a.y} / ${l}, ${z} = ${a.z} / ${l}) : (${o} = ${call}, ${x} = ${o}.x, ${y} = ${o}.y, ${z} = ${o}.z)`,
    )
    return { x, y, z }
  }

  private length(a: Parts, call: string): string {
    const square = this.keep(`${a.x} * ${a.x} + ${a.y} * ${a.y} + ${a.z} * ${a.z}`)
    return `${ordinary(square)} ? ${this.e.o.hidden.of("squareRoot")}(${square}) : ${call}`
  }

  private choice(test: Node, a: Node, b: Node): Parts {
    const asked = this.e.emit(test)
    const [x, y, z] = [this.fresh(), this.fresh(), this.fresh()]
    const side = (node: Node): string => {
      const own = new Pieces(this.e)
      const v = own.vector(node)
      return `(${[...own.before, `${x} = ${v.x}`, `${y} = ${v.y}`, `${z} = ${v.z}`].join(", ")})`
    }
    this.before.push(`(${asked}) ? ${side(a)} : ${side(b)}`)
    return { x, y, z }
  }

  private word(text: string): string {
    return /^[\p{ID_Continue}$.]+$/u.test(text) ? text : this.keep(text)
  }

  private keep(text: string): string {
    const name = this.fresh()
    this.before.push(`${name} = ${text}`)
    return name
  }

  private fresh(): string {
    const name = this.e.temp()
    if (name === null) throw new Error("No place for a value on the way")
    return name
  }
}

/** The range in which the library takes the root of the square at once; see Vec3.magnitude. */
const ordinary = (square: string): string => `${square} > 1e-280 && ${square} < 1e300`

const each = (part: (axis: "x" | "y" | "z") => string): Parts => ({
  x: part("x"),
  y: part("y"),
  z: part("z"),
})

/** An expression without the marks of types around it. */
export function plain(node: Node): Node {
  switch (node.type) {
    case "TSAsExpression":
    case "TSSatisfiesExpression":
    case "TSNonNullExpression":
    case "TSTypeAssertion":
    case "ParenthesizedExpression":
      return plain(node.expression)
    default:
      return node
  }
}

/** Whether an expression can be written out here at all. */
export const canSplit = (e: Emitter, node: Node): boolean =>
  e.o.split !== null && e.frame !== null && isCalm(e, node)

/** A vector of which nothing else is known than that it is one: written out where that can be, else kept as an object. */
export function piecesOf(e: Emitter, node: Node): { readonly before: readonly string[] } & Parts {
  const pieces = new Pieces(e)
  const parts =
    e.o.kinds.of(node) === VECTOR && isCalm(e, node) ? pieces.vector(node) : pieces.object(e.emit(node))
  return { before: pieces.before, ...parts }
}
