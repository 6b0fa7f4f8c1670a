import type { SyntaxNode } from "@lezer/common"
import { children, parts } from "./children.ts"
import type { Annotation } from "./nodes.ts"

const deepest = 20

/** Reads a type node: `Scalar<'kg'>`, `Vec3<'m'>[]`, `{ mass: Scalar<'kg'> }`, a name. */
export function annotationOf(node: SyntaxNode, text: string, depth = 0): Annotation {
  const at = { from: node.from, to: node.to }
  const named = (name: string, unit: string | null, unitFrom: number): Annotation => {
    if (name === "Scalar" || name === "number") return { ...at, kind: "scalar", unit, unitFrom }
    if (name === "Vec3") return { ...at, kind: "vector", unit, unitFrom }
    return { ...at, kind: "named", name }
  }
  if (depth > deepest) return { ...at, kind: "otherType" }
  switch (node.name) {
    case "TypeAnnotation": {
      const type = children(node).find(child => child.name !== ":")
      return type ? annotationOf(type, text, depth + 1) : { ...at, kind: "otherType" }
    }
    case "TypeName":
      return named(text.slice(node.from, node.to), null, node.from)
    case "ParameterizedType": {
      const name = text.slice(node.firstChild!.from, node.firstChild!.to)
      const list = node.getChild("TypeArgList")
      const argument = list && children(list).find(child => child.name !== "<")
      if (!argument) return named(name, null, node.from)
      if (name === "Array" || name === "ReadonlyArray")
        return { ...at, kind: "list", of: annotationOf(argument, text, depth + 1) }
      if (name === "Readonly" || name === "Partial") return annotationOf(argument, text, depth + 1)
      const string = argument.name === "LiteralType" ? argument.firstChild : null
      if (string?.name !== "String") return named(name, null, node.from)
      return named(name, text.slice(string.from + 1, string.to - 1), string.from + 1)
    }
    case "ArrayType":
      return { ...at, kind: "list", of: annotationOf(node.firstChild!, text, depth + 1) }
    case "ReadonlyType":
    case "ParenthesizedType":
      return annotationOf(
        parts(node).find(child => child.name !== "readonly") ?? node.lastChild!,
        text,
        depth + 1,
      )
    case "FunctionSignature": {
      const list = node.getChild("ParamList")
      const returns = children(node).at(-1)
      if (!list || !returns) return { ...at, kind: "otherType" }
      const parameters = list.getChildren("TypeAnnotation").map(one => annotationOf(one, text, depth + 1))
      return { ...at, kind: "law", parameters, returns: annotationOf(returns, text, depth + 1) }
    }
    case "ObjectType": {
      const fields = new Map<string, Annotation>()
      for (const property of node.getChildren("PropertyType")) {
        const key = property.getChild("PropertyDefinition")
        const type = property.getChild("TypeAnnotation")
        if (key && type) fields.set(text.slice(key.from, key.to), annotationOf(type, text, depth + 1))
      }
      return { ...at, kind: "record", fields }
    }
    default:
      return { ...at, kind: "otherType" }
  }
}
