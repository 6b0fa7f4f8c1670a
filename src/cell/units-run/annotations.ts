import { parseUnit } from "../../physics/units/index.ts"
import type { Annotation, Expression, FunctionNode, Statement, Tree } from "../tree/index.ts"
import type { Machine } from "./machine.ts"

/** Notes the types a program names, and reports each unit in an annotation that cannot be read. */
export function readAnnotations(m: Machine, tree: Tree): void {
  const annotation = (type: Annotation | null): void => {
    if (!type) return
    if (type.kind === "list") annotation(type.of)
    else if (type.kind === "record") for (const field of type.fields.values()) annotation(field)
    else if ((type.kind === "scalar" || type.kind === "vector") && type.unit !== null) {
      const read = parseUnit(type.unit)
      if (!read.ok) m.report(type.unitFrom, type.unitFrom + type.unit.length, read.code, read.text, read.todo)
    }
  }
  const fn = (node: FunctionNode): void => {
    for (const parameter of node.parameters) annotation(parameter.annotation)
    annotation(node.returns)
    if (Array.isArray(node.body)) node.body.forEach(statement)
    else expression(node.body as Expression)
  }
  const expression = (e: Expression): void => {
    if (e.kind === "function") fn(e.function)
    else if (e.kind === "as") annotation(e.annotation)
    else if (e.kind === "assign") expression(e.value)
    else if (e.kind === "call") e.args.forEach(expression)
    else if (e.kind === "array") e.items.forEach(expression)
    else if (e.kind === "object")
      for (const entry of e.entries) if (entry.kind === "property") expression(entry.value)
  }
  const statement = (s: Statement): void => {
    switch (s.kind) {
      case "type":
        m.types.set(s.name, s.annotation)
        annotation(s.annotation)
        break
      case "declare":
        for (const item of s.items) {
          annotation(item.annotation)
          if (item.value) expression(item.value)
        }
        break
      case "functionDeclaration":
        fn(s.function)
        break
      case "expression":
        expression(s.expression)
        break
      case "return":
        if (s.value) expression(s.value)
        break
      case "block":
        s.body.forEach(statement)
        break
      case "if":
        statement(s.yes)
        if (s.no) statement(s.no)
        break
      case "for":
        if (s.init) statement(s.init)
        statement(s.body)
        break
      case "forOf":
      case "forIn":
      case "while":
      case "do":
      case "labeled":
        statement(s.body)
        break
      case "switch":
        for (const one of s.cases) one.body.forEach(statement)
        break
      case "try":
        for (const inner of [s.body, s.handler, s.last]) if (inner) statement(inner)
        break
      default:
    }
  }
  tree.body.forEach(statement)
}
