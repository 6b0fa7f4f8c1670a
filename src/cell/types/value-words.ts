import ts from "typescript"
import { nearestName } from "../nearest-name.ts"
import { givenWords, isLikeVector, isVector, joined, kindsOf, kindWords, mayBeNothing } from "./kinds.ts"
import { around, bare, isFunctionNode, nameOfFunction } from "./nodes.ts"
import { unset } from "./operator-words.ts"
import type { Laid } from "./service.ts"
import { capital, isWhat, subject as subjectOf, type Words } from "./words.ts"

const toVector = "Multiply the number by a direction, such as unit(d) or vec3(1, 0, 0)."
const toNumber = "Take its length, magnitude(v), or one component such as v.x."

/** A value that is given to something of another kind: a name, a part, what a function gives back. */
export function wrongValue(laid: Laid, node: ts.Node): Words | null {
  const made = ts.isVariableDeclaration(node.parent) && node.parent.name === node ? node.parent : null
  const { checker } = laid
  if (made?.initializer)
    return given(
      laid,
      `${made.name.getText(laid.file)} is declared as`,
      checker.getTypeAtLocation(made.name),
      made.initializer,
    )
  const set = around(node, ts.isBinaryExpression, 2)
  if (
    set?.operatorToken.kind === ts.SyntaxKind.EqualsToken &&
    set.left.getStart(laid.file) === node.getStart(laid.file)
  )
    return given(
      laid,
      `${subjectOf(laid.wordsAt(set.left), "what stands on the left")} is`,
      checker.getTypeAtLocation(set.left),
      set.right,
    )
  const part = ts.isPropertyAssignment(node.parent) && node.parent.name === node ? node.parent : null
  if (part) {
    const literal = part.parent
    const whole = checker.getContextualType(literal)
    const symbol = whole && checker.getPropertyOfType(whole, part.name.getText(laid.file))
    if (symbol)
      return given(
        laid,
        `${symbol.name}${docBehind(symbol, checker)} is`,
        checker.getTypeOfSymbolAtLocation(symbol, part),
        part.initializer,
      )
  }
  const back = returned(laid, node)
  if (back) return back
  const expression = ts.isExpression(node) ? node : null
  const wanted = expression && checker.getContextualType(expression)
  return wanted ? given(laid, "What belongs here is", wanted, expression) : null
}

function docBehind(symbol: ts.Symbol, checker: ts.TypeChecker): string {
  const doc = ts.displayPartsToString(symbol.getDocumentationComment(checker)).replace(/\s+/g, " ").trim()
  return doc === "" || doc.length > 80 ? "" : ` (${doc.replace(/\.$/, "")})`
}

function returned(laid: Laid, node: ts.Node): Words | null {
  const statement = ts.isReturnStatement(node) ? node : ts.isReturnStatement(node.parent) ? node.parent : null
  const fn = around(node.parent, isFunctionNode)
  const value = statement
    ? statement.expression
    : fn && ts.isArrowFunction(fn) && fn.body === node
      ? (node as ts.Expression)
      : undefined
  if (!fn || fn === node || !(statement || value)) return null
  const name = nameOfFunction(fn)
  const signature = laid.checker.getSignatureFromDeclaration(fn)
  const contextual = fn.type
    ? undefined
    : laid.checker.getContextualType(fn as ts.Expression)?.getCallSignatures()[0]
  const wanted = (contextual ?? signature)?.getReturnType()
  if (!wanted) return null
  const who = name ?? "this function"
  if (!value)
    return {
      code: "nothing-returned",
      text: `${name === null ? capital(who) : who} is to give back ${kindWords(wanted, laid.checker)}, and this return gives nothing.`,
      todo: "Write the value behind return.",
    }
  return given(laid, `${name === null ? capital(who) : who} is to give back`, wanted, value)
}

/** "p is a vector, and 3 is a number." */
function given(laid: Laid, subject: string, wanted: ts.Type, value: ts.Expression): Words | null {
  const { checker } = laid
  const type = checker.getTypeAtLocation(value)
  const code = laid.wordsAt(bare(value))
  if (mayBeNothing(type) && !mayBeNothing(wanted)) return unset(laid, value, kindsOf(type).size === 1)
  if (isVector(wanted) && isLikeVector(type, checker)) return null
  const text = `${subject} ${kindWords(wanted, checker)}, and ${isWhat(code, givenWords(type, checker))}.`
  if (isVector(wanted) && kindsOf(type).has("number"))
    return { code: "number-for-vector", text, todo: toVector }
  if (kindsOf(wanted).has("number") && isVector(type))
    return { code: "number-for-vector", text, todo: toNumber }
  return {
    code: "wrong-kind",
    text,
    todo: `Give it ${kindWords(wanted, checker)}, or change what it is declared as.`,
  }
}

/** A function that must give something back and does not on every way. */
export function nothingReturned(laid: Laid, node: ts.Node): Words | null {
  const fn = around(node, isFunctionNode)
  if (!fn) return null
  const wanted = laid.checker.getSignatureFromDeclaration(fn)?.getReturnType()
  const kind = wanted ? kindWords(wanted, laid.checker).replace(/ or no value$/, "") : "a value"
  return {
    code: "nothing-returned",
    text: `${nameOfFunction(fn) ?? "This function"} is to give back ${kind}, and not every way through it does.`,
    todo: "Write return and the value at the end of each way.",
  }
}

/** A part that the thing before the dot does not have. */
export function noSuchPart(laid: Laid, node: ts.Node): Words | null {
  const access = ts.isPropertyAccessExpression(node.parent) ? node.parent : null
  const name = ts.isIdentifier(node) ? node.text : ""
  if (name === "") return null
  const { checker } = laid
  if (!access) {
    // taken apart: const { x, w } = r
    return {
      code: "no-such-property",
      text: `There is no part ${name} to take out.`,
      todo: "Check its spelling.",
    }
  }
  const type = checker.getTypeAtLocation(access.expression)
  const before = subjectOf(laid.wordsAt(access.expression), "what stands before the dot")
  const names = checker
    .getPropertiesOfType(checker.getApparentType(type))
    .map(one => one.name)
    .filter(one => /^[A-Za-z]\w*$/.test(one))
  const near = nearestName(name, names)
  const text = `${before} is ${kindWords(type, checker)}, and that has no part called ${name}.`
  if (isVector(type)) {
    const length = /^(length|len|norm|size|abs|mag|value)$/i.test(name)
    return {
      code: "no-such-property",
      text,
      todo: length
        ? "The length of a vector v is magnitude(v)."
        : near === null
          ? "A vector has the components x, y and z."
          : `Did you mean ${near}?`,
    }
  }
  if (kindsOf(type).has("number") && !type.isUnion())
    return {
      code: "no-such-property",
      text: `${before} is a number; it has no part called ${name}.`,
      todo: /^[xyz]$/.test(name) ? "Only a vector has components." : "Check what stands before the dot.",
    }
  return {
    code: "no-such-property",
    text,
    todo:
      near !== null
        ? `Did you mean ${near}?`
        : names.length > 0 && names.length < 9
          ? `It has ${joined(names, "and")}.`
          : "Check its spelling.",
  }
}
