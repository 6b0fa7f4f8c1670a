import ts from "typescript"
import { placeOf } from "../assemble.ts"
import type { About } from "./contract.ts"
import { nodeAt } from "./nodes.ts"
import type { Laid } from "./service.ts"
import { docWords, kindOfSymbol, resolved } from "./symbol-words.ts"

/** What the name at a place of the program is; null where no name stands. */
export function aboutAt(laid: Laid, offset: number): About | null {
  const found = nameAt(laid, offset)
  if (!found) return null
  const { node, from, to } = found
  const { checker, program } = laid
  const named = wantedPart(laid, node) ?? checker.getSymbolAtLocation(node)
  if (!named) return null
  const symbol = resolved(named, checker)
  const kind = kindOfSymbol(laid, symbol, node)
  const says = docWords(symbol, checker)
  const made = symbol.declarations?.[0]
  const at = made?.getSourceFile() === laid.file ? laid.toProgram(made.getStart(laid.file), made.end) : null
  const place = at && placeOf(program, at.from, at.from)
  return {
    from,
    to,
    head: kind.startsWith("(") ? `${node.text}${kind}` : `${node.text}: ${kind}`,
    says: says !== "" ? says : place ? `Made in ${place.cell}, line ${place.line}.` : "",
  }
}

/** A quantity by name is what the function says of it, not what is written here. */
function wantedPart({ checker }: Laid, node: ts.Identifier): ts.Symbol | undefined {
  const { parent } = node
  if (!ts.isPropertyAssignment(parent) || parent.name !== node) return undefined
  const whole = checker.getContextualType(parent.parent)
  return whole && checker.getPropertyOfType(whole, node.text)
}

/** The name that stands at, or ends at, an offset of the program. */
export function nameAt(
  laid: Laid,
  offset: number,
): { readonly node: ts.Identifier; readonly from: number; readonly to: number } | null {
  const word = wordAt(laid.program.text, offset)
  if (!word) return null
  const start = laid.toChecking(word.from + 1) - 1
  const node = nodeAt(laid.file, start, start + (word.to - word.from))
  return ts.isIdentifier(node) ? { node, ...word } : null
}

function wordAt(text: string, offset: number): { from: number; to: number } | null {
  const before = /[\p{ID_Continue}$]*$/u.exec(text.slice(0, offset))![0].length
  const behind = /^[\p{ID_Continue}$]*/u.exec(text.slice(offset))![0].length
  const from = offset - before
  const to = offset + behind
  return to > from && /^[\p{ID_Start}_$]/u.test(text.slice(from, to)) ? { from, to } : null
}
