import type { Node } from "@babel/types"
import { isFunction } from "../scopes.ts"
import { isTypeOnly } from "../syntax.ts"
import { vectorExpression } from "../vectors/expression.ts"
import { assignment, declarator } from "./assignments.ts"
import { call, construct, member } from "./calls.ts"
import { attempt } from "./catches.ts"
import { createEmitter, type EmitOptions, type Emitter } from "./emitter.ts"
import { declareTemps, openFrame } from "./frame.ts"
import { functionOf } from "./functions.ts"
import { name, property } from "./names.ts"
import { binary, unary } from "./operators.ts"
import { openQuestions } from "./questions.ts"
import { block, branch, labelled, list, loop, statement, switchCase } from "./statements.ts"

/** The body of the program as plain operators and calls, still with its types: what stripping leaves is ready to run. */
export function emitProgram(o: EmitOptions): string {
  const frame = openFrame()
  const e = createEmitter(o, frame, emit)
  let body = ""
  let cell = -1
  const enter = (upTo: number): void => {
    while (cell < upTo) body += `${o.hidden.of("enterCell")}(${++cell}${openQuestions(e.o)});\n`
  }
  for (const s of o.file.program.body) {
    enter(o.cellOf(s))
    const one = statement(e, s)
    if (one !== "") body += `${one}\n`
  }
  enter(o.cells - 1)
  return declareTemps(frame) + body
}

function emit(e: Emitter, node: Node): string {
  if (isTypeOnly(node)) return e.gap(node.start!, node.end!)
  const vector = vectorExpression(e, node)
  if (vector !== null) return vector
  switch (node.type) {
    // no cell has them, but the same emission is tried on whole modules
    case "ImportDeclaration":
    case "ExportSpecifier":
      return e.gap(node.start!, node.end!)
    case "Identifier":
      return name(e, node)
    case "BinaryExpression":
      return binary(e, node)
    case "UnaryExpression":
      return unary(e, node)
    case "AssignmentExpression":
      return assignment(e, node)
    case "CallExpression":
    case "OptionalCallExpression":
      return call(e, node)
    case "NewExpression":
      return construct(e, node)
    case "MemberExpression":
    case "OptionalMemberExpression":
      return member(e, node)
    case "ObjectProperty":
      return property(e, node)
    case "VariableDeclarator":
      return declarator(e, node)
    case "BlockStatement":
      return block(e, node.body)
    case "IfStatement":
      return branch(e, node)
    case "ForStatement":
    case "ForInStatement":
    case "ForOfStatement":
    case "WhileStatement":
    case "DoWhileStatement":
      return loop(e, node)
    case "LabeledStatement":
      return labelled(e, node)
    case "SwitchCase":
      return switchCase(e, node)
    case "TryStatement":
      return attempt(e, node)
    case "StaticBlock": {
      const inner = openFrame()
      const inside = e.inFrame(inner, () => list(e, node.body))
      return `static { ${declareTemps(inner)}${inside}}`
    }
    case "ClassProperty":
    case "ClassPrivateProperty":
    case "ClassAccessorProperty":
      // its end is written out: what stood before the next member may have been taken away
      return `${e
        .copy(node, child => (child === node.value ? e.inFrame(null, () => e.argument(child)) : null))
        .replace(/;\s*$/, "")};`
    default:
      return isFunction(node) ? functionOf(e, node) : e.copy(node)
  }
}
