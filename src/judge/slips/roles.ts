import type { SyntaxNode } from "@lezer/common"
import type { Parameter } from "../../worksheet/contract.ts"
import {
  assignmentOf,
  bare,
  binaryOf,
  callOf,
  factorsOf,
  isName,
  memberOf,
  termsOf,
  unaryMinusOf,
} from "./expression.ts"
import { childrenOf, everyNode, type Script, textOf } from "./script.ts"

export type Role =
  | "time step"
  | "time"
  | "mass"
  | "force"
  | "momentum"
  | "position"
  | "velocity"
  | "length"
  | "stiffness"
  | "damping"
  | "field"
  | "friction coefficient"
  | "angle"
  | "other"

export type Shape = "vector" | "scalar" | "unknown"

/** What the names of a program stand for, as far as its annotations, its record and its parameters tell. */
export interface Roles {
  role(name: string): Role
  shape(node: SyntaxNode): Shape
  /** what a name was first given, if it is a constant */
  definition(name: string): SyntaxNode | null
  /** first name with a role, in the order of the text */
  first(role: Role): string | null
  /** names of the momenta of all bodies that are recorded in the blank's own loop, in the order of the record */
  readonly momenta: readonly string[]
}

/** SI units as they are written in annotations and front matter, blanks and dots left out. */
const roleByUnit: Readonly<Record<string, { scalar: Role; vector: Role }>> = {
  kg: { scalar: "mass", vector: "other" },
  s: { scalar: "time", vector: "other" },
  N: { scalar: "force", vector: "force" },
  "kgm/s": { scalar: "momentum", vector: "momentum" },
  Ns: { scalar: "momentum", vector: "momentum" },
  m: { scalar: "length", vector: "position" },
  "m/s": { scalar: "velocity", vector: "velocity" },
  "N/m": { scalar: "stiffness", vector: "other" },
  "kg/s^2": { scalar: "stiffness", vector: "other" },
  "Ns/m": { scalar: "damping", vector: "other" },
  "kg/s": { scalar: "damping", vector: "other" },
  "N/kg": { scalar: "field", vector: "field" },
  "m/s^2": { scalar: "field", vector: "field" },
  rad: { scalar: "angle", vector: "other" },
  "°": { scalar: "angle", vector: "other" },
}

const frictionName = /^mu|friction/i
const vectorCalls = new Set([
  "vec3",
  "unit",
  "cross",
  "sum",
  "along",
  "across",
  "rotate",
  "times",
  "over",
  "add",
  "subtract",
  "plus",
  "minus",
  "negate",
])
const scalarCalls = new Set(["magnitude", "dot", "component", "distance", "angleBetween"])

