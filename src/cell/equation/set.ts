/** How tightly a piece of a formula holds together, from a relation up to what needs no bracket anywhere. */
export const level = { relation: 0, sum: 1, product: 2, fraction: 3, power: 4, atom: 5 } as const
export type Level = (typeof level)[keyof typeof level]

/** A piece of a formula, set in TeX and said in words. */
export interface Piece {
  readonly tex: string
  readonly words: string
  readonly level: Level
  /** a product or fraction with a minus before it: the piece without. Factors may follow, the minus goes before the whole */
  readonly signed?: Piece
  /** a product: what stands before its last factor, and how often that factor stands there */
  readonly tail?: { readonly before: Piece | null; readonly factor: Piece; readonly count: number }
}

export const atom = (tex: string, words: string): Piece => ({ tex, words, level: level.atom })

/** The piece in brackets if it holds together less tightly than asked. */
export function held(piece: Piece, least: Level): Piece {
  return piece.level >= least ? piece : bracketed(piece)
}

export const bracketed = (piece: Piece): Piece =>
  atom(`\\left(${piece.tex}\\right)`, `open bracket ${piece.words} close bracket`)

/** A minus before a piece. A product or fraction keeps its minus outside of what is built on it. */
export function negative(piece: Piece): Piece {
  const inner = held(piece, level.product)
  return { tex: `-${inner.tex}`, words: `minus ${inner.words}`, level: level.sum, signed: piece }
}

/** Words of something inside a "the ... of ..." phrase: bracketed aloud only when it is more than one thing. */
export const inside = (piece: Piece): string =>
  piece.level >= level.power ? piece.words : `open bracket ${piece.words} close bracket`

/** A text set upright, safe in TeX; what TeX cannot print becomes a space. */
export const textTex = (text: string): string =>
  `\\text{${text.replace(/[\\{}$&#^_%~]/g, sign => (sign === "\\" ? "" : `\\${sign === "^" || sign === "~" ? `${sign}{}` : sign}`)).replace(/[\p{C}\p{M}]/gu, " ")}}`

/** A fraction. */
export const quotient = (above: Piece, below: Piece): Piece => ({
  tex: `\\frac{${above.tex}}{${below.tex}}`,
  words: `${inside(above)} over ${inside(below)}`,
  level: level.fraction,
})

/** A product, factors close together; a dot before a number; `t * t` as a power. */
export function times(left: Piece, right: Piece): Piece {
  const factor = right.tex.startsWith("-") ? bracketed(right) : held(right, level.product)
  const tail = left.tail ?? { before: null, factor: left, count: 1 }
  if (tail.factor.tex === factor.tex && factor.level === level.atom && !/^\d/.test(factor.tex)) {
    const count = tail.count + 1
    const power = powerOf(factor, count)
    const whole = tail.before ? product(tail.before, power) : power
    return { ...whole, tail: { before: tail.before, factor, count } }
  }
  const before = held(left, level.product)
  return { ...product(before, factor), tail: { before, factor, count: 1 } }
}

const product = (left: Piece, right: Piece): Piece => ({
  tex: `${left.tex}${joint(left.tex, right.tex)}${right.tex}`,
  words: `${left.words} times ${right.words}`,
  level: level.product,
})

/** What parts two factors: a thin space; a dot before a number and between two words, which would run together. */
function joint(left: string, right: string): string {
  const afterWord = /\\text\{[^{}]*\}$/.test(left)
  if (/^\d/.test(right) || (afterWord && right.startsWith("\\text{"))) return "\\cdot "
  return afterWord && right.startsWith("\\overrightarrow{\\text") ? "\\;" : "\\,"
}

/** A whole power of a piece. */
export function powerOf(base: Piece, exponent: number): Piece {
  const first = held(base, level.atom)
  return {
    tex: `{${first.tex}}^{${exponent}}`,
    words: `${first.words} ${spokenPower(exponent)}`,
    level: level.power,
  }
}

export const spokenPower = (power: number): string =>
  power === 2 ? "squared" : power === 3 ? "cubed" : `to the power ${String(power).replace("-", "minus ")}`
