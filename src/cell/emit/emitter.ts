import type { File, Node, Statement } from "@babel/types"
import type { EndlessWords } from "../contract.ts"
import type { Skip } from "../erase.ts"
import { type Kinds, VECTOR } from "../infer.ts"
import type { Scopes } from "../scopes.ts"
import { childrenOf } from "../syntax.ts"
import type { Split } from "../vectors/split.ts"
import type { Frame } from "./frame.ts"
import { openQuestions } from "./questions.ts"

/** Names that the emitted text uses and the program cannot: all start with one prefix that its text does not hold. */
export interface Hidden {
  readonly prefix: string
  readonly of: (name: string) => string
}

export interface EmitOptions {
  readonly text: string
  readonly file: File
  readonly scopes: Scopes
  readonly kinds: Kinds
  readonly hidden: Hidden
  /** the second text, which notes where it is before everything it does */
  readonly trace: boolean
  /** vectors kept as three plain numbers each; null to rewrite every operator blindly */
  readonly split: Split | null
  /** what does not run: remarks, and types unless the stripper is to take them away */
  readonly skips: readonly Skip[]
  /** names standing in for blanks that nobody filled */
  readonly emptyBlanks: ReadonlySet<string>
  readonly timeStep: string
  /** whether anything in the program may catch an error */
  readonly catches: boolean
  readonly known: ReadonlySet<string>
  /** number of the site for a stretch of `text` */
  site(from: number, to: number, what: string, endless?: EndlessWords): number
  /** number of the cell that a top-level statement stands in */
  cellOf(statement: Statement): number
  readonly cells: number
  /** filled by the emission: the shapes of rows that are recorded the quick way */
  readonly shapes: string[]
}

/** What every part of the emission shares: the options, the text between nodes, and names for values on the way. */
export interface Emitter {
  readonly o: EmitOptions
  /** where names for values on the way are made; null where none can be, as in the default of a parameter */
  frame: Frame | null
  /** the emitted text of a node */
  emit(node: Node): string
  /** the program's own text without what does not run */
  gap(from: number, to: number): string
  /** a node as it stands, its children emitted; `replace` may give a child's text instead */
  copy(node: Node, replace?: (child: Node) => string | null): string
  /** an expression as one argument of a call or as the right side of an assignment */
  argument(node: Node): string
  site(node: Node, what: string): number
  /** trace only: `value` handed through a note of the site */
  noted(node: Node, what: string, value: string): string
  /** a fresh name in the frame */
  temp(): string | null
  /** the rows that a call of record with this shape fills: their name, and the call that finds them anew */
  rows(shape: string): { readonly name: string; readonly renew: string }
  /** a name for a parameter of an emitted arrow function */
  looseName(): string
  inFrame<T>(frame: Frame | null, work: () => T): T
  /** the statement that counts a turn */
  guard(from: number, to: number, what: string, endless?: EndlessWords): string
  /** the end of a stretch without white space behind it */
  trimmedEnd(from: number, to: number): number
  withoutVector(...nodes: Node[]): boolean
}

export function createEmitter(
  o: EmitOptions,
  frame: Frame,
  dispatch: (e: Emitter, node: Node) => string,
): Emitter {
  const { text, hidden, kinds } = o
  const { skips } = o
  let count = 0

  const emitter: Emitter = {
    o,
    frame,
    emit: node => dispatch(emitter, node),

    gap(from, to) {
      if (from >= to) return ""
      let low = 0
      let high = skips.length
      while (low < high) {
        const middle = (low + high) >> 1
        if (skips[middle]!.to <= from) low = middle + 1
        else high = middle
      }
      let out = ""
      let start = from
      for (let i = low; i < skips.length && skips[i]!.from < to; i++) {
        const skip = skips[i]!
        if (skip.from > start) out += text.slice(start, skip.from)
        out += skip.as
        start = Math.max(start, skip.to)
      }
      if (start >= to) return out
      return out + text.slice(start, to)
    },

    copy(node, replace) {
      let out = ""
      let from = node.start!
      for (const child of childrenOf(node)) {
        out += emitter.gap(from, child.start!) + (replace?.(child) ?? emitter.emit(child))
        from = child.end!
      }
      return out + emitter.gap(from, node.end!)
    },

    argument(node) {
      const out = emitter.emit(node)
      return node.type === "SequenceExpression" ? `(${out})` : out
    },

    site: (node, what) => o.site(node.start!, node.end!, what),
    noted: (node, what, value) =>
      o.trace ? `${hidden.of("at")}(${emitter.site(node, what)}, ${value})` : value,

    temp() {
      if (emitter.frame === null) return null
      const name = emitter.looseName()
      emitter.frame.temps.push(name)
      return name
    },
    rows(shape) {
      const at = o.shapes.indexOf(shape)
      const number = at < 0 ? o.shapes.push(shape) - 1 : at
      return { name: hidden.of(`rows${number}`), renew: `${hidden.of("rows")}(${JSON.stringify(shape)})` }
    },
    looseName: () => hidden.of(`t${count++}`),
    inFrame(inner, work) {
      const outer = emitter.frame
      emitter.frame = inner
      const result = work()
      emitter.frame = outer
      return result
    },

    guard: (from, to, what, endless) =>
      `if (++${hidden.of("turns")} > ${hidden.of("max")}) ${hidden.of("overrun")}(${o.site(from, to, what, endless)}${openQuestions(o)});`,
    trimmedEnd(from, to) {
      let end = to
      while (end > from && /\s/.test(text[end - 1]!)) end--
      return end
    },
    withoutVector: (...nodes) =>
      nodes.every(n => {
        const kind = kinds.of(n)
        return kind !== 0 && (kind & VECTOR) === 0
      }),
  }
  return emitter
}
