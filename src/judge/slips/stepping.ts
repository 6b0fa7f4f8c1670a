import type { SyntaxNode } from "@lezer/common"
import { bare, binaryOf, statementOf, termsOf } from "./expression.ts"
import { addedTo, dropFactor, eachAndAll, updatesOf } from "./pieces.ts"
import type { Roles } from "./roles.ts"
import { type Edit, nodesIn, replace, type Script, textOf } from "./script.ts"
import type { Slip } from "./slip.ts"

const isTimeStep = (script: Script, roles: Roles, node: SyntaxNode): boolean =>
  node.name === "VariableName" && roles.role(textOf(script, node)) === "time step"

export const timeStepMissing: Slip = {
  name: "time-step-missing",
  hint: "One of your lines adds a quantity of another kind: a force is not yet a change of momentum, a velocity not yet a change of place. How long does each act in one step?",
  teacher: "The time step was left out of an update, so a whole second seems to pass in each step.",
  make: (script, roles) => eachAndAll(dropFactor(script, node => isTimeStep(script, roles, node))),
}

export const timeStepTwice: Slip = {
  name: "time-step-twice",
  hint: "Count how often the time step enters each update. Does the quantity that you add still have the right unit?",
  teacher: "The time step enters an update twice.",
  make: (script, roles) =>
    nodesIn(script, "BinaryExpression").flatMap(node => {
      const step = node.lastChild
      if (step === null || !isTimeStep(script, roles, step)) return []
      return [[replace(node, `${textOf(script, node)} * ${textOf(script, step)}`)]]
    }),
}

export const massMissing: Slip = {
  name: "mass-missing",
  hint: "Think of a body of twice the mass: where should it behave differently, and do your lines know its mass there?",
  teacher: "The mass was left out: momentum taken for velocity, or field strength for weight.",
  make: (script, roles) => {
    const isMass = (node: SyntaxNode): boolean =>
      node.name === "VariableName" && roles.role(textOf(script, node)) === "mass"
    return [...eachAndAll(dropFactor(script, isMass)), ...plainMeans(script, isMass)]
  },
}

/** A mean that is weighted with the masses, without the weights: (mA a + mB b) / (mA + mB) becomes (a + b) / 2. */
function plainMeans(script: Script, isMass: (node: SyntaxNode) => boolean): Edit[][] {
  return nodesIn(script, "BinaryExpression").flatMap(node => {
    const quotient = binaryOf(script, node)
    if (quotient === null || quotient.sign !== "/") return []
    const weights = termsOf(script, bare(quotient.right))
    const terms = termsOf(script, bare(quotient.left))
    if (terms.length < 2 || weights.length !== terms.length) return []
    if ([...weights, ...terms].some(term => term.negative)) return []
    if (!weights.every(term => isMass(bare(term.node)))) return []
    const plain = terms.flatMap(term => {
      const product = binaryOf(script, bare(term.node))
      if (product === null || product.sign !== "*") return []
      if (isMass(bare(product.left))) return [textOf(script, product.right)]
      return isMass(bare(product.right)) ? [textOf(script, product.left)] : []
    })
    if (plain.length < terms.length) return []
    return [[replace(node, `(${plain.join(" + ")}) / ${plain.length}`)]]
  })
}

export const massInverted: Slip = {
  name: "mass-inverted",
  hint: "Is a heavy body faster or slower than a light one of the same momentum? Read your line again with that in mind.",
  teacher: "Multiplied by the mass where it should be divided, or the other way round.",
  make: (script, roles) =>
    nodesIn(script, "BinaryExpression").flatMap(node => {
      const [left, operator, right] = [node.firstChild, node.firstChild?.nextSibling, node.lastChild]
      if (!left || !operator || !right) return []
      const sign = textOf(script, operator)
      const divides = sign === "/" && isMass(right.from, right.to)
      const multiplies = sign === "*" && isMass(left.from, left.to)
      if (divides) return [[replace(operator, "*")]]
      return multiplies ? [[replace(node, `${textOf(script, right)} / ${textOf(script, left)}`)]] : []
      function isMass(from: number, to: number): boolean {
        return roles.role(script.text.slice(from, to)) === "mass"
      }
    }),
}

export const momentumOverwritten: Slip = {
  name: "momentum-overwritten",
  hint: "After each step the momentum is only what this one step gave. What became of the momentum that the body had before?",
  teacher: "The momentum is set to the impulse of one step instead of being increased by it.",
  make: (script, roles) => overwritten(script, updatesOf(script, roles, "momentum")),
}

