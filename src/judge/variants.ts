import type { Worksheet } from "../worksheet/contract.ts"
import { programOf } from "./reference.ts"
import { assignmentOf, binaryOf, statementOf } from "./slips/expression.ts"
import { addedTo, updatesOf } from "./slips/pieces.ts"
import { type Roles, rolesOf } from "./slips/roles.ts"
import { applyEdits, type Edit, nodesIn, replace, type Script, scriptsOf, textOf } from "./slips/script.ts"

/** A right answer written in another way. */
export interface Variant {
  readonly name: string
  readonly blank: string
  readonly answers: Readonly<Record<string, string>>
}

interface Rewriting {
  readonly name: string
  /** makes another method of it: right where only the limit counts */
  readonly restepped?: true
  make(script: Script, roles: Roles): Edit[][]
}

/** Ways of rewriting that leave an answer right in the limit of a short step. */
const rewritings: readonly Rewriting[] = [
  { name: "position before momentum", restepped: true, make: positionFirst },
  { name: "position with the mean momentum", restepped: true, make: meanMomentum },
  { name: "factors in another order", make: factorsSwapped },
  { name: "terms in another order", make: termsSwapped },
  { name: "a short form of the update", make: shortUpdates },
]

/** Other right answers that can be derived from the author's own. */
export function variantPrograms(worksheet: Worksheet): Variant[] {
  const { sheet, answers } = worksheet
  const program = programOf(worksheet, answers)
  return scriptsOf(program).flatMap(script => {
    const roles = rolesOf(script, sheet.parameters)
    const cell = program.blanks.find(blank => blank.name === script.blank.name)?.cell
    const asksForMethod = sheet.checks.some(
      ({ cell: checked, rule }) =>
        checked === cell && (rule.kind === "stepper" || (rule.kind === "converges" && rule.order > 1)),
    )
    const allowed = rewritings.filter(({ restepped }) => !restepped || !asksForMethod)
    return allowed.flatMap(({ name, make }) =>
      make(script, roles).map(edits => ({
        name,
        blank: script.blank.name,
        answers: { ...answers, [script.blank.name]: applyEdits(script, edits) },
      })),
    )
  })
}

/** Explicit Euler from momentum first: both statements change places. */
function positionFirst(script: Script, roles: Roles): Edit[][] {
  const pair = pairOf(script, roles)
  if (pair === null) return []
  const [first, second] = pair.map(update => statementOf(update.node)) as [
    ReturnType<typeof statementOf>,
    ReturnType<typeof statementOf>,
  ]
  return [[replace(first, textOf(script, second)), replace(second, textOf(script, first))]]
}

/** The position moves with the mean of old and new momentum. */
function meanMomentum(script: Script, roles: Roles): Edit[][] {
  const pair = pairOf(script, roles)
  if (pair === null) return []
  const [momentum, position] = pair
  const name = momentum.target
  const uses = nodesIn(script, "VariableName").filter(
    node => position.value.from <= node.from && node.to <= position.value.to && textOf(script, node) === name,
  )
  if (uses.length === 0) return []
  const statement = statementOf(momentum.node)
  return [
    [
      { from: statement.from, to: statement.from, insert: `const before_${name} = ${name}\n` },
      ...uses.map(node => replace(node, `((before_${name} + ${name}) / 2)`)),
    ],
  ]
}

function pairOf(script: Script, roles: Roles) {
  const plain = (role: "momentum" | "position") =>
    updatesOf(script, roles, role).filter(
      update => update.node.name === "AssignmentExpression" && addedTo(script, update) !== null,
    )
  const [momentum, ...moreMomenta] = plain("momentum")
  const [position, ...morePositions] = plain("position")
  if (momentum === undefined || position === undefined || moreMomenta.length + morePositions.length > 0)
    return null
  return momentum.node.to <= position.node.from ? ([momentum, position] as const) : null
}

function factorsSwapped(script: Script): Edit[][] {
  const products = nodesIn(script, "BinaryExpression").filter(node => binaryOf(script, node)?.sign === "*")
  const outermost = products.filter(
    node => !products.some(other => other !== node && other.from <= node.from && node.to <= other.to),
  )
  if (outermost.length === 0) return []
  return [
    outermost.map(node => {
      const { left, right } = binaryOf(script, node)!
      return replace(node, `(${textOf(script, right)}) * (${textOf(script, left)})`)
    }),
  ]
}

function termsSwapped(script: Script): Edit[][] {
  return nodesIn(script, "AssignmentExpression", "VariableDeclaration").flatMap(node => {
    const value = assignmentOf(script, node)?.value
    const binary = value === undefined ? null : binaryOf(script, value)
    if (binary === null || binary.sign !== "+") return []
    return [[replace(binary.node, `(${textOf(script, binary.right)}) + (${textOf(script, binary.left)})`)]]
  })
}

function shortUpdates(script: Script): Edit[][] {
  const edits = nodesIn(script, "AssignmentExpression").flatMap(node => {
    const update = assignmentOf(script, node)
    const binary = update === null ? null : binaryOf(script, update.value)
    if (update === null || binary === null || update.sign !== "=" || binary.sign !== "+") return []
    if (textOf(script, binary.left) !== update.target) return []
    return [replace(node, `${update.target} += ${textOf(script, binary.right)}`)]
  })
  return edits.length === 0 ? [] : [edits]
}
