import { closing, looseBracket, opening } from "./brackets.ts"
import type { Program } from "./contract.ts"
import type { Filled } from "./empty-blanks.ts"
import { decimalComma, paperSign } from "./paper-signs.ts"
import type { Problem } from "./problem.ts"
import { completeLine, problemAt } from "./problems.ts"
import type { SyntaxFault } from "./syntax.ts"

/** Half of a two-part character, which no program text may hold; undefined if there is none. */
export function brokenCharacter(program: Program): Problem | undefined {
  const at = program.text.search(/[\uD800-\uDBFF](?![\uDC00-\uDFFF])|(?<![\uD800-\uDBFF])[\uDC00-\uDFFF]/)
  if (at < 0) return undefined
  return problemAt(
    program,
    at,
    at + 1,
    "broken-character",
    "The text holds a broken character here: half of a symbol that is made of two parts.",
    "Delete the character and type it again.",
  )
}

/**
 * A fault of syntax in words. The strict parser says that and where it stopped, which may be far behind the cause; a bracket
 * without its partner is told where it stands.
 */
export function syntaxProblem(
  program: Program,
  { text, names: emptyBlanks, toProgram, toText }: Filled,
  fault: SyntaxFault,
): Problem {
  const say = (
    from: number,
    to: number,
    code: Parameters<typeof problemAt>[3],
    words: string,
    todo: string,
  ): Problem => problemAt(program, toProgram(from), toProgram(to), code, words, todo)
  const { offset, reason, message } = fault
  if (fault.tooDeep) {
    return say(
      offset,
      offset,
      "nested-too-deep",
      "The program nests brackets or operators too deep to be read.",
      "Break the long line into several shorter ones, each with a name.",
    )
  }
  const bracket = bracketWords(program, text, toText)
  if (bracket) return say(bracket.from, bracket.to, bracket.code, bracket.text, bracket.todo)
  for (const name of emptyBlanks) {
    const at = text.indexOf(name)
    if (offset >= at - 1 && offset <= at + name.length + 1) {
      return say(
        at,
        at + name.length,
        "empty-blank",
        "Nothing is filled in here yet.",
        "Fill in the blank, then run again.",
      )
    }
  }
  const paper = paperSign(text, offset)
  if (paper) return say(paper.from, paper.to, "sign-of-paper", paper.text, paper.todo)
  const comma = /(?<![\w.])(\d+),$/.exec(text.slice(Math.max(0, offset - 30), offset))
  const tenths = /^\d+/.exec(text.slice(offset, offset + 30))
  if (comma && tenths) {
    const words = decimalComma(comma[0] + tenths[0])
    return say(offset - comma[0].length, offset + tenths[0].length, "decimal-comma", words.text, words.todo)
  }
  const cut = danglingSign(text, offset)
  if (cut && !/^(Unterminated|VarRedeclaration)/.test(reason)) {
    return say(cut.from, cut.to, "something-missing", `Something is missing after ${cut.sign}`, completeLine)
  }
  const taken = reason === "VarRedeclaration" ? takenBelow(program, text, fault, toText) : null
  if (taken) return say(taken.from, taken.to, taken.code, taken.text, taken.todo)
  const known = knownFault(reason, message, text, offset)
  if (known) return say(known.from, known.to, known.code, known.text, known.todo)
  const factor = factorBefore(text, offset)
  if (factor) return say(factor.from, factor.to, factor.code, factor.text, factor.todo)
  return unexpected(text, offset, say)
}

interface Words {
  readonly from: number
  readonly to: number
  readonly code: Parameters<typeof problemAt>[3]
  readonly text: string
  readonly todo: string
}

