import ts from "typescript"
import { isVector, type Kind, kindsOf, kindWords } from "./kinds.ts"
import { bare } from "./nodes.ts"
import type { Laid } from "./service.ts"
import { capital, isWhat, quoted, type Words } from "./words.ts"

const directions = "multiply the number by a direction, or take one component such as v.x."

/** What two kinds under an operator come to. */
function pairIsGood(sign: string, a: Kind, b: Kind): boolean {
  if (a === "any" || b === "any") return true
  if (a === b && (a === "number" || a === "bigint")) return true
  if (sign === "+" && (a === "text" || b === "text")) return true
  // true and false count as one and nothing in the language
  const numeric = (kind: Kind): boolean => kind === "number" || kind === "truth"
  if (numeric(a) && numeric(b)) return true
  if (a === "vector" && b === "vector") return sign === "+" || sign === "-"
  if (a === "vector") return numeric(b) && (sign === "*" || sign === "/") && b === "number"
  return b === "vector" && a === "number" && sign === "*"
}

const verbs: Readonly<Record<string, string>> = {
  "+": "added",
  "-": "subtracted",
  "*": "multiplied",
  "/": "divided",
}

/** What is wrong with an operator that is a call in the checking text; null if nothing is, or if it cannot be told for sure. */
export function operatorWords(laid: Laid, call: ts.CallExpression, wholeSign: string): Words | null {
  const sign = wholeSign[0]!
  const [left, right] = call.arguments
  const { checker } = laid
  if (left === undefined) return null
  const a = checker.getTypeAtLocation(left)
  if (right === undefined) return negated(laid, left, a)
  const b = checker.getTypeAtLocation(right)
  const pairs = [...kindsOf(a)].flatMap(x => [...kindsOf(b)].map(y => [x, y] as const))
  const bad = pairs.filter(([x, y]) => !pairIsGood(sign, x, y))
  if (bad.length === 0) return null
  // where one side may have no value, that is the news
  for (const [node, type] of [
    [left, a],
    [right, b],
  ] as const) {
    const kinds = kindsOf(type)
    if (!kinds.has("nothing")) continue
    const rest = pairs.filter(([x, y]) => x !== "nothing" && y !== "nothing")
    if (kinds.size === 1 || rest.some(([x, y]) => pairIsGood(sign, x, y)))
      return unset(laid, node, kinds.size === 1)
  }
  if (bad.length < pairs.length) return null
  return mismatch(laid, sign, [left, a], [right, b])
}

type Side = readonly [ts.Expression, ts.Type]

function mismatch(laid: Laid, sign: string, left: Side, right: Side): Words {
  const { checker } = laid
  const shown = shownPair(laid, sign, left[0], right[0])
  const words = ([node, type]: Side): string => isWhat(laid.wordsAt(bare(node)), kindWords(type, checker))
  const both = `${words(left)} and ${words(right)}`
  const vectors = [left, right].filter(([, type]) => isVector(type)).length
  if (vectors === 2) {
    if (sign === "*")
      return {
        code: "vector-times-vector",
        text: `A vector times a vector can mean two things${shown}.`,
        todo: "Write dot(a, b) for the scalar product, a number, or cross(a, b) for the vector product, a vector.",
      }
    return {
      code: "vector-over-vector",
      text: `A vector cannot be divided by a vector${shown}.`,
      todo: "Divide by a number: the length magnitude(b), or one component such as b.x.",
    }
  }
  const verb = verbs[sign]!
  if (vectors === 1) {
    const other = isVector(left[1]) ? right : left
    if (!kindsOf(other[1]).has("number"))
      return {
        code: "vector-and-other",
        text: `A vector and ${kindWords(other[1], checker)} cannot be ${verb}${shown}.`,
        todo:
          other[1].getCallSignatures().length > 0
            ? "Call the function: write brackets with its values behind it."
            : checker.isArrayType(other[1])
              ? "A list is no vector: write vec3(x, y, z)."
              : "Use a number or a vector here.",
      }
    if (sign === "/")
      return {
        code: "number-over-vector",
        text: `A number cannot be divided by a vector${shown}.`,
        todo: "Divide by a number: the length magnitude(b), or one component such as b.x.",
      }
    return {
      code: "number-and-vector",
      text: `A vector and a number cannot be ${verb}: ${both}.`,
      todo:
        sign === "+"
          ? `Add a vector to a vector: ${directions}`
          : `Subtract a vector from a vector: ${directions}`,
    }
  }
  return {
    code: "wrong-operand",
    text: `${capital(kindWords(left[1], checker))} and ${kindWords(right[1], checker)} cannot be ${verb}${shown}.`,
    todo: wrongOperandTodo(laid, [left, right]),
  }
}

