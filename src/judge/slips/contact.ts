import type { SyntaxNode } from "@lezer/common"
import { bare, binaryOf, callOf, mentions } from "./expression.ts"
import { type Choice, choicesIn, keepOnly } from "./pieces.ts"
import type { Roles } from "./roles.ts"
import { type Edit, nodesIn, replace, type Script, textOf } from "./script.ts"
import type { Slip } from "./slip.ts"

const aboutFriction = (script: Script, roles: Roles, choice: Choice): boolean =>
  [choice.then, choice.otherwise].some(
    branch =>
      branch !== null &&
      mentions(script, branch, name => roles.role(name) === "friction coefficient" || /friction/i.test(name)),
  )

/** A choice whose condition no longer matters: the first branch always, as a block or as an expression. */
function always(script: Script, choice: Choice): Edit {
  return keepOnly(script, choice.node, choice.then)
}

/** Neither the condition nor the smallest value: what stands in a choice always, with what is clipped there let go. */
function alwaysUnclipped(script: Script, roles: Roles): Edit[][] {
  const edits = unclipped(script, roles)
  return choicesIn(script).flatMap(({ node, then, otherwise }) => {
    const inside = edits.filter(edit => then.from <= edit.from && edit.to <= then.to)
    if (otherwise !== null || inside.length === 0) return []
    return [
      [...inside, { from: node.from, to: then.from, insert: "" }, { from: then.to, to: node.to, insert: "" }],
    ]
  })
}

const frictionNamed = (script: Script, roles: Roles, node: SyntaxNode): boolean =>
  mentions(script, node, name => roles.role(name) === "friction coefficient")

/** A one-sided value: max(0, x), min(x, 0) with x in its place. */
function unclipped(script: Script, roles: Roles): Edit[] {
  return nodesIn(script, "CallExpression").flatMap(node => {
    const call = callOf(script, node)
    if (call === null || !/^(Math\.)?(max|min)$/.test(call.name) || call.args.length !== 2) return []
    if (frictionNamed(script, roles, node)) return []
    const zero = call.args.findIndex(arg => Number(textOf(script, arg)) === 0)
    return zero < 0 ? [] : [replace(node, `(${textOf(script, call.args[1 - zero]!)})`)]
  })
}

/** The blank speaks of a push: of a spring, a squeeze, a force. */
const aboutPush = (script: Script, roles: Roles): boolean =>
  nodesIn(script, "VariableName", "VariableDefinition").some(node =>
    ["stiffness", "force", "damping"].includes(roles.role(textOf(script, node))),
  )

export const floorPulls: Slip = {
  name: "floor-pulls",
  hint: "A thing that is only touched can push but not hold. Follow its force through the end of the contact, and through the time when nothing touches.",
  teacher: "A one-sided contact acts both ways: it pulls, or acts without touching.",
  make: (script, roles) =>
    !aboutPush(script, roles)
      ? []
      : [
          ...unclipped(script, roles).map(edit => [edit]),
          ...alwaysUnclipped(script, roles),
          ...choicesIn(script)
            .filter(choice => !aboutFriction(script, roles, choice) && choice.otherwise === null)
            .map(choice => [
              setsToZero(script, choice) ? replace(choice.node, "{}") : always(script, choice),
            ]),
          ...choicesIn(script)
            .filter(choice => !aboutFriction(script, roles, choice) && choice.otherwise !== null)
            .flatMap(choice => [
              [always(script, choice)],
              [keepOnly(script, choice.node, choice.otherwise!)],
            ]),
        ],
}

/** `if (push < 0) push = 0`: the choice itself is the one-sidedness. */
const setsToZero = (script: Script, choice: Choice): boolean =>
  /=\s*(0|vec3\(0,\s*0,\s*0\))\s*;?\s*}?\s*$/.test(textOf(script, choice.then))

/** A condition that compares a value with zero, read the wrong way round. */
function turnedComparisons(script: Script): Edit[][] {
  return choicesIn(script).flatMap(choice => {
    const binary = binaryOf(script, bare(choice.condition))
    if (binary === null || !/^[<>]=?$/.test(binary.sign)) return []
    const turned = binary.sign.replace(/[<>]/, sign => (sign === "<" ? ">" : "<"))
    return [[replace(binary.operator, turned)]]
  })
}

export const comparisonTurned: Slip = {
  name: "comparison-turned",
  hint: "Say your condition in words, and for which instants of the motion it is true. Is it true when it should be?",
  teacher: "A comparison is turned round, so that a branch is taken in just the wrong cases.",
  make: script => turnedComparisons(script),
}

export const frictionWithoutContact: Slip = {
  name: "friction-without-contact",
  hint: "Friction acts although nothing presses the surfaces together. When may it act at all?",
  teacher: "Friction acts without contact.",
  make: (script, roles) =>
    choicesIn(script)
      .filter(choice => aboutFriction(script, roles, choice))
      .map(choice => [always(script, choice)]),
}

export const springWithoutRestLength: Slip = {
  name: "spring-without-rest-length",
  hint: "A spring at its rest length does nothing. Is the length in your line how long the spring is, or how much longer than at rest?",
  teacher: "The spring's whole length stands where its change of length belongs.",
  make: (script, roles) =>
    aboutSpring(script, roles) ? [...wholeLengths(script, roles), ...namedChanges(script, roles)] : [],
}

const aboutSpring = (script: Script, roles: Roles): boolean =>
  nodesIn(script, "VariableName").some(node => roles.role(textOf(script, node)) === "stiffness")

/** (length − rest) in the blank becomes the length. */
function wholeLengths(script: Script, roles: Roles): Edit[][] {
  return nodesIn(script, "BinaryExpression").flatMap(node => {
    const binary = binaryOf(script, node)
    if (binary === null || binary.sign !== "-") return []
    const rest = (side: typeof binary.left): boolean => {
      const inner = bare(side)
      if (inner.name !== "VariableName") return false
      return (
        roles.role(textOf(script, inner)) === "length" ||
        /rest|free|natural|^L0?$|^l0$/i.test(textOf(script, inner))
      )
    }
    if (rest(binary.right)) return [[keepOnly(script, node, binary.left)]]
    return rest(binary.left) ? [[keepOnly(script, node, binary.right)]] : []
  })
}

/** A length that stays: a parameter, or a name that is given as a number. */
function isRestLength(script: Script, roles: Roles, side: SyntaxNode): boolean {
  if (side.name !== "VariableName" || roles.role(textOf(script, side)) !== "length") return false
  const given = roles.definition(textOf(script, side))
  return given === null || bare(given).name === "Number"
}

/** A name that the given lines define as (length − rest): the length in its place, in the force or wherever it is used. */
function namedChanges(script: Script, roles: Roles): Edit[][] {
  const names = nodesIn(script, "VariableName").filter(node => roles.role(textOf(script, node)) === "length")
  return [...new Set(names.map(node => textOf(script, node)))].flatMap(name => {
    const definition = roles.definition(name)
    const binary = definition === null ? null : binaryOf(script, bare(definition))
    if (binary === null || binary.sign !== "-") return []
    const [length] = [binary.left, binary.right].filter(side => !isRestLength(script, roles, bare(side)))
    if (length === undefined) return []
    const uses = names.filter(node => textOf(script, node) === name)
    const products = uses.filter(node => node.parent !== null && /[*]/.test(textOf(script, node.parent)))
    const put = (nodes: typeof uses): Edit[] =>
      nodes.map(node => replace(node, `(${textOf(script, length)})`))
    return products.length < uses.length && products.length > 0 ? [put(products), put(uses)] : [put(uses)]
  })
}
