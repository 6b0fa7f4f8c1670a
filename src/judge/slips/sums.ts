import type { SyntaxNode } from "@lezer/common"
import { bare, callOf, isName, mentions, statementOf, termsOf } from "./expression.ts"
import { addedTo, dropFactor, sumsIn, updatesOf, withoutTerm } from "./pieces.ts"
import type { Roles } from "./roles.ts"
import { type Edit, nodesIn, replace, type Script, textOf } from "./script.ts"
import type { Slip } from "./slip.ts"

/** Sums in the blank, with the terms that may be left out: all but the old value of what is updated. */
function openSums(script: Script): { node: SyntaxNode; indices: number[] }[] {
  const updates = nodesIn(script, "AssignmentExpression").map(node => node.firstChild)
  return sumsIn(script).map(node => ({
    node,
    indices: termsOf(script, node).flatMap(({ node: term }, i) =>
      updates.some(target => target !== null && isName(script, bare(term), textOf(script, target)))
        ? []
        : [i],
    ),
  }))
}

const aboutForces = (script: Script, roles: Roles, node: SyntaxNode): boolean =>
  mentions(script, node, name =>
    ["force", "stiffness", "damping", "field", "friction coefficient"].includes(roles.role(name)),
  )

export const forceMissing: Slip = {
  name: "force-missing",
  hint: "Go round the body and name each thing that touches it, and then its weight. Has each of them its term in your lines?",
  teacher: "One of several forces was left out.",
  make: (script, roles) => [
    ...openSums(script).flatMap(({ node, indices }) =>
      (indices.length > 1 ? indices : [])
        .filter(i => aboutForces(script, roles, termsOf(script, node)[i]!.node))
        .map(i => [withoutTerm(script, node, i)]),
    ),
    ...nodesIn(script, "CallExpression").flatMap(node => {
      const call = callOf(script, node)
      if (call?.name !== "sum" || call.args.length < 2) return []
      return call.args.map((_, i) => [
        replace(
          node,
          `sum(${call.args
            .filter((_, j) => j !== i)
            .map(arg => textOf(script, arg))
            .join(", ")})`,
        ),
      ])
    }),
  ],
}

export const termMissing: Slip = {
  name: "term-missing",
  hint: "Compare your line with the equation term by term. Is one of them missing?",
  teacher: "A term of the equation was left out.",
  make: script =>
    openSums(script).flatMap(({ node, indices }) => indices.map(i => [withoutTerm(script, node, i)])),
}

export const onlyLastForce: Slip = {
  name: "only-last-force",
  hint: "Several forces act at once. Follow the value of the net force line by line: what does it hold in the end?",
  teacher: "Each force overwrites the one before, so that only the last one counts.",
  make: (script, roles) => {
    const sums = openSums(script).flatMap(({ node, indices }) => {
      const terms = termsOf(script, node)
      const last = terms[terms.length - 1]
      return indices.length === terms.length &&
        terms.length > 1 &&
        last !== undefined &&
        aboutForces(script, roles, node)
        ? [[replace(node, last.negative ? `-(${textOf(script, last.node)})` : textOf(script, last.node))]]
        : []
    })
    const gathered = updatesOf(script, roles, "force").flatMap((update): Edit[][] => {
      const added = addedTo(script, update)
      if (added === null) return []
      if (added.own === null) return [[replace(update.operator, "=")]]
      const own = termsOf(script, added.whole).findIndex(term =>
        isName(script, bare(term.node), update.target),
      )
      return [[withoutTerm(script, added.whole, own)]]
    })
    return [...sums, ...gathered]
  },
}

export const factorMissing: Slip = {
  name: "factor-missing",
  hint: "Compare your line with the equation factor by factor. Is each of them there, and as often as it should be?",
  teacher: "A number or a repeated factor of the equation was left out.",
  make: script => {
    const numbers = dropFactor(script, node => node.name === "Number", false)
    const doubled = nodesIn(script, "BinaryExpression").flatMap(node => {
      const left = node.firstChild
      const right = node.lastChild
      if (left === null || right === null || right.name !== "VariableName") return []
      const repeated =
        textOf(script, left).endsWith(textOf(script, right)) && textOf(script, left.nextSibling!) === "*"
      return repeated ? [replace(node, textOf(script, left))] : []
    })
    return [...numbers, ...doubled].map(edit => [edit])
  },
}

export const factorLost: Slip = {
  name: "factor-lost",
  hint: "Check the unit of each product in your lines. Is a quantity missing that should be multiplied in?",
  teacher: "A quantity was left out of a product.",
  make: script =>
    dropFactor(
      script,
      node => node.name === "VariableName" && !isName(script, node, script.timeStep),
      false,
    ).map(edit => [edit]),
}

export const secondBodyForgotten: Slip = {
  name: "second-body-forgotten",
  hint: "Two bodies take part. Does each of them get its own change of momentum and of place in every step?",
  teacher: "Only one of two bodies is moved on.",
  make: (script, roles) => {
    if (roles.momenta.length < 2) return []
    const others = roles.momenta.slice(1)
    return updatesOf(script, roles, "momentum")
      .filter(update => others.includes(update.target) && update.node.name === "AssignmentExpression")
      .map(update => [replace(statementOf(update.node), "")])
  },
}

export const thirdLawForgotten: Slip = {
  name: "third-law-forgotten",
  hint: "Two bodies act on each other. Add up both changes of momentum of one step: what should the sum be?",
  teacher: "Both bodies get the same force instead of opposite ones.",
  make: (script, roles) => {
    if (roles.momenta.length < 2) return []
    const updates = updatesOf(script, roles, "momentum")
    const flipped = updates.slice(1).flatMap((update): Edit[][] => {
      const added = addedTo(script, update)
      if (added === null) return []
      if (added.own === null) return [[replace(update.operator, update.sign === "-=" ? "+=" : "-=")]]
      const operator = added.own.nextSibling
      if (operator === null || !"+-".includes(textOf(script, operator))) return []
      return textOf(script, operator) === "-" ? [[replace(operator, "+")]] : []
    })
    const named = updatesOf(script, roles, "force").flatMap((update): Edit[][] => {
      const value = bare(update.value)
      const minus = value.name === "UnaryExpression" && value.lastChild?.name === "VariableName"
      return minus && roles.role(textOf(script, value.lastChild!)) === "force"
        ? [[replace(value, textOf(script, value.lastChild!))]]
        : []
    })
    return [...flipped, ...named]
  },
}
