import ts from "typescript"
import { knownNames } from "../names.ts"
import type { Suggestion, Suggestions } from "./contract.ts"
import { nodeAt } from "./nodes.ts"
import { type Laid, programFileName } from "./service.ts"
import { docWords, kindOfSymbol, resolved } from "./symbol-words.ts"

/** Words of the language that a student writes. */
const words: ReadonlySet<string> = new Set(
  "break const continue else false for function if let new of return true while".split(" "),
)
/** Kinds that an annotation may name, besides those of the library. */
const kindNames: ReadonlySet<string> = new Set(["Scalar", "Vec3", "number", "string", "boolean"])
/** Parts that everything has and nobody means. */
const hiddenParts: ReadonlySet<string> = new Set([
  "constructor",
  "hasOwnProperty",
  "isPrototypeOf",
  "propertyIsEnumerable",
  "toJSON",
  "toLocaleString",
  "valueOf",
])

/**
 * Names that may be meant at a place of the program, for a text that may be half-typed: those of the program, its
 * parameters, library and language, or the parts of what stands before a dot, or the quantities that a call takes by name.
 */
export function suggestAt(laid: Laid, offset: number): Suggestions | null {
  const { program, service, checker, file, prefix } = laid
  const before = /[\p{ID_Start}_$][\p{ID_Continue}$]*$/u.exec(program.text.slice(0, offset))?.[0] ?? ""
  const from = offset - before.length
  if (/[\d"'`]$/.test(program.text.slice(0, from))) return null
  const at = laid.toChecking(offset)
  const found = service.getCompletionsAtPosition(programFileName, at, { includeSymbol: true })
  if (!found) return null
  const node = nodeAt(file, Math.max(0, at - 1), at)
  const parameters = new Set(program.parameters)
  const first = before.charAt(0).toLowerCase()
  const list: Suggestion[] = []
  for (const entry of found.entries) {
    const { name } = entry
    if (name.startsWith(prefix) || !/^[\p{ID_Start}_$][\p{ID_Continue}$]*$/u.test(name)) continue
    if (first !== "" && !name.toLowerCase().includes(first)) continue
    const symbol = entry.symbol && resolved(entry.symbol, checker)
    const sort = sortOf(laid, found.isMemberCompletion, entry, symbol, parameters)
    if (sort === null) continue
    list.push({
      name,
      sort,
      kind: symbol && isValue(symbol) ? kindOfSymbol(laid, symbol, node) : "",
      says: symbol ? docWords(symbol, checker) : "",
    })
  }
  return { from, list }
}

const isValue = (symbol: ts.Symbol): boolean => (symbol.flags & ts.SymbolFlags.Value) !== 0

function sortOf(
  laid: Laid,
  isMember: boolean,
  entry: ts.CompletionEntry,
  symbol: ts.Symbol | undefined,
  parameters: ReadonlySet<string>,
): Suggestion["sort"] | null {
  const { name } = entry
  if (isMember) return hiddenParts.has(name) ? null : "part"
  if (symbol === undefined) return words.has(name) || kindNames.has(name) ? "word" : null
  const made = symbol.declarations?.[0]
  if (made === undefined) return words.has(name) ? "word" : null
  const file = made.getSourceFile().fileName
  if (file === laid.file.fileName) {
    // above the program stand its parameters and what the checker itself needs
    const own = laid.toProgram(made.getStart(laid.file), made.end) !== null
    if (own) return ts.isPropertyAssignment(made) || ts.isPropertySignature(made) ? "part" : "own"
    return parameters.has(name) ? "parameter" : kindNames.has(name) ? "library" : null
  }
  if (file === "/language.d.ts") return knownNames.has(name) ? "language" : null
  if (ts.isPropertySignature(made) || ts.isMethodSignature(made)) return "part"
  return knownNames.has(name) || !isValue(symbol) ? "library" : null
}
