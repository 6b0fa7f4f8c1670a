import type { SyntaxNode } from "@lezer/common"
import { parser } from "@lezer/javascript"
import type { Program } from "./contract.ts"

/** What the lines of a cell's blanks name; comments and texts in quotes name nothing. */
export interface BlankWords {
  /** names that are read, "Math.atan2" for a property, ".times" for a property of whatever, and words such as "for" */
  readonly read: readonly string[]
  /** of the names those that are read for themselves and not for a property */
  readonly whole: readonly string[]
  /** names that these lines declare themselves */
  readonly own: readonly string[]
}

const typescript = parser.configure({ dialect: "ts" })

const languageWords = new Set([
  "for",
  "while",
  "do",
  "if",
  "else",
  "switch",
  "function",
  "return",
  "break",
  "continue",
  "new",
  "class",
  "try",
])

/** The names in the blanks of each cell of a program, over its syntax tree. */
export function blankWords({ text, cells, blanks }: Program): Record<string, BlankWords> {
  const tree = typescript.parse(text)
  const out: Record<string, BlankWords> = {}
  for (const { name } of cells) {
    const read = new Set<string>()
    const whole = new Set<string>()
    const own = new Set<string>()
    for (const { from, to } of blanks.filter(blank => blank.cell === name)) {
      tree.iterate({
        from,
        to,
        enter: ({ name: kind, from: start, to: end, node }) => {
          if (start < from || end > to) return
          const word = text.slice(start, end)
          if (kind === "VariableName") {
            read.add(word)
            if (node.parent?.name !== "MemberExpression" || node.parent.firstChild?.to !== end)
              whole.add(word)
          } else if (kind === "VariableDefinition") own.add(word)
          else if (kind === "PropertyName" || kind === "PropertyDefinition") read.add(`.${word}`)
          else if (kind === "MemberExpression") addMember(text, node, read)
          else if (languageWords.has(kind)) read.add(kind)
        },
      })
    }
    out[name] = { read: [...read].sort(), whole: [...whole].sort(), own: [...own].sort() }
  }
  return out
}

/** `Math.atan2`, and `Math["atan2"]` too. */
function addMember(text: string, node: SyntaxNode, read: Set<string>): void {
  const [object, last] = [node.firstChild, node.lastChild]
  if (object === null || last === null) return
  const property =
    last.name === "PropertyName" ? text.slice(last.from, last.to) : bracketed(text, last.prevSibling)
  if (property === null) return
  read.add(`.${property}`)
  if (object.name === "VariableName") read.add(`${text.slice(object.from, object.to)}.${property}`)
}

const bracketed = (text: string, node: SyntaxNode | null): string | null =>
  node?.name === "String" ? text.slice(node.from + 1, node.to - 1) : null

/**
 * Whether lines name a thing. `Math.atan2` is also named by lines that give `Math` another name, or take it apart,
 * and speak of `atan2`.
 */
export function namesThing({ read, whole, own }: BlankWords, thing: string): boolean {
  const dot = thing.lastIndexOf(".")
  if (dot < 0) return read.includes(thing) || read.includes(`.${thing}`)
  if (read.includes(thing)) return true
  const [object, property] = [thing.slice(0, dot), thing.slice(dot + 1)]
  return whole.includes(object) && (read.includes(`.${property}`) || own.includes(property))
}
