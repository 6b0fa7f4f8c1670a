import type { File, Node } from "@babel/types"
import type { Hidden } from "../emit/emitter.ts"
import { type Kinds, VECTOR } from "../infer.ts"
import type { Binding, Reference, Scopes } from "../scopes.ts"
import { vectorMembers } from "../signatures.ts"
import { walk } from "../syntax.ts"
import type { Parts } from "./made.ts"
import { recordShape } from "./record-shape.ts"

/** Which names are kept as three plain numbers, and what the emission must know about them. */
export interface Split {
  /** the names of a split vector's components; null for any other name */
  parts(binding: Binding): Parts | null
  /** an assignment whose value nobody uses */
  isUnused(node: Node): boolean
}

interface Whole {
  readonly file: File
  readonly scopes: Scopes
  readonly kinds: Kinds
  readonly hidden: Hidden
  readonly known: ReadonlySet<string>
  readonly timeStep: string
}

/**
 * Chooses the names that hold a vector at all times and are mostly used component by component: in arithmetic, as v.x, in the
 * functions of vectors. They need no object; one is made where the vector as a whole goes elsewhere. Nobody can
 * tell, for vectors never change, unless the program asks whether two of them are the same object; then only those are
 * split that never leave as a whole.
 */
export function chooseSplit(whole: Whole): Split {
  const { scopes, kinds, hidden, timeStep } = whole
  const parents = new Map<Node, Node | null>()
  const unused = new Set<Node>()
  walk(whole.file.program, (node, parent) => {
    parents.set(node, parent)
    if (node.type === "ExpressionStatement") unused.add(node.expression)
    if (node.type === "ForStatement" && node.update) unused.add(node.update)
    return true
  })
  const sameness = asksForSameness(whole, parents.keys())
  const recorded = recordedNodes(whole, unused)
  const chosen = new Map<Binding, Parts>()
  for (const binding of scopes.bindings) {
    if (binding.kind !== "let" && binding.kind !== "const") continue
    if (
      kinds.ofBinding(binding) !== VECTOR ||
      (binding.name === timeStep && binding.scope === scopes.program)
    )
      continue
    const declarator = parents.get(binding.node)
    if (declarator?.type !== "VariableDeclarator" || declarator.id !== binding.node || !declarator.init)
      continue
    // a use inside an enum, which goes to the stripper as it stands
    if (binding.references.some(r => !parents.has(r.node))) continue
    // A name that a function inside uses lives in a place where numbers cost more than objects.
    if (binding.references.some(r => r.scope.home !== binding.scope.home)) continue
    if (binding.references.some(r => r.role !== "read" && r.parent.type !== "AssignmentExpression")) continue
    const leaving = binding.references.filter(
      r => r.role === "read" && !recorded.has(r.node) && leaves(r, parents, whole),
    ).length
    if (leaving > (sameness ? 0 : binding.sources.length)) continue
    const part = (axis: string): string => hidden.of(`${binding.name}$${axis}`)
    chosen.set(binding, { x: part("x"), y: part("y"), z: part("z") })
  }
  return { parts: binding => chosen.get(binding) ?? null, isUnused: node => unused.has(node) }
}

/** What calls of record keep number by number: it need not be a whole there. */
function recordedNodes({ scopes, kinds }: Whole, unused: ReadonlySet<Node>): ReadonlySet<Node> {
  const recorded = new Set<Node>()
  for (const node of unused) {
    const shape = node.type === "CallExpression" ? recordShape(node, scopes, kinds) : null
    for (const { node: value } of shape?.quantities ?? []) recorded.add(value)
  }
  return recorded
}

/** Whether the vector as a whole goes somewhere else here. */
function leaves(reference: Reference, parents: ReadonlyMap<Node, Node | null>, whole: Whole): boolean {
  const { node, parent } = reference
  switch (parent.type) {
    case "BinaryExpression":
      return !/^[-+*/]$/.test(parent.operator)
    case "UnaryExpression":
      return parent.operator !== "-"
    case "MemberExpression":
      return (
        parent.object !== node ||
        parent.computed ||
        parent.property.type !== "Identifier" ||
        !vectorMembers.has(parent.property.name)
      )
    case "CallExpression":
      return !(
        parent.callee.type === "Identifier" &&
        pureVectorFunctions.has(parent.callee.name) &&
        isLibrary(parent.callee, whole)
      )
    case "AssignmentExpression": {
      if (parent.right !== node || parent.left.type !== "Identifier") return true
      const target = whole.scopes.references.get(parent.left)?.binding
      return (
        !target ||
        whole.kinds.ofBinding(target) !== VECTOR ||
        parents.get(parent)?.type !== "ExpressionStatement"
      )
    }
    case "VariableDeclarator":
      return parent.id.type !== "Identifier"
    default:
      return true
  }
}

/** Functions of the library whose calls are written out component by component. */
const pureVectorFunctions = new Set(["dot", "cross", "magnitude", "unit", "distance"])

export function isLibrary(node: Node, { scopes, known }: Pick<Whole, "scopes" | "known">): boolean {
  return node.type === "Identifier" && scopes.references.get(node)?.binding === null && known.has(node.name)
}

const samenessNames = new Set(["Object", "Map", "Set", "WeakMap", "WeakSet", "Symbol"])
const samenessMethods = new Set(["includes", "indexOf", "lastIndexOf"])

/** Whether the program could find out if two vectors are one object. */
function asksForSameness({ scopes, kinds }: Whole, nodes: Iterable<Node>): boolean {
  for (const name of scopes.free.keys()) if (samenessNames.has(name)) return true
  const mayBe = (node: Node): boolean => (kinds.of(node) & VECTOR) !== 0
  for (const node of nodes) {
    if (node.type === "BinaryExpression") {
      if (/^[!=]==?$/.test(node.operator) && mayBe(node.left) && mayBe(node.right)) return true
    } else if (node.type === "SwitchStatement") {
      if (mayBe(node.discriminant)) return true
    } else if (node.type === "MemberExpression" && node.property.type === "Identifier") {
      if (samenessMethods.has(node.property.name)) return true
    }
  }
  return false
}
