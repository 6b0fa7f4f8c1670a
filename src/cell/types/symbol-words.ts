import ts from "typescript"
import { kindWords } from "./kinds.ts"
import type { Laid } from "./service.ts"

/** What an imported name stands for. */
export function resolved(symbol: ts.Symbol, checker: ts.TypeChecker): ts.Symbol {
  return symbol.flags & ts.SymbolFlags.Alias ? checker.getAliasedSymbol(symbol) : symbol
}

export function docWords(symbol: ts.Symbol, checker: ts.TypeChecker): string {
  const text = ts.displayPartsToString(symbol.getDocumentationComment(checker)).replace(/\s+/g, " ").trim()
  const end = /\.(?=\s[A-Z]|$)/u.exec(text)
  return end === null ? text : text.slice(0, end.index + 1)
}

/** The unit in the annotation where a name was made: kg m/s of `let p: Vec3<'kg m/s'>`. */
function unitOf(symbol: ts.Symbol): string {
  const made = symbol.declarations?.[0]
  const type = made && (ts.isVariableDeclaration(made) || ts.isParameter(made)) ? made.type : undefined
  if (!type || !ts.isTypeReferenceNode(type)) return ""
  const argument = type.typeArguments?.[0]
  return argument && ts.isLiteralTypeNode(argument) && ts.isStringLiteral(argument.literal)
    ? argument.literal.text
    : ""
}

/** What a name holds, in few words: "a vector, kg m/s". A function shows how it is called. */
export function kindOfSymbol(laid: Laid, symbol: ts.Symbol, at: ts.Node): string {
  const { checker } = laid
  const type = checker.getTypeOfSymbolAtLocation(symbol, at)
  const signature = type.getCallSignatures()[0]
  if (signature) return callWords(signature)
  const unit = unitOf(symbol)
  const kind = kindWords(checker.getBaseTypeOfLiteralType(type), checker)
  return unit === "" || unit === "1" ? kind : `${kind}, ${unit}`
}

/** (position, momentum, about?) */
export function callWords(signature: ts.Signature): string {
  const parts = signature.parameters.map(one => {
    const made = one.valueDeclaration
    if (!made || !ts.isParameter(made)) return one.name
    if (made.dotDotDotToken) return `…${one.name}`
    return made.questionToken || made.initializer ? `${one.name}?` : one.name
  })
  return `(${parts.join(", ")})`
}