function knownFault(reason: string, message: string, text: string, offset: number): Words | null {
  const word = /^[\p{ID_Start}_$][\p{ID_Continue}$]*/u.exec(text.slice(offset, offset + 100))?.[0] ?? ""
  const at = { from: offset, to: offset + Math.max(1, word.length) }
  const endOfLine = text.indexOf("\n", offset) < 0 ? text.length : text.indexOf("\n", offset)
  switch (reason) {
    case "UnterminatedString":
      return {
        from: offset,
        to: endOfLine,
        code: "text-not-closed",
        text: `The text that begins with ${text[offset]} is not closed on its line.`,
        todo: `Put ${text[offset]} where the text ends.`,
      }
    case "UnterminatedTemplate": {
      const from = openBacktick(text, offset)
      return {
        from,
        to: from + 1,
        code: "text-not-closed",
        text: "The text that begins with ` is not closed.",
        todo: "Put ` where the text ends.",
      }
    }
    case "UnterminatedComment":
      return {
        from: offset,
        to: offset + 2,
        code: "text-not-closed",
        text: "The remark that begins with /* is not closed.",
        todo: "Put */ where the remark ends, or use // for a remark that ends with its line.",
      }
    case "UnterminatedRegExp":
      return {
        from: offset,
        to: endOfLine,
        code: "text-not-closed",
        text: "What begins with / was read as a pattern, and it is not closed.",
        todo: "For a fraction, check that a number or a name stands before the / sign.",
      }
    case "VarRedeclaration": {
      const name = /'(.+?)'/.exec(message)?.[1] ?? word
      return {
        ...at,
        code: "declared-twice",
        text: `The name ${name} is already taken: it was made earlier.`,
        todo: `To give it a new value write ${name} = … without let or const; for a second quantity choose another name.`,
      }
    }
    case "NumberIdentifier": {
      const number = /[\d.]+$/.exec(text.slice(Math.max(0, offset - 30), offset))?.[0] ?? ""
      return signMissing({ from: offset - number.length, to: at.to }, number, word)
    }
    case "IllegalReturn":
      return notHere(
        at,
        "return has no place outside a function.",
        "Leave it out, or put the lines into a function.",
      )
    case "ImportOutsideModule":
    case "ImportMetaOutsideModule":
      return notHere(at, "A cell cannot load another program.", "Use what the worksheet offers.")
    case "ModuleAttributesWithDuplicateKeys":
      return null
    case "InvalidLhs":
    case "InvalidLhsBinding":
    case "InvalidLhsOptionalChaining":
      return {
        ...at,
        code: "cannot-understand",
        text: "A value cannot be given to what stands left of the = sign.",
        todo: "Left of = put one name, such as p. To compare two values write ===.",
      }
    case "DeclarationMissingInitializer":
      return {
        ...at,
        code: "something-missing",
        text: "A const needs its value in the same line.",
        todo: "Write const name = value, or use let.",
      }
    case "UnexpectedTokenUnaryExponentiation":
      return {
        ...at,
        code: "cannot-understand",
        text: "A sign before a power can mean two things: -a ** 2.",
        todo: "Write -(a ** 2) or (-a) ** 2.",
      }
    case "AwaitNotInAsyncContext":
    case "AwaitExpressionFormalParameter":
      return notHere(at, "await has no place here: a cell does not wait.", "Leave it out.")
  }
  if (word === "await" || /\bawait\s*$/.test(text.slice(Math.max(0, offset - 10), offset))) {
    return notHere(at, "await has no place here: a cell does not wait.", "Leave it out.")
  }
  if (word === "import" || word === "export") {
    return notHere(at, `${word} has no place in a cell.`, "Use what the worksheet offers.")
  }
  if (/^(UnexpectedToken|MissingSemicolon|UnexpectedKeyword|)$/.test(reason)) return null
  return {
    ...at,
    code: "cannot-understand",
    text: `This cannot be read as a program: ${message.replace(/\.$/, "")}.`,
    todo: "Compare the line with one that works.",
  }
}

/** A blank that makes a name which a given line makes as well: told in the blank, even where the given line comes behind it. */
function takenBelow(
  { blanks }: Program,
  text: string,
  { offset, message }: SyntaxFault,
  toText: (offset: number) => number,
): Words | null {
  const name = /'(.+?)'/.exec(message)?.[1]
  const places = blanks.map(({ from, to }) => ({ from: toText(from), to: toText(to) }))
  if (name === undefined || places.some(({ from, to }) => from <= offset && offset < to)) return null
  for (const { from, to } of places) {
    for (const made of text.slice(from, to).matchAll(making)) {
      if (made[1] !== name) continue
      const end = from + made.index + made[0].length
      return {
        from: end - name.length,
        to: end,
        code: "declared-twice",
        text: `The name ${name} is already taken: a given line makes it.`,
        todo: "Choose another name here.",
      }
    }
  }
  return null
}

const making = /\b(?:let|const|var|function|class)\s+([\p{ID_Start}_$][\p{ID_Continue}$]*)/gu

function notHere(at: { from: number; to: number }, text: string, todo: string): Words {
  return { ...at, code: "not-allowed-here", text, todo }
}

const signMissing = (at: { from: number; to: number }, number: string, name: string): Words => ({
  ...at,
  code: "sign-missing",
  text: `Between ${number} and ${name} a sign is missing.`,
  todo: `Write a product with its * sign: ${number} * ${name}.`,
})

function openBacktick(text: string, offset: number): number {
  if (text[offset] === "`") return offset
  const before = text.lastIndexOf("`", offset)
  return before < 0 ? Math.min(offset, Math.max(0, text.length - 1)) : before
}

