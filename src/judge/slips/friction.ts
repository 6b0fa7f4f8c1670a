import { bare, binaryOf, callOf, factorsOf, memberOf } from "./expression.ts"
import { keepOnly } from "./pieces.ts"
import type { Roles } from "./roles.ts"
import { type Edit, nodesIn, replace, type Script, textOf } from "./script.ts"
import { productsWith } from "./signs.ts"
import type { Slip } from "./slip.ts"

export const frictionAlongVelocity: Slip = {
  name: "friction-along-velocity",
  hint: "Friction lies in the surface. Has the velocity that you use a part that points out of it?",
  teacher: "Friction is taken along the whole velocity instead of its part along the surface.",
  make: (script, roles) => [
    ...wholeForPart(script, roles),
    ...nodesIn(script, "CallExpression").flatMap(node => {
      const call = callOf(script, node)
      if (call?.name !== "across") return []
      const whole = call.object ?? call.args[0]
      return whole === undefined ? [] : [[keepOnly(script, node, whole)]]
    }),
    ...nodesIn(script, "BinaryExpression").flatMap(node => {
      const binary = binaryOf(script, node)
      if (binary === null || binary.sign !== "-") return []
      const projection = [bare(binary.right), ...factorsOf(script, binary.right)].some(part =>
        /^(along|dot|component)$/.test(callOf(script, part)?.name ?? ""),
      )
      return projection ? [[keepOnly(script, node, binary.left)]] : []
    }),
  ],
}

/** A constant that holds some components of a vector, vec3(p.x, 0, 0): the vector itself in its place. */
function wholeForPart(script: Script, roles: Roles): Edit[][] {
  const names = nodesIn(script, "VariableName").filter(node => roles.shape(node) === "vector")
  return [...new Set(names.map(node => textOf(script, node)))].flatMap(name => {
    const definition = roles.definition(name)
    const call = definition === null ? null : callOf(script, bare(definition))
    if (call?.name !== "vec3") return []
    const parts = call.args.map(arg => memberOf(script, bare(arg)))
    const [whole] = parts.flatMap(part => (part === null ? [] : [textOf(script, part.object)]))
    const zeros = call.args.filter(arg => Number(textOf(script, arg)) === 0)
    const others = parts.filter(part => part !== null && textOf(script, part.object) !== whole)
    const plain = parts.filter(part => part !== null).length + zeros.length === call.args.length
    if (whole === undefined || zeros.length === 0 || others.length > 0 || !plain) return []
    return [names.filter(node => textOf(script, node) === name).map(node => replace(node, whole))]
  })
}

export const frictionFromWeight: Slip = {
  name: "friction-from-weight",
  hint: "Friction depends on how hard the surfaces are pressed together. Is that always the weight?",
  teacher: "Friction is taken from the weight instead of the normal force.",
  make: (script, roles) => {
    const mass = roles.first("mass")
    const field = roles.first("field")
    if (mass === null || field === null) return []
    return productsWith(script, roles, "friction coefficient").flatMap(product =>
      factorsOf(script, product).flatMap(factor => {
        const text = textOf(script, factor)
        const call = callOf(script, factor)
        const normal =
          /normal|^N$|^F_?N$/i.test(text) && (factor.name === "VariableName" || call?.name === "magnitude")
        if (!normal) return []
        const defined = roles.definition(field)
        const strength = defined !== null && roles.shape(defined) === "vector" ? `magnitude(${field})` : field
        return [[replace(factor, `(${mass} * ${strength})`)]]
      }),
    )
  },
}
