import ts from "typescript"
import { nearestName } from "../nearest-name.ts"
import { givenWords, isLikeVector, isVector, joined, kindsOf, kindWords, mayBeNothing } from "./kinds.ts"
import { bare, type Call, isCall } from "./nodes.ts"
import { unset } from "./operator-words.ts"
import type { Laid } from "./service.ts"
import { capital, isWhat, quoted, type Words } from "./words.ts"

/** The words of a docstring behind a parameter's name: "stiffness k, N/m". */
function docOf(symbol: ts.Symbol, checker: ts.TypeChecker): string {
  const text = ts.displayPartsToString(symbol.getDocumentationComment(checker)).replace(/\s+/g, " ").trim()
  return text.length > 90 ? "" : text.replace(/\.$/, "")
}

const withDoc = (name: string, doc: string): string => (doc === "" ? name : `${name} (${doc})`)

const thisFunction = "this function"

export function calleeName(laid: Laid, call: Call): string {
  const callee = bare(call.expression)
  if (ts.isPropertyAccessExpression(callee)) return callee.name.text
  return quoted(laid.wordsAt(callee)) || thisFunction
}

/** Which argument of which call a node is, or stands in. */
function placeInCall(node: ts.Node): { call: Call; index: number } | null {
  let at = node
  while (at.parent && !(isCall(at.parent) && (at.parent.arguments ?? []).some(one => one === at))) {
    if (ts.isStatement(at.parent) || ts.isFunctionLike(at.parent)) return null
    at = at.parent
  }
  if (!at.parent) return null
  const call = at.parent as Call
  return { call, index: (call.arguments ?? ts.factory.createNodeArray()).indexOf(at as ts.Expression) }
}

/** The parameter that an argument is for; the last one for what belongs to a list of them. */
function parameterAt(signature: ts.Signature, index: number): ts.Symbol | undefined {
  const { parameters } = signature
  return parameters[Math.min(index, parameters.length - 1)]
}

/** An argument of the wrong kind, by the name of the parameter. */
export function wrongArgument(laid: Laid, node: ts.Node): Words | null {
  const found = placeInCall(node)
  if (!found) return null
  const { checker } = laid
  const signature = checker.getResolvedSignature(found.call)
  const parameter = signature && parameterAt(signature, found.index)
  const argument = found.call.arguments?.[found.index]
  if (!parameter || !argument) return null
  let wanted = checker.getTypeOfSymbolAtLocation(parameter, found.call)
  const declared = parameter.valueDeclaration
  if (declared && ts.isParameter(declared) && declared.dotDotDotToken && checker.isArrayType(wanted))
    wanted = checker.getTypeArguments(wanted as ts.TypeReference)[0] ?? wanted
  const given = checker.getTypeAtLocation(argument)
  return valueForParameter(laid, calleeName(laid, found.call), parameter, wanted, argument, given)
}

function valueForParameter(
  laid: Laid,
  callee: string,
  parameter: ts.Symbol,
  wanted: ts.Type,
  argument: ts.Expression,
  given: ts.Type,
): Words | null {
  const { checker } = laid
  const name = parameter.name
  const code = laid.wordsAt(bare(argument))
  if (mayBeNothing(given) && !mayBeNothing(wanted)) return unset(laid, argument, kindsOf(given).size === 1)
  const takesVector = isVector(wanted)
  if (takesVector && isLikeVector(given, checker)) return null
  const lacking = lackingParts(laid, wanted, given)
  if (lacking.length > 0)
    return {
      code: "missing-option",
      text: `${callee} needs ${joined(
        lacking.map(([part, doc]) => withDoc(part, doc)),
        "and",
      )}, and ${lacking.length === 1 ? "it is" : "they are"} not given.`,
      todo: `Write it between the braces: { …, ${lacking[0]![0]}: … }.`,
    }
  const kind = kindWords(wanted, checker)
  const doc = docOf(parameter, checker)
  const text = `${callee === thisFunction ? capital(callee) : callee} takes ${kind} for ${withDoc(name, doc)}, and ${isWhat(code, givenWords(given, checker))}.`
  if (takesVector)
    return {
      code: "not-a-vector",
      text,
      todo: kindsOf(given).has("number")
        ? "Say in which direction it points: write vec3(x, y, z), or multiply the number by a direction."
        : "Write vec3(x, y, z), or a variable that holds a vector.",
    }
  if (kindsOf(wanted).has("number"))
    return {
      code: "not-a-number",
      text,
      todo: isVector(given)
        ? "Take its length, magnitude(v), or one component such as v.x."
        : "Write a number, or a variable that holds one.",
    }
  if (checker.isArrayType(wanted) && !checker.isArrayType(given))
    return { code: "not-a-list", text, todo: "Put it in square brackets: [ … ]." }
  return { code: "wrong-kind", text, todo: "See the library page for what belongs here." }
}

