import type { SyntaxNode } from "@lezer/common"
import {
  assignmentOf,
  bare,
  binaryOf,
  callOf,
  factorsOf,
  isName,
  termsOf,
  unaryMinusOf,
} from "./expression.ts"
import { addedTo, sumsIn, turned, updatesOf } from "./pieces.ts"
import type { Role, Roles } from "./roles.ts"
import { type Edit, nodesIn, replace, type Script, textOf } from "./script.ts"
import type { Slip } from "./slip.ts"

export const signTurned: Slip = {
  name: "sign-turned",
  hint: "Something acts in just the opposite direction. Draw the arrows for one instant and compare each with the sign in your line.",
  teacher: "A sign is turned round.",
  make: (script, roles) => [
    ...turnedOperators(script),
    ...turnedFirstTerms(script),
    ...turnedMinuses(script),
    ...turnedValues(script, roles),
    ...turnedNumbers(script),
    ...(script.blank.inline ? turnedWhole(script) : []),
  ],
}

/** The first term of a sum turned, where it has no sign of its own: −a + b for a + b; not of a sum that divides. */
function turnedFirstTerms(script: Script): Edit[][] {
  return sumsIn(script).flatMap(sum => {
    const first = termsOf(script, sum)[0]!.node
    const update = sum.parent === null ? null : assignmentOf(script, sum.parent)
    const own = update !== null && isName(script, bare(first), update.target)
    const divides =
      sum.parent !== null && sum.parent.name === "ParenthesizedExpression" && isDivisor(script, sum.parent)
    return own || divides || first.name === "Number" ? [] : [[turned(script, first)]]
  })
}

const isDivisor = (script: Script, node: SyntaxNode): boolean => {
  const above = node.parent === null ? null : binaryOf(script, node.parent)
  return above?.sign === "/" && above.right.from === node.from
}

/** a + b with a minus, a − b with a plus; += with -=. */
function turnedOperators(script: Script): Edit[][] {
  const sums = nodesIn(script, "BinaryExpression").flatMap(node => {
    const binary = binaryOf(script, node)
    if (binary === null || !"+-".includes(binary.sign)) return []
    return [[replace(binary.operator, binary.sign === "+" ? "-" : "+")]]
  })
  const updates = nodesIn(script, "UpdateOp").flatMap(node => {
    const sign = textOf(script, node)
    return sign === "+=" || sign === "-=" ? [[replace(node, sign === "+=" ? "-=" : "+=")]] : []
  })
  return [...sums, ...updates]
}

function turnedMinuses(script: Script): Edit[][] {
  return nodesIn(script, "UnaryExpression").flatMap(node => {
    const operand = unaryMinusOf(script, node)
    return operand === null || operand.name === "Number" ? [] : [[replace(node, textOf(script, operand))]]
  })
}

/** A force given a value, with the whole value turned. */
function turnedValues(script: Script, roles: Roles): Edit[][] {
  return updatesOf(script, roles, "force", "field", "velocity", "other", "momentum", "position", "length")
    .filter(update => addedTo(script, update) === null && update.sign === "=")
    .map(update => [turned(script, update.value)])
}

/** A negative number written out, such as the component of a field. */
function turnedNumbers(script: Script): Edit[][] {
  return nodesIn(script, "UnaryExpression").flatMap(node => {
    const operand = unaryMinusOf(script, node)
    return operand?.name === "Number" ? [[replace(node, textOf(script, operand))]] : []
  })
}

function turnedWhole(script: Script): Edit[][] {
  const { from, to } = script.blank
  const text = script.text.slice(from, to).trim()
  return [[{ from, to, insert: text.startsWith("-") ? `(${text.slice(1)})` : `(-(${text}))` }]]
}

export const springSignTurned: Slip = {
  name: "spring-sign-turned",
  hint: "Stretch the spring in your mind: towards which end does it pull, and does your line say so? Then squeeze it.",
  teacher: "The spring pushes when stretched and pulls when squeezed.",
  make: (script, roles) => {
    const products = productsWith(script, roles, "stiffness")
    return [
      ...products.map(node => [turned(script, node)]),
      ...products.flatMap(node => swappedDifferences(script, node)),
    ]
  },
}

/** (a − b) written as (b − a). */
function swappedDifferences(script: Script, product: SyntaxNode): Edit[][] {
  return factorsOf(script, product).flatMap(factor => {
    const binary = binaryOf(script, bare(factor))
    if (binary === null || binary.sign !== "-") return []
    return [[replace(binary.node, `${textOf(script, binary.right)} - (${textOf(script, binary.left)})`)]]
  })
}

export const damperSignTurned: Slip = {
  name: "damper-sign-turned",
  hint: "Does the damper take energy out of the motion, or does it drive it? Compare the direction of its force with the velocity.",
  teacher: "The damper pushes along the motion instead of against it.",
  make: (script, roles) => turnedTerms(script, roles, "damping"),
}

export const frictionWithMotion: Slip = {
  name: "friction-with-motion",
  hint: "Friction speeds the body up. Hold its arrow against the velocity: which way should it point?",
  teacher: "Friction acts along the motion instead of against it.",
  make: (script, roles) => turnedTerms(script, roles, "friction coefficient"),
}

function turnedTerms(script: Script, roles: Roles, role: Role): Edit[][] {
  return productsWith(script, roles, role).flatMap(node => {
    const above = node.parent === null ? null : binaryOf(script, node.parent)
    if (above !== null && "+-".includes(above.sign) && above.right.from === node.from)
      return [[replace(above.operator, above.sign === "+" ? "-" : "+")]]
    return [[turned(script, node)]]
  })
}

/** The largest products in the blank that have a factor of this role. */
export function productsWith(script: Script, roles: Roles, role: Role): SyntaxNode[] {
  const products = nodesIn(script, "BinaryExpression", "CallExpression").filter(node => {
    const binary = binaryOf(script, node)
    const call = callOf(script, node)
    const product =
      binary !== null ? "*/".includes(binary.sign) : call?.object !== null && call?.name === "times"
    return (
      product &&
      factorsOf(script, node).some(f => f.name === "VariableName" && roles.role(textOf(script, f)) === role)
    )
  })
  return products.filter(
    node => !products.some(other => other !== node && other.from <= node.from && node.to <= other.to),
  )
}
