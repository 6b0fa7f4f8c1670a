import { bare, binaryOf, callOf, factorsOf } from "./expression.ts"
import { keepOnly } from "./pieces.ts"
import { nodesIn, replace, textOf } from "./script.ts"
import { productsWith } from "./signs.ts"
import type { Slip } from "./slip.ts"

export const frictionAlongVelocity: Slip = {
  name: "friction-along-velocity",
  hint: "Friction lies in the surface. Has the velocity that you use a part that points out of it?",
  teacher: "Friction is taken along the whole velocity instead of its part along the surface.",
  make: script => [
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
