import type { SyntaxNode } from "@lezer/common"
import {
  type Assignment,
  assignmentOf,
  bare,
  binaryOf,
  callOf,
  isName,
  mentions,
  statementOf,
  termsOf,
} from "./expression.ts"
import { addedTo, dropFactor, sumsIn, updatesOf, withoutTerm } from "./pieces.ts"
import type { Roles } from "./roles.ts"
import { type Edit, everyNode, nodesIn, replace, type Script, textOf } from "./script.ts"
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

const forceRoles: readonly string[] = ["force", "stiffness", "damping", "field", "friction coefficient"]

const aboutForces = (script: Script, roles: Roles, node: SyntaxNode): boolean =>
  mentions(script, node, name => forceRoles.includes(roles.role(name)))

/** Whether a sum is the whole value of a force or a field: then each of its terms is one. */
function givesForce(script: Script, roles: Roles, sum: SyntaxNode): boolean {
  return updatesOf(script, roles, "force", "field").some(update => {
    const value = bare(update.value)
    return value.from === sum.from && value.to === sum.to
  })
}

/** Of several forces that the blank gives a value, each left at what it was before. */
function leftOut(script: Script, roles: Roles): Edit[][] {
  const given = updatesOf(script, roles, "force").filter(
    update => update.node.name === "AssignmentExpression" && update.sign === "=",
  )
  if (new Set(given.map(update => update.target)).size < 2) return []
  return [...new Set(given.map(update => update.target))].map(target =>
    given.filter(update => update.target === target).map(update => replace(update.node, target)),
  )
}

export const forceMissing: Slip = {
  name: "force-missing",
  hint: "Go round the body and name each thing that touches it, and then its weight. Has each of them its term in your lines?",
  teacher: "One of several forces was left out.",
  make: (script, roles) => [
    ...openSums(script).flatMap(({ node, indices }) =>
      (indices.length > 1 ? indices : [])
        .filter(
          i => givesForce(script, roles, node) || aboutForces(script, roles, termsOf(script, node)[i]!.node),
        )
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
    ...leftOut(script, roles),
  ],
  late: (script, roles) =>
    updatesOf(script, roles, "force")
      .filter(update => update.sign === "=" && update.node.name === "AssignmentExpression")
      .map(update => [replace(update.value, nothingOf(roles, update))]),
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
        (givesForce(script, roles, node) || terms.every(term => aboutForces(script, roles, term.node)))
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
    const constant = (node: SyntaxNode): boolean =>
      node.name === "Number" || /^Math\.(PI|E|SQRT)/.test(textOf(script, node))
    const numbers = dropFactor(script, constant, false)
    const doubled = nodesIn(script, "BinaryExpression").flatMap(node => {
      const left = node.firstChild
      const right = node.lastChild
      if (left === null || right === null || binaryOf(script, node)?.sign !== "*") return []
      if (right.name !== "VariableName" && right.name !== "CallExpression") return []
      const repeated = textOf(script, left).endsWith(textOf(script, right))
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
      node =>
        callOf(script, node)?.name === "magnitude" ||
        (node.name === "VariableName" && !isName(script, node, script.timeStep)),
      false,
    ).map(edit => [edit]),
}

const nothingOf = (roles: Roles, { value }: Assignment): string =>
  roles.shape(value) === "scalar" ? "0" : "vec3(0, 0, 0)"

export const secondBodyForgotten: Slip = {
  name: "second-body-forgotten",
  hint: "Two bodies take part. Does each of them get its own change of momentum and of place in every step?",
  teacher: "Only one of two bodies is moved on.",
  make: (script, roles) => {
    if (roles.momenta.length < 2) return []
    const others = roles.momenta.slice(1)
    const moved = updatesOf(script, roles, "momentum")
      .filter(update => others.includes(update.target) && update.node.name === "AssignmentExpression")
      .map(update => [replace(statementOf(update.node), "")])
    const pushed = updatesOf(script, roles, "force")
      .filter(update => update.sign === "=" && actsOnlyOn(script, update.target, others))
      .map(update => [replace(update.value, nothingOf(roles, update))])
    return [...moved, ...pushed]
  },
}

/** Every update that reads this force is one of these momenta's. */
function actsOnlyOn(script: Script, force: string, momenta: readonly string[]): boolean {
  const users = assignmentsIn(script).filter(
    found => found.target !== force && mentions(script, found.value, name => name === force),
  )
  return users.length > 0 && users.every(found => momenta.includes(found.target))
}

const assignmentsIn = (script: Script): Assignment[] =>
  everyNode(script, "AssignmentExpression").flatMap(node => assignmentOf(script, node) ?? [])

/** Where the given lines set another force to just the opposite value: that value once more. */
function sameAsAnother(script: Script, roles: Roles): Edit[][] {
  const written = (node: SyntaxNode): string => textOf(script, node).replace(/[\s()]/g, "")
  const others = assignmentsIn(script).filter(
    found => found.sign === "=" && roles.role(found.target) === "force",
  )
  return updatesOf(script, roles, "force").flatMap((update): Edit[][] => {
    const value = written(update.value)
    const opposite = value.startsWith("-") ? value.slice(1) : `-${value}`
    const other = others.find(found => found.target !== update.target && written(found.value) === opposite)
    return other === undefined ? [] : [[replace(update.value, textOf(script, other.value))]]
  })
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
    return [...flipped, ...named, ...sameAsAnother(script, roles)]
  },
}