export function rolesOf(script: Script, parameters: readonly Parameter[]): Roles {
  const roles = new Map<string, Role>()
  const shapes = new Map<string, Shape>()
  const definitions = new Map<string, SyntaxNode>()
  const order: string[] = []
  const momenta: string[] = []

  const learn = (name: string, role: Role, shape: Shape): void => {
    if (!roles.has(name)) order.push(name)
    if (!roles.has(name) || roles.get(name) === "other") roles.set(name, role)
    if (shape !== "unknown") shapes.set(name, shape)
  }

  for (const { name, unit, label } of parameters) {
    const role = roleByUnit[plain(unit)]?.scalar ?? "other"
    learn(name, frictionName.test(name) || /friction/i.test(label) ? "friction coefficient" : role, "scalar")
  }
  learn(script.timeStep, "time step", "scalar")
  roles.set(script.timeStep, "time step")

  for (const node of everyNode(script, "VariableDeclaration", "ParamList")) {
    const children = childrenOf(node)
    if (node.name === "ParamList") {
      readParameters(children)
      continue
    }
    const target = children.find(child => child.name === "VariableDefinition")
    if (target === undefined) continue
    const name = textOf(script, target)
    const annotation = children.find(child => child.name === "TypeAnnotation")
    const told = annotation === undefined ? null : readAnnotation(textOf(script, annotation))
    const value = assignmentOf(script, node)?.value
    if (value !== undefined && textOf(script, node).startsWith("const")) definitions.set(name, value)
    if (told !== null) {
      const known = roleByUnit[told.unit]?.[told.shape] ?? "other"
      learn(name, frictionName.test(name) && told.unit === "1" ? "friction coefficient" : known, told.shape)
    } else if (value !== undefined) {
      learn(name, roleOfValue(value), shapeOf(value))
    }
  }
  for (const name of order.filter(isTimeStep)) roles.set(name, "time step")
  const around = loopAround(script)
  for (const node of everyNode(script, "CallExpression")) {
    const call = callOf(script, node)
    if (call?.name !== "record" || call.args[1] === undefined) continue
    readRecord(call.args[1], around === null || (around.from <= node.from && node.to <= around.to))
  }

  return {
    role: name => roles.get(name) ?? "other",
    shape: shapeOf,
    definition: name => definitions.get(name) ?? null,
    first: role => order.find(name => roles.get(name) === role) ?? null,
    momenta,
  }

  /** A parameter's annotation follows its name. */
  function readParameters(children: readonly SyntaxNode[]): void {
    children.forEach((child, i) => {
      const annotation = children[i + 1]
      if (child.name !== "VariableDefinition" || annotation?.name !== "TypeAnnotation") return
      const told = readAnnotation(textOf(script, annotation))
      if (told !== null)
        learn(textOf(script, child), roleByUnit[told.unit]?.[told.shape] ?? "other", told.shape)
    })
  }

  /** A constant that is the time step times constants is a time step, too. */
  function isTimeStep(name: string): boolean {
    const value = definitions.get(name)
    if (value === undefined || !["time", "other"].includes(roles.get(name)!)) return false
    const factors = factorsOf(script, value)
    return (
      factors.some(factor => isName(script, factor, script.timeStep)) &&
      factors.every(
        factor =>
          factor.name === "Number" || (factor.name === "VariableName" && isConstant(textOf(script, factor))),
      )
    )
  }

  function isConstant(name: string): boolean {
    return definitions.has(name) || parameters.some(parameter => parameter.name === name)
  }

  function readRecord(node: SyntaxNode, near: boolean): void {
    for (const property of childrenOf(node).filter(child => child.name === "Property")) {
      const [key, , value] = childrenOf(property)
      if (key === undefined || value === undefined) continue
      const word = textOf(script, key)
      if (value.name === "ObjectExpression") readRecord(value, near)
      else if (value.name === "VariableName") {
        const name = textOf(script, value)
        if (word === "momentum") {
          learn(name, "momentum", "vector")
          if (near && !momenta.includes(name)) momenta.push(name)
        } else if (word === "position") learn(name, "position", "vector")
        else if (property.parent?.parent?.firstChild?.name === "PropertyDefinition") {
          const group = textOf(script, property.parent.parent.firstChild)
          if (group === "forces") learn(name, "force", "vector")
        }
      }
    }
  }

  function roleOfValue(node: SyntaxNode): Role {
    const inner = bare(node)
    if (inner.name === "VariableName") return roles.get(textOf(script, inner)) ?? "other"
    const negated = unaryMinusOf(script, inner)
    if (negated !== null) return roleOfValue(negated)
    const terms = termsOf(script, inner)
    if (terms.length > 1) return roleOfValue(terms[0]!.node)
    const factors = factorsOf(script, inner).map(f =>
      f.name === "VariableName" ? (roles.get(textOf(script, f)) ?? "other") : "other",
    )
    if (factors.length === 2 && factors.includes("mass") && factors.includes("field")) return "force"
    if (factors[0] === "momentum" && factors[1] === "mass" && factors.length === 2) return "velocity"
    if (
      factors.includes("stiffness") ||
      factors.includes("friction coefficient") ||
      factors.includes("damping")
    )
      return "force"
    return "other"
  }

  function shapeOf(node: SyntaxNode): Shape {
    const inner = bare(node)
    if (inner.name === "Number") return "scalar"
    if (inner.name === "VariableName") return shapes.get(textOf(script, inner)) ?? "unknown"
    const member = memberOf(script, inner)
    if (member !== null) return /^[xyz]$/.test(member.property) ? "scalar" : "unknown"
    const negated = unaryMinusOf(script, inner)
    if (negated !== null) return shapeOf(negated)
    const call = callOf(script, inner)
    if (call !== null)
      return vectorCalls.has(call.name) || /Force$/.test(call.name)
        ? "vector"
        : scalarCalls.has(call.name) || call.name.startsWith("Math.")
          ? "scalar"
          : "unknown"
    const binary = binaryOf(script, inner)
    if (binary !== null) {
      const [a, b] = [shapeOf(binary.left), shapeOf(binary.right)]
      if (a === "vector" || b === "vector") return "vector"
      return a === "scalar" && b === "scalar" ? "scalar" : "unknown"
    }
    if (inner.name === "ConditionalExpression") {
      const branches = childrenOf(inner)
      return shapeOf(branches[2] ?? inner.firstChild!)
    }
    return "unknown"
  }
}

/** The outermost loop that the blank stands in. */
function loopAround(script: Script): SyntaxNode | null {
  const { from, to } = script.blank
  const loops = everyNode(script, "WhileStatement", "ForStatement", "DoStatement")
  return loops.find(loop => loop.from <= from && to <= loop.to) ?? null
}

const plain = (unit: string): string =>
  unit
    .replace(/[\s·.]/g, "")
    .replace("²", "^2")
    .replace(/ms\^-2/, "m/s^2")

function readAnnotation(text: string): { unit: string; shape: "vector" | "scalar" } | null {
  const match = /(Scalar|Vec3)\s*<\s*['"]([^'"]*)['"]\s*>/.exec(text)
  if (match === null) return null
  return { unit: plain(match[2]!), shape: match[1] === "Vec3" ? "vector" : "scalar" }
}