/**
 * A bracket without its partner: in a blank, where it is the student's own, else in a cell. The given lines balance, so
 * a bracket that is loose in a blank is never sought in them.
 */
function bracketWords(
  { blanks, cells }: Program,
  text: string,
  toText: (offset: number) => number,
): Words | null {
  for (const region of [...blanks, ...cells]) {
    const loose = looseBracket(text, toText(region.from), toText(region.to))
    if (loose?.kind === "text") return null
    if (loose === null) continue
    const within = "inline" in region ? ", within this blank" : ""
    return loose.kind === "opened" ? notClosed(loose, within) : notOpened(loose)
  }
  return null
}

const notClosed = ({ sign, at }: { sign: string; at: number }, within: string): Words => ({
  from: at,
  to: at + sign.length,
  code: "bracket-not-closed",
  text: `The bracket ${sign} opened here is not closed.`,
  todo: `Put ${closing[sign]} where it ends${within}.`,
})

const notOpened = ({ sign, at }: { sign: string; at: number }): Words => ({
  from: at,
  to: at + 1,
  code: "bracket-not-opened",
  text: `The bracket ${sign} closes nothing here.`,
  todo: `Take it away, or put ${opening[sign]} where its part begins.`,
})

/** The operator on which a line breaks off: before the fault, or within what was read as one thing over two lines. */
function danglingSign(text: string, offset: number): { from: number; to: number; sign: string } | null {
  const before = text.slice(0, offset).trimEnd()
  const sign = /(\*\*|=>|[<>=!]=+|&&|\|\||\?\?|[-+*/%]=|(?<!\+)\+|(?<!-)-|[*/%=<>,(?:&|^~])$/.exec(
    before,
  )?.[0]
  if (sign !== undefined) {
    const rest = text.slice(before.length)
    const cut =
      /^\s*$/.test(rest) || /^\s*\n/.test(rest) || (/^\s*[)\]};,*/%=<>]/.test(rest) && !/[,(]/.test(sign))
    if (cut) return { from: before.length - sign.length, to: before.length, sign }
  }
  const inside = /^[^=;]*?([-+*/%])[ \t]*\n/.exec(text.slice(offset, offset + 500))
  if (inside === null || !/^[^=;]*=[^=]/.test(text.slice(offset, offset + 500))) return null
  const at = offset + inside[0].trimEnd().length - 1
  return { from: at, to: at + 1, sign: inside[1]! }
}

/** A name behind a number or a name, within one line: the product of algebra, which is written without a sign there. */
function factorBefore(text: string, offset: number): Words | null {
  const word = "[\\p{ID_Start}_$][\\p{ID_Continue}$.]*"
  const start = Math.max(0, text.lastIndexOf("\n", offset - 1) + 1, offset - 200)
  const before = new RegExp(`(?<![\\p{ID_Continue}$.])(\\d+\\.?\\d*|${word})[^\\S\\n]*$`, "u").exec(
    text.slice(start, offset),
  )
  const behind = new RegExp(`^[^\\S\\n]*(${word})`, "u").exec(text.slice(offset, offset + 100))
  if (!before || !behind) return null
  const [first, second] = [before[1]!, behind[1]!]
  // what begins a line may be a misspelt word of the language, such as "cosnt"
  if (!/^\d/.test(first) && text.slice(start, start + before.index).trim() === "") return null
  if (languageWord.test(first) || languageWord.test(second)) return null
  return signMissing(
    { from: offset - before[0].length, to: offset + behind[0].length },
    first,
    second.replace(/\.$/, ""),
  )
}

const languageWord =
  /^(?:as|await|break|case|catch|class|const|continue|default|delete|do|else|finally|for|function|if|in|instanceof|let|new|of|return|satisfies|switch|throw|try|type|typeof|var|void|while|with)$/

function unexpected(
  text: string,
  fault: number,
  say: (from: number, to: number, code: Words["code"], words: string, todo: string) => Problem,
): Problem {
  const offset = fault + /^[ \t]*/.exec(text.slice(fault))![0].length
  const here =
    /^(?:[\p{ID_Start}_$][\p{ID_Continue}$]*|[\d.]+|\S)/u.exec(text.slice(offset, offset + 100))?.[0] ?? ""
  if (here === "" || here === ";") {
    const end = here === "" ? text.slice(0, offset).trimEnd().length : offset
    return say(
      end,
      end + here.length,
      "something-missing",
      "The line ends before it is complete.",
      "Add what is missing at its end.",
    )
  }
  return say(
    offset,
    offset + here.length,
    "cannot-understand",
    `${here} was not expected here.`,
    "Look at what stands before it: an operator, a comma or a bracket may be missing.",
  )
}
