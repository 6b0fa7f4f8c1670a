import type { File, Node } from "@babel/types"
import type { Program } from "./contract.ts"
import type { Hidden } from "./emit/emitter.ts"
import { withheldNames } from "./names.ts"
import type { Problem } from "./problem.ts"
import { problemAt } from "./problems.ts"
import type { Reference, Scope, Scopes } from "./scopes.ts"
import { walk } from "./syntax.ts"

interface Whole {
  readonly program: Program
  readonly file: File
  readonly hidden: Hidden
  readonly emptyBlanks: ReadonlySet<string>
  toProgram(offset: number): number
}

/** The kinds of node that are looked at here. */
const suspect: ReadonlySet<string> = new Set([
  "AssignmentExpression",
  "ExportAllDeclaration",
  "ExportDefaultDeclaration",
  "ExportNamedDeclaration",
  "Import",
  "ImportDeclaration",
  "ImportExpression",
  "ObjectProperty",
  "RegExpLiteral",
  "TSModuleDeclaration",
])

/** What is good JavaScript but has no place in a cell: loading other programs, running text, reserved names. */
export function misplaced(whole: Whole, scopes: Scopes): Problem[] {
  const problems: Problem[] = []
  const refuse = (node: { start?: number | null; end?: number | null }, text: string, todo: string): void => {
    const { program, toProgram } = whole
    problems.push(
      problemAt(program, toProgram(node.start!), toProgram(node.end!), "not-allowed-here", text, todo),
    )
  }
  for (const reference of scopes.references.values()) {
    const { name } = reference.node
    const withheld = reference.binding === null ? withheldNames.get(name) : undefined
    if (withheld !== undefined && !(name === "arguments" && insideFunction(reference))) {
      refuse(reference.node, withheld, "Take another way to write it.")
    }
  }
  const names = [...scopes.bindings.map(b => b.node), ...[...scopes.references.values()].map(r => r.node)]
  for (const node of names) {
    if (node.name.startsWith(whole.hidden.prefix) && !whole.emptyBlanks.has(node.name)) {
      refuse(node, `The name ${node.name} is used by the worksheet itself.`, "Choose another name.")
    }
  }
  for (const node of names) {
    if (node.name === "await") refuse(node, "await has no place here: a cell does not wait.", "Leave it out.")
  }
  walk(whole.file.program, node => {
    if (!suspect.has(node.type)) return true
    if (/^(Import|Export)\w*Declaration$/.test(node.type)) {
      const word = node.type.startsWith("Import") ? "import" : "export"
      refuse(
        node,
        `${word} has no place in a cell.`,
        "Use what the worksheet offers; cells see each other's names.",
      )
    }
    // the parser lets a type stand on the left side of = anywhere in brackets
    if (node.type === "AssignmentExpression" && (node.left.type as string) === "TSTypeCastExpression") {
      refuse(
        node.left,
        "A type has its place only where a name is made.",
        "Write let or const before the name, or leave the type out.",
      )
    }
    if (node.type === "ObjectProperty" && "typeParameters" in node) {
      refuse(
        node.typeParameters as Node,
        "A type has no place behind the name of a part.",
        "Write the name, a colon and the value: { mass: 2 }.",
      )
    }
    if (node.type === "TSModuleDeclaration") {
      refuse(node, "A namespace has no place in a cell.", "Put its names into an object: const name = { … }.")
      return false
    }
    if (node.type === "Import" || node.type === "ImportExpression") {
      refuse(node, "A cell cannot load another program.", "Use what the worksheet offers.")
    }
    if (node.type === "RegExpLiteral") {
      try {
        new RegExp(node.pattern, node.flags)
      } catch {
        refuse(
          node,
          "This pattern is not a valid regular expression.",
          "Check its brackets and the letters after its end.",
        )
      }
    }
    return true
  })
  for (const at of commasInTypes(whole.file)) {
    refuse(at, "A comma stands before the closing > here, and nothing behind it.", "Leave the comma out.")
  }
  return problems
}

/** The comma of Vec3<'N',>: our parser reads over it, the language of types does not have it. */
function commasInTypes(file: File): { start: number; end: number }[] {
  const tokens = file.tokens as readonly { type: { label?: string }; start: number; end: number }[]
  const pairs = tokens.flatMap((token, i) => {
    const next = tokens[i + 1]
    return token.type.label === "," && next?.type.label === "</>/<=/>=" ? [{ token, end: next.end }] : []
  })
  if (pairs.length === 0) return []
  const ends = new Set<number>()
  const visit = (value: unknown): void => {
    if (typeof value !== "object" || value === null) return
    if (Array.isArray(value)) {
      for (const one of value) visit(one)
      return
    }
    const node = value as Partial<Node>
    if (typeof node.type !== "string") return
    if (node.type === "TSTypeParameterInstantiation") ends.add(node.end!)
    for (const key in node) if (key !== "loc" && key !== "extra") visit(node[key as keyof typeof node])
  }
  visit(file.program)
  return pairs.filter(({ end }) => ends.has(end)).map(({ token }) => token)
}

function insideFunction(reference: Reference): boolean {
  for (let at: Scope | null = reference.scope; at !== null; at = at.parent) {
    if (at.fn !== null && at.fn.type !== "ArrowFunctionExpression") return true
  }
  return false
}