function wrongOperandTodo({ checker }: Laid, sides: readonly Side[]): string {
  if (sides.some(([, type]) => type.getCallSignatures().length > 0))
    return "Call the function: write brackets with its values behind it."
  if (sides.some(([, type]) => kindsOf(type).has("text"))) return "Leave out the quotation marks of a number."
  if (sides.some(([, type]) => checker.isArrayType(type)))
    return "Take one item of the list: list[0] is the first."
  return "Use a number or a vector on each side."
}

function shownPair(laid: Laid, sign: string, left: ts.Expression, right: ts.Expression): string {
  const text = `${laid.wordsAt(left)} ${sign} ${laid.wordsAt(right)}`
  return quoted(text, 60) === "" ? "" : `: ${text}`
}

function negated(laid: Laid, node: ts.Expression, type: ts.Type): Words | null {
  const kinds = kindsOf(type)
  const good: ReadonlySet<Kind> = new Set<Kind>(["number", "vector", "bigint", "any", "truth"])
  if ([...kinds].every(kind => good.has(kind))) return null
  if (kinds.has("nothing")) return unset(laid, node, kinds.size === 1)
  if ([...kinds].some(kind => good.has(kind))) return null
  return {
    code: "wrong-operand",
    text: `Only a number or a vector has an opposite: ${isWhat(laid.wordsAt(bare(node)), kindWords(type, laid.checker))}.`,
    todo: wrongOperandTodo(laid, [[node, type]]),
  }
}

/** A name or a part that may hold nothing where it is used. */
export function unset(laid: Laid, node: ts.Node, surely: boolean): Words {
  const name = quoted(laid.wordsAt(node))
  const subject = name === "" ? "This" : name
  return {
    code: "may-be-unset",
    text: surely
      ? `${subject} has no value here.`
      : `${subject} may have no value here: not every way to this line gives it one.`,
    todo: "Give it a value when it is made, or ask before you use it: if (… !== undefined).",
  }
}

/** Operators that stay as typed: powers, remainders, comparisons, counting. */
export function plainOperatorWords(laid: Laid, node: ts.Node): Words | null {
  const { checker } = laid
  const binary = ts.isBinaryExpression(node) ? node : ts.isBinaryExpression(node.parent) ? node.parent : null
  if (binary) {
    const sides: [Side, Side] = [
      [binary.left, checker.getTypeAtLocation(binary.left)],
      [binary.right, checker.getTypeAtLocation(binary.right)],
    ]
    const sign = laid.wordsAt(binary.operatorToken)
    const vector = sides.find(([, type]) => isVector(type))
    for (const [side, type] of sides)
      if (kindsOf(type).has("nothing")) return unset(laid, side, kindsOf(type).size === 1)
    if (vector && sign.startsWith("**"))
      return {
        code: "vector-power",
        text:
          vector === sides[0] ? "A vector cannot be raised to a power." : "A vector cannot be an exponent.",
        todo: "For the square of its length write dot(v, v), or magnitude(v) ** 2.",
      }
    if (vector)
      return {
        code: "vector-as-number",
        text: `A vector has no single number as its value, so ${sign} cannot be used on it${shownPair(laid, sign, binary.left, binary.right)}.`,
        todo: "Use magnitude(v), or one component such as v.x.",
      }
    const equal = /^[=!]=/.test(sign)
    const kinds = `${capital(kindWords(sides[0][1], checker))} and ${kindWords(sides[1][1], checker)}`
    return {
      code: "wrong-operand",
      text: equal
        ? `${kinds} are never equal${shownPair(laid, sign, binary.left, binary.right)}.`
        : `${kinds} do not go with ${sign}${shownPair(laid, sign, binary.left, binary.right)}.`,
      todo: equal ? "Compare two of the same kind." : wrongOperandTodo(laid, sides),
    }
  }
  const counted =
    ts.isPostfixUnaryExpression(node.parent) || ts.isPrefixUnaryExpression(node.parent) ? node.parent : null
  if (!counted) return null
  const type = checker.getTypeAtLocation(counted.operand)
  return {
    code: isVector(type) ? "vector-as-number" : "wrong-operand",
    text: `Only a number can be counted up or down: ${isWhat(laid.wordsAt(counted.operand), kindWords(type, checker))}.`,
    todo: "Use a number here, or one component of the vector in a name of its own.",
  }
}
