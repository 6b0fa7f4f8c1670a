import { bare, binaryOf, callOf, factorsOf, memberOf } from "./expression.ts"
import { eachAndAll, keepOnly, updatesOf } from "./pieces.ts"
import type { Roles } from "./roles.ts"
import { type Edit, nodesIn, replace, type Script, textOf } from "./script.ts"
import type { Slip } from "./slip.ts"

export const crossProductTurned: Slip = {
  name: "cross-product-turned",
  hint: "In a vector product the order counts. Curl the fingers of your right hand from the first factor to the second: where does the thumb point?",
  teacher: "The factors of a vector product are in the wrong order.",
  make: script =>
    eachAndAll(
      nodesIn(script, "CallExpression").flatMap(node => {
        const call = callOf(script, node)
        if (call?.name !== "cross") return []
        const [a, b] = call.object === null ? call.args : [call.object, call.args[0]]
        if (a === undefined || b === undefined) return []
        const [x, y] = [textOf(script, a), textOf(script, b)]
        return [replace(node, call.object === null ? `cross(${y}, ${x})` : `(${y}).cross(${x})`)]
      }),
    ),
}

export const degreesForRadians: Slip = {
  name: "degrees-for-radians",
  hint: "Which unit does the angle have where you take its sine or cosine, and which one do these functions expect?",
  teacher: "An angle in degrees was given to a function that takes radians, or was converted twice.",
  make: script => [
    ...nodesIn(script, "CallExpression").flatMap(node => {
      const call = callOf(script, node)
      if (call === null || call.args.length !== 1) return []
      if (/^(radians|toRadians|rad)$/.test(call.name)) return [[keepOnly(script, node, call.args[0]!)]]
      if (!/^(Math\.)?(sin|cos|tan)$/.test(call.name)) return []
      const arg = call.args[0]!
      const converts = factorsOf(script, arg).some(f => textOf(script, f) === "Math.PI")
      return converts ? [] : [[replace(arg, `(${textOf(script, arg)}) * 180 / Math.PI`)]]
    }),
    ...nodesIn(script, "BinaryExpression").flatMap(node => {
      const factors = factorsOf(script, node)
      const pi = factors.some(f => textOf(script, f) === "Math.PI")
      const half = factors.some(f => textOf(script, f) === "180")
      const angle = factors.find(f => f.name === "VariableName")
      const inner = binaryOf(script, node)
      return pi &&
        half &&
        angle !== undefined &&
        inner !== null &&
        "*/".includes(inner.sign) &&
        factors.length === 3
        ? [[replace(node, textOf(script, angle))]]
        : []
    }),
  ],
}

export const magnitudeForVector: Slip = {
  name: "magnitude-for-vector",
  hint: "A magnitude has no direction and is never negative. Which of your quantities should be able to point the other way?",
  teacher: "A magnitude stands where a vector or one of its components belongs.",
  make: (script, roles) => [
    ...nodesIn(script, "MemberExpression").flatMap(node => {
      const member = memberOf(script, node)
      if (member === null || !/^[xyz]$/.test(member.property) || roles.shape(member.object) !== "vector")
        return []
      // That a magnitude is below zero nobody writes.
      if (node.parent !== null && /^[<>]=?$/.test(binaryOf(script, node.parent)?.sign ?? "")) return []
      return [[replace(node, `magnitude(${textOf(script, member.object)})`)]]
    }),
    ...nodesIn(script, "CallExpression").flatMap(node => {
      const call = callOf(script, node)
      if (call?.name !== "component" || call.args.length !== 2) return []
      return [[replace(node, `magnitude(${textOf(script, call.args[0]!)})`)]]
    }),
    ...fixedDirections(script, roles),
  ],
}

/** A force whose direction comes from a vector, put along x with the vector's magnitude instead. */
function fixedDirections(script: Script, roles: Roles): Edit[][] {
  return updatesOf(script, roles, "force").flatMap(update =>
    factorsOf(script, update.value).flatMap((factor): Edit[][] => {
      if (callOf(script, factor)?.name === "unit") return [[replace(factor, "vec3(1, 0, 0)")]]
      if (factor.name !== "VariableName" || roles.shape(factor) !== "vector") return []
      // A direction that the sheet gives as numbers is fixed already.
      const given = roles.definition(textOf(script, factor))
      if (given !== null && callOf(script, bare(given))?.name === "vec3") return []
      return [[replace(factor, `vec3(magnitude(${textOf(script, factor)}), 0, 0)`)]]
    }),
  )
}

export const directionMissing: Slip = {
  name: "direction-not-unit",
  hint: "Check the size of your force, not only its direction: an arrow that only gives a direction has the length 1.",
  teacher: "A whole vector stands where a unit vector belongs, so that the force depends on its length.",
  make: script =>
    nodesIn(script, "CallExpression").flatMap(node => {
      const call = callOf(script, node)
      if (call?.name !== "unit") return []
      const whole = call.object ?? call.args[0]
      return whole === undefined ? [] : [[replace(node, `(${textOf(script, whole)})`)]]
    }),
}

export const componentsSwapped: Slip = {
  name: "components-swapped",
  hint: "Draw the triangle of the angle once more: which side is next to it, and which is opposite?",
  teacher: "Sine and cosine are taken for each other.",
  make: script =>
    nodesIn(script, "CallExpression").flatMap(node => {
      const call = callOf(script, node)
      if (call === null || !/^(Math\.)?(sin|cos)$/.test(call.name)) return []
      const callee = node.firstChild!
      const name = textOf(script, callee)
      return [
        [replace(callee, name.endsWith("sin") ? name.replace("sin", "cos") : name.replace("cos", "sin"))],
      ]
    }),
}