export const positionOverwritten: Slip = {
  name: "position-overwritten",
  hint: "After each step the position is only the displacement of this one step. Where was the body before?",
  teacher: "The position is set to the displacement of one step instead of being increased by it.",
  make: (script, roles) => overwritten(script, updatesOf(script, roles, "position")),
}

function overwritten(script: Script, updates: ReturnType<typeof updatesOf>) {
  return updates.flatMap(update => {
    const added = addedTo(script, update)
    if (added === null) return []
    if (added.own === null) return [[replace(update.operator, "=")]]
    const rest = textOf(script, update.value).replace(textOf(script, added.own), "").trim()
    return [[replace(update.value, rest.replace(/^\+\s*/, "").replace(/\s*\+$/, ""))]]
  })
}

export const positionNotUpdated: Slip = {
  name: "position-not-updated",
  hint: "Look whether each quantity that should change has a line that changes it in every step.",
  teacher: "The position is never moved on.",
  make: (script, roles) => removed(script, updatesOf(script, roles, "position")),
}

export const momentumNotUpdated: Slip = {
  name: "momentum-not-updated",
  hint: "The motion goes on as if no force acted. Which quantity does a force change, and which line does it?",
  teacher: "The momentum is never changed, so that no force has an effect.",
  make: (script, roles) => removed(script, updatesOf(script, roles, "momentum")),
}

function removed(script: Script, updates: ReturnType<typeof updatesOf>) {
  // An update that is the whole blank would leave it empty, which is not a slip but an open blank.
  return updates
    .filter(update => update.node.name === "AssignmentExpression")
    .map(update => statementOf(update.node))
    .filter(
      statement =>
        script.text.slice(script.blank.from, statement.from).trim() +
          script.text.slice(statement.to, script.blank.to).trim() !==
        "",
    )
    .map(statement => [replace(statement, "")])
}

export const forceMovesPosition: Slip = {
  name: "force-moves-position",
  hint: "What moves a body on in one step: the force on it, or the velocity that it has?",
  teacher: "The position is stepped with the force instead of the velocity.",
  make: (script, roles) => {
    const momentum = updatesOf(script, roles, "momentum")[0]
    const added = momentum === undefined ? null : addedTo(script, momentum)
    if (added === null) return []
    const force = textOf(script, added.whole)
      .match(/[A-Za-z_]\w*/g)
      ?.find(name => roles.role(name) === "force")
    if (force === undefined) {
      const impulse = impulseOf(script, added)
      return updatesOf(script, roles, "position").map(update => [
        replace(update.value, `${update.target} + ${impulse}`),
      ])
    }
    const step = nodesIn(script, "VariableName").find(node => isTimeStep(script, roles, node))
    return updatesOf(script, roles, "position").map(update => [
      replace(
        update.value,
        `${update.target} + ${force} * ${step === undefined ? script.timeStep : textOf(script, step)}`,
      ),
    ])
  },
}

/** What an update adds, without the old value. */
function impulseOf(script: Script, { whole, own }: NonNullable<ReturnType<typeof addedTo>>): string {
  const added = termsOf(script, whole).filter(({ node }) => own === null || node.from !== own.from)
  return added.map(({ node, negative }) => `${negative ? "-" : ""}(${textOf(script, node)})`).join(" + ")
}

export const oldMomentum: Slip = {
  name: "old-momentum",
  hint: "The position is moved with the momentum from before the step. In which order does the sheet take the two?",
  teacher: "The position was updated with the old momentum although the worksheet asks for momentum first.",
  make: (script, roles) => {
    const momentum = updatesOf(script, roles, "momentum")[0]
    const position = updatesOf(script, roles, "position")[0]
    if (momentum === undefined || position === undefined || position.node.from < momentum.node.from) return []
    const [first, second] = [statementOf(momentum.node), statementOf(position.node)]
    return [[replace(first, textOf(script, second)), replace(second, textOf(script, first))]]
  },
}

export const updateOutsideLoop: Slip = {
  name: "update-outside-loop",
  hint: "Count how often each of your lines is carried out. Which of them belongs to every single step?",
  teacher: "An update stands after the loop, so that it happens once instead of in each step.",
  make: (script, roles) => {
    const loops = nodesIn(script, "WhileStatement", "ForStatement", "DoStatement")
    return updatesOf(script, roles, "momentum", "position").flatMap(update => {
      const loop = loops.find(node => node.from < update.node.from && update.node.to < node.to)
      if (loop === undefined || update.node.name !== "AssignmentExpression") return []
      const statement = statementOf(update.node)
      return [
        [replace(statement, ""), { from: loop.to, to: loop.to, insert: `\n${textOf(script, statement)}` }],
      ]
    })
  },
}