/** Parts that an object must have and this one has not, each with its docstring. */
function lackingParts({ checker }: Laid, wanted: ts.Type, given: ts.Type): (readonly [string, string])[] {
  if (isVector(wanted) || wanted.getCallSignatures().length > 0 || checker.isArrayType(wanted)) return []
  if (!(given.flags & ts.TypeFlags.Object) || isVector(given) || checker.isArrayType(given)) return []
  if (given.getCallSignatures().length > 0 || wanted.isUnion()) return []
  return wanted
    .getProperties()
    .filter(part => !(part.flags & ts.SymbolFlags.Optional) && !checker.getPropertyOfType(given, part.name))
    .map(part => [part.name, docOf(part, checker)] as const)
}

/** Too many or too few values between the brackets of a call. */
export function wrongCount(laid: Laid, node: ts.Node): Words | null {
  let at: ts.Node | undefined = node
  while (at && !isCall(at)) at = at.parent
  if (!at) return null
  const call = at as Call
  const { checker } = laid
  const signature = checker.getResolvedSignature(call)
  if (!signature) return null
  const given = call.arguments?.length ?? 0
  const callee = calleeName(laid, call)
  const names = signature.parameters.map(one => one.name)
  const needed = signature.parameters.filter(one => {
    const made = one.valueDeclaration
    return !(made && ts.isParameter(made) && (made.questionToken || made.initializer || made.dotDotDotToken))
  }).length
  const takes =
    names.length === 0
      ? "nothing between its brackets"
      : `${names.length} ${names.length === 1 ? "value" : "values"} between its brackets: ${names.join(", ")}`
  if (given < needed) {
    const lacking = signature.parameters.slice(given, needed)
    return {
      code: "wrong-argument-count",
      text: `${callee} takes ${takes}. ${joined(
        lacking.map(one => withDoc(one.name, docOf(one, checker))),
        "and",
      )} ${lacking.length === 1 ? "is" : "are"} missing.`,
      todo:
        callee === "vec3" && given === 2
          ? "A vector in the plane has z = 0: vec3(x, y, 0)."
          : "Add what is missing, in this order.",
    }
  }
  return {
    code: "wrong-argument-count",
    text: `${callee} takes ${takes}, and ${given} ${given === 1 ? "was" : "were"} given.`,
    todo: decimalComma(laid, call) ?? "Take out what is too many.",
  }
}

/** `vec3(0,5, 0, 0)`: two numbers with a comma and no space between them may have been meant as one. */
function decimalComma(laid: Laid, call: Call): string | null {
  const list = call.arguments ?? []
  for (const [i, second] of list.entries()) {
    const first = list[i - 1]
    const seen = first ? `${laid.wordsAt(first)},${laid.wordsAt(second)}` : ""
    if (first && /^\d+,\d+$/.test(seen) && second.getFullStart() === second.getStart(laid.file))
      return `If ${seen} is one number, write it with a point: ${seen.replace(",", ".")}.`
  }
  return null
}

/** A quantity by name that the function does not know. */
export function unknownQuantity(laid: Laid, node: ts.Node): Words | null {
  const literal = ts.isObjectLiteralExpression(node.parent?.parent) ? node.parent.parent : null
  if (!literal || !ts.isIdentifier(node)) return null
  const { checker } = laid
  const wanted = checker.getContextualType(literal)
  if (!wanted) return null
  if (checker.isArrayType(wanted)) return wrongArgument(laid, literal)
  const known = wanted.getProperties().map(one => one.name)
  const found = placeInCall(literal)
  const name = node.text
  const near = nearestName(name, known)
  const who =
    found && found.call.arguments?.[found.index] === literal
      ? calleeName(laid, found.call)
      : capital(kindWords(wanted, checker))
  return {
    code: "unknown-option",
    text: `${who} knows no quantity called ${name}.`,
    todo: near === null ? `It knows ${joined(known, "and")}.` : `Did you mean ${near}?`,
  }
}
