import { parseText, walk } from "./syntax.ts"

/** What the locked realm refuses by its look alone, wherever it stands: see its rules for loading, running text and remarks. */
const suspicious = /\bimport\s*(?:\(|\/[/*])|\beval\s*\(|<!--|-->/

/**
 * The same program without any text that the realm takes for something forbidden. In a quoted text one character is written
 * as its number; a template is cut in two; in a pattern likewise. Emitted code itself never looks like that.
 */
export function harmlessText(js: string): string {
  if (!suspicious.test(js)) return js
  const parsed = parseText(js)
  if (!parsed.ok) return js
  const edits: { from: number; to: number; text: string }[] = []
  const tagged = new Set<unknown>()
  walk(parsed.file.program, (node, parent) => {
    if (node.type === "TaggedTemplateExpression") tagged.add(node.quasi)
    if (node.type === "StringLiteral" || node.type === "RegExpLiteral" || node.type === "TemplateElement") {
      const text = js.slice(node.start!, node.end!)
      if (suspicious.test(text) && !tagged.has(parent)) {
        edits.push({
          from: node.start!,
          to: node.end!,
          text: node.type === "TemplateElement" ? cutTemplate(text) : escaped(text),
        })
      }
    }
    return true
  })
  let out = ""
  let from = 0
  for (const edit of edits) {
    out += js.slice(from, edit.from) + edit.text
    from = edit.to
  }
  return out + js.slice(from)
}

/** The last character of the look is the one that is written as a number: none of them means anything special there. */
const escaped = (text: string): string =>
  text
    .replace(/\bimport(?=\s*(?:\(|\/[/*]))/g, "\\x69mport")
    .replace(/\beval(?=\s*\()/g, "\\x65val")
    .replace(/<!--/g, "\\x3c!--")
    .replace(/-->/g, "--\\x3e")

const cutTemplate = (text: string): string =>
  text
    .replace(/\bimport(?=\s*(?:\(|\/[/*]))/g, '$${"im"}port')
    .replace(/\beval(?=\s*\()/g, '$${"ev"}al')
    .replace(/<!--/g, '$${"<"}!--')
    .replace(/-->/g, '--$${">"}')
