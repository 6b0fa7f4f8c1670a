/** A name taken apart as a reader of formulas would: a letter or word, and what stands below it. */
export interface QuantitySymbol {
  /** the symbol itself in TeX, without arrow and subscript: `F`, `\mu`, `\text{free length}` */
  readonly base: string
  /** a word rather than a letter: takes a long arrow */
  readonly isWord: boolean
  /** TeX of the subscripts, in order */
  readonly below: readonly string[]
  /** a Δ before it, outside any arrow: `dt` is `\Delta t` */
  readonly change: boolean
  /** as read aloud */
  readonly spoken: string
}

const greek = new Set(
  [
    ..."alpha beta gamma delta epsilon zeta eta theta iota kappa lambda mu nu xi pi rho sigma tau upsilon phi chi psi omega".split(
      " ",
    ),
    ..."Gamma Delta Theta Lambda Xi Pi Sigma Upsilon Phi Psi Omega".split(" "),
  ], // biome-ignore format: one list
)

const greekLetters = new Map(
  Object.entries({
    α: "alpha",
    β: "beta",
    γ: "gamma",
    δ: "delta",
    ε: "epsilon",
    ζ: "zeta",
    η: "eta",
    θ: "theta",
    κ: "kappa",
    λ: "lambda",
    µ: "mu",
    μ: "mu",
    ν: "nu",
    ξ: "xi",
    π: "pi",
    ρ: "rho",
    σ: "sigma",
    τ: "tau",
    φ: "phi",
    χ: "chi",
    ψ: "psi",
    ω: "omega",
    Γ: "Gamma",
    Δ: "Delta",
    Θ: "Theta",
    Λ: "Lambda",
    Σ: "Sigma",
    Φ: "Phi",
    Ω: "Omega",
  }),
)

/** Words that follow a small letter directly as its subscript: `vmax`, `pnew`. Others, such as `mass`, are words. */
const subscriptWords = new Set(
  "max min new old net end start init tot total rel avg mean mid cm com ref next prev kin pot in out".split(
    " ",
  ),
)
/** Words that begin with a capital and are no letter with a subscript. */
const capitalWords = new Set(
  "Force Mass Energy Momentum Velocity Speed Position Time Weight Work Power Length Height Distance Impulse Torque Angle".split(
    " ",
  ),
)

const escaped = (text: string): string =>
  text.replace(/[\\{}$&#^_%~]/g, sign => (sign === "\\" ? "" : `\\${sign}`))
const spelled = (letter: string): string =>
  /^[A-Z]$/.test(letter)
    ? `capital ${letter}`
    : greek.has(letter) && /^[A-Z]/.test(letter)
      ? `capital ${letter.toLowerCase()}`
      : letter

/** `freeLength` into free, Length; `p1` into p, 1; `F_floor` into F, floor. */
function pieces(name: string): string[] {
  return name
    .split("_")
    .flatMap(part => part.match(/\p{Lu}\p{Ll}*|\p{Ll}+|\d+|\p{Lu}+|[^\p{L}\d]+|\p{L}+/gu) ?? [])
    .filter(piece => piece !== "")
}

/** One subscript: digits and single letters of places as they are, words upright. */
function subscript(piece: string): string {
  if (/^\d+$/.test(piece) || /^[xyzijkn]$/.test(piece)) return piece
  const letter = greekLetters.get(piece) ?? piece
  if (greek.has(letter)) return `\\${letter}`
  const text = /^\p{Lu}\p{Ll}+$/u.test(piece) ? piece.toLowerCase() : piece
  return `\\text{${escaped(text)}}`
}

/** The first piece: a letter, or a letter with its subscript written on, or a word. */
function head(piece: string): { base: string; isWord: boolean; below: string[]; spoken: string } {
  const letter = greekLetters.get(piece) ?? piece
  if (greek.has(letter)) return { base: `\\${letter}`, isWord: false, below: [], spoken: spelled(letter) }
  if (/^\p{L}$/u.test(piece))
    return { base: escaped(piece), isWord: false, below: [], spoken: spelled(piece) }
  const first = [...piece][0]!
  const rest = piece.slice(first.length)
  const splits =
    (/^[A-Z][a-z]+$/.test(piece) && !capitalWords.has(piece)) ||
    /^[a-z][xyz]$/.test(piece) ||
    (/^[a-z]/.test(piece) && subscriptWords.has(rest))
  if (splits)
    return { base: first, isWord: false, below: [subscript(rest)], spoken: `${spelled(first)} ${rest}` }
  return { base: piece, isWord: true, below: [], spoken: piece }
}

/** The symbol for a name of a program. */
export function symbolOf(name: string): QuantitySymbol {
  const all = pieces(name)
  let change = false
  if (/^d[a-zA-Z](?![a-z])/.test(name)) {
    // dt, dtBead, dx1; the letter may have been split off as a capital of its own: dT
    change = true
    if (all[0] === "d") all.shift()
    else all[0] = all[0]!.slice(1)
  } else if (all.length > 1 && /^d$|^[Dd]elta$|^Δ$/.test(all[0]!) && /^\p{L}/u.test(all[1]!)) {
    change = true
    all.shift()
    if (all[0]!.length === 1) all[0] = name.includes("_") ? all[0]! : all[0]!.toLowerCase()
  }
  const [one, ...more] = all
  if (one === undefined)
    return { base: `\\text{${escaped(name)}}`, isWord: true, below: [], change: false, spoken: name }
  const start = head(one)
  if (!start.isWord) {
    const below = [...start.below]
    // words below run together as one: F_{spring left}; numbers and components stand apart by commas
    for (const piece of more) below.push(subscript(piece))
    return {
      base: start.base,
      isWord: false,
      below: joinedWords(below),
      change,
      spoken: [change ? "delta" : "", start.spoken, ...more.map(piece => piece.toLowerCase())]
        .filter(Boolean)
        .join(" "),
    }
  }
  const words = [one]
  while (more[0] !== undefined && !/^\d+$/.test(more[0])) words.push(more.shift()!)
  const text = words
    .map((word, at) => (at > 0 && /^\p{Lu}\p{Ll}+$/u.test(word) ? word.toLowerCase() : word))
    .join(" ")
  return {
    base: `\\text{${escaped(text)}}`,
    isWord: true,
    below: more.map(subscript),
    change,
    spoken: [change ? "delta" : "", text, ...more].filter(Boolean).join(" "),
  }
}

/** Neighbouring upright words become one text. */
function joinedWords(below: readonly string[]): string[] {
  const joined: string[] = []
  for (const one of below) {
    const last = joined.at(-1)
    if (last?.startsWith("\\text{") && one.startsWith("\\text{"))
      joined[joined.length - 1] = `${last.slice(0, -1)} ${one.slice("\\text{".length)}`
    else joined.push(one)
  }
  return joined
}

/** A symbol set in TeX, with an arrow if it is a vector and further subscripts, such as a component or "new". */
export function setSymbol(
  symbol: QuantitySymbol,
  vector: boolean,
  more: readonly string[] = [],
  hat = false,
): string {
  const over = hat ? (symbol.isWord ? "\\widehat" : "\\hat") : symbol.isWord ? "\\overrightarrow" : "\\vec"
  const base = vector || hat ? `${over}{${symbol.base}}` : symbol.base
  const below = [...symbol.below, ...more]
  const under = below.length === 0 ? "" : `_{${below.join(",")}}`
  return `${symbol.change ? "\\Delta " : ""}${base}${under}`
}
