import ts from "typescript"
import { lineAt, placeOf } from "../assemble.ts"
import type { Program } from "../contract.ts"
import { knownNames } from "../names.ts"
import type { Problem } from "../problem.ts"
import { diagnosticWords, unknownName } from "./diagnostic-words.ts"
import { idleIn } from "./idle.ts"
import { nodeAt } from "./nodes.ts"
import { operatorWords } from "./operator-words.ts"
import { type Laid, programFileName } from "./service.ts"
import type { Words } from "./words.ts"

/** More than these at once help nobody. */
const most = 20

/**
 * What the checker finds in a program, in words and at the student's own line and column, in the order of the text.
 * Nothing for a text that cannot be read: that has messages of its own.
 */
export function typeProblems(laid: Laid): Problem[] {
  if (laid.service.getSyntacticDiagnostics(programFileName).length > 0) return []
  const found: { from: number; to: number; words: Words }[] = []
  const names = namesIn(laid)
  for (const diagnostic of laid.service.getSemanticDiagnostics(programFileName)) {
    if (diagnostic.start === undefined || diagnostic.length === undefined) continue
    const stretch = laid.toProgram(diagnostic.start, diagnostic.start + diagnostic.length)
    if (stretch === null) continue
    const node = nodeAt(laid.file, diagnostic.start, diagnostic.start + diagnostic.length)
    const words = diagnosticWords(laid, diagnostic, node, names)
    if (words) found.push({ ...stretch, words })
  }
  const visit = (node: ts.Node): void => {
    if (ts.isCallExpression(node)) {
      const operator = laid.set.operators.get(node.getStart(laid.file))
      const words = operator && operatorWords(laid, node, operator.sign)
      const stretch = words && operator && { from: operator.from, to: operator.to }
      if (stretch) found.push({ ...ofProgram(laid, stretch), words })
    } else if (ts.isIdentifier(node) && isValue(node)) {
      const words = withheld(laid, node, names)
      const stretch = words && laid.toProgram(node.getStart(laid.file), node.end)
      if (words && stretch) found.push({ ...stretch, words })
    }
    ts.forEachChild(node, visit)
  }
  visit(laid.file)
  const { program } = laid
  found.push(...idleIn(program))
  const told = new Set<string>()
  return found
    .sort((a, b) => a.from - b.from || b.to - a.to)
    .filter(({ from, words }) => {
      const blank = placeOf(program, from, from)
      const key = `${blank.cell} ${blank.line} ${words.code} ${words.text}`
      // one place, one message
      if (told.has(key) || told.has(String(from))) return false
      told.add(String(from))
      told.add(key)
      return !isGivenBeforeFilled(program, from)
    })
    .slice(0, most)
    .map(({ from, to, words }) => ({
      ...words,
      where: placeOf(program, from, to),
      excerpt: lineAt(program.text, from).slice(0, 200),
    }))
}

/** Where an operator stands: its offsets are of the filled text. */
function ofProgram(laid: Laid, { from, to }: { from: number; to: number }): { from: number; to: number } {
  return { from: laid.fromFilled(from), to: laid.fromFilled(to) }
}

/** Every name that a misspelt one may have been meant for. */
function namesIn({ program, prefix }: Laid): string[] {
  const made = program.text.match(/[\p{ID_Start}_$][\p{ID_Continue}$]*/gu) ?? []
  return [...new Set([...made, ...knownNames, ...program.parameters])].filter(
    name => !name.startsWith(prefix),
  )
}

/** A name that stands for a value, and not for a part, a key or a kind. */
function isValue(node: ts.Identifier): boolean {
  const { parent } = node
  if (ts.isPropertyAccessExpression(parent)) return parent.expression === node
  if (ts.isPropertyAssignment(parent)) return parent.initializer === node
  return (
    ts.isExpression(parent) ||
    ts.isStatement(parent) ||
    (ts.isVariableDeclaration(parent) && parent.initializer === node) ||
    ts.isShorthandPropertyAssignment(parent)
  )
}

/** A name that the language has and a cell has not, such as a clock. */
function withheld({ checker, program }: Laid, node: ts.Identifier, names: readonly string[]): Words | null {
  if (knownNames.has(node.text) || program.parameters.includes(node.text) || node.text === "arguments")
    return null
  const symbol = checker.getSymbolAtLocation(node)
  const made = symbol?.declarations?.[0]?.getSourceFile().fileName
  return made === "/language.d.ts"
    ? unknownName(
        node.text,
        names.filter(name => name !== node.text),
      )
    : null
}

/**
 * Given lines that use what a blank has yet to make are no fault of anybody: nothing is said of them while a blank before
 * them, in their own cell or an earlier one, holds nothing but remarks.
 */
function isGivenBeforeFilled(program: Program, at: number): boolean {
  if (program.blanks.some(blank => blank.from <= at && at <= blank.to)) return false
  return program.blanks.some(blank => isUnfilled(program.text.slice(blank.from, blank.to)))
}

const isUnfilled = (text: string): boolean => text.replace(/\/\/[^\n]*|\/\*[\s\S]*?\*\//g, "").trim() === ""
