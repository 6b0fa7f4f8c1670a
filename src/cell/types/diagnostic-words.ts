import ts from "typescript"
import { nearestName } from "../nearest-name.ts"
import { dottedName } from "../paper-signs.ts"
import { unknownQuantity, wrongArgument, wrongCount } from "./argument-words.ts"
import { isVector, kindsOf } from "./kinds.ts"
import { isCall } from "./nodes.ts"
import { plainOperatorWords, unset } from "./operator-words.ts"
import type { Laid } from "./service.ts"
import { noSuchPart, nothingReturned, wrongValue } from "./value-words.ts"
import { quoted, subject, type Words } from "./words.ts"

/** What to say of a name that nothing makes. */
export function unknownName(name: string, known: readonly string[]): Words {
  const dotted = dottedName(name)
  if (dotted) return { code: "unknown-name", ...dotted }
  const near = name === "π" ? "Math.PI" : nearestName(name, known)
  return {
    code: "unknown-name",
    text: `Nothing here is called ${name}.`,
    todo: near === null ? `Check its spelling, or make it first: const ${name} = …` : `Did you mean ${near}?`,
  }
}

type Say = (laid: Laid, node: ts.Node, names: readonly string[]) => Words | null

const says: readonly (readonly [readonly number[], Say])[] = [
  [
    [2304, 2552, 2503, 2580, 2581, 2582, 2583, 2584, 2591, 2592, 2593],
    (_, node, names) => (ts.isIdentifier(node) ? unknownName(node.text, names) : null),
  ],
  [[2345], wrongArgument],
  [[2554, 2555, 2556, 2575, 2743], wrongCount],
  [[2322, 2719, 2741, 2739, 2740], (laid, node) => missingPart(laid, node) ?? wrongValue(laid, node)],
  [[2353, 2561], unknownQuantity],
  [[2339, 2550, 2551], noSuchPart],
  [[2355, 2366, 2847], nothingReturned],
  [[2362, 2363, 2365, 2367, 2356, 2357, 2363], plainOperatorWords],
  [
    [2531, 2532, 2533, 18047, 18048, 18049, 18050, 2721, 2722, 2723],
    (laid, node) => unset(laid, node, kindsOf(laid.checker.getTypeAtLocation(node)).size === 1),
  ],
  [[2454], (laid, node) => unset(laid, node, false)],
  [
    [2448, 2449, 2450],
    (laid, node) => ({
      code: "used-before-made",
      text: `${quoted(laid.wordsAt(node))} is used before it is made.`,
      todo: "Move the line that makes it further up.",
    }),
  ],
  [
    [2588, 2632],
    (laid, node) => ({
      code: "constant-changed",
      text: `${subject(laid.wordsAt(node), "this")} is a const: it keeps the value it was made with, and this gives it another.`,
      todo: "Make it with let if it is to change.",
    }),
  ],
  [[2540, 2542], fixedPart],
  [
    [2349, 2351, 2348],
    (laid, node) => ({
      code: "not-a-function",
      text: `This calls something that is no function: ${quoted(laid.wordsAt(isCall(node.parent) ? node.parent : node), 80)}`,
      todo: "Check the name before the bracket; for a product write the * sign.",
    }),
  ],
  [
    [2461, 2488, 2495, 2548, 2549],
    (laid, node) => ({
      code: "not-a-list",
      text: `Only a list can be gone through or taken apart here, and ${quoted(laid.wordsAt(node)) || "this"} is none.`,
      todo: "Use a list, in square brackets.",
    }),
  ],
  [
    [2693],
    (laid, node) => ({
      code: "unknown-name",
      text: `${quoted(laid.wordsAt(node))} is the name of a kind, as in an annotation, and has no value.`,
      todo: "Use it only behind a colon: const m: Scalar<'kg'> = 2.",
    }),
  ],
]

const byCode: ReadonlyMap<number, Say> = new Map(
  says.flatMap(([codes, say]) => codes.map(code => [code, say] as const)),
)

/** Not a matter of kinds: grammar has words of its own, and nobody must annotate. */
const passedOver = (code: number): boolean =>
  code < 2000 || (code >= 6000 && code < 18000) || quietCodes.has(code)

const quietCodes: ReadonlySet<number> = new Set([
  // conditions that are always true, spellings that compare objects: sound programs do this too
  2774, 2801, 2839, 2845, 2869, 2870, 2871, 2872, 2873, 2881,
  // names made twice, labels, modules: the parser speaks of these
  2300, 2451, 2440, 2393, 2384, 2391, 2564, 2565, 2307, 2318, 2683, 18046,
])

/** A finding of the checker in words; null if nothing needs to be said. */
export function diagnosticWords(
  laid: Laid,
  diagnostic: ts.Diagnostic,
  node: ts.Node,
  names: readonly string[],
): Words | null {
  if (passedOver(diagnostic.code)) return null
  const message = ts.flattenDiagnosticMessageText(diagnostic.messageText, "\n")
  // what an operator gives in a function over any kind of thing cannot be told
  if (message.includes(laid.prefix)) return null
  const say = byCode.get(diagnostic.code)
  if (say) return say(laid, node, names)
  return general(message.split("\n")[0]!)
}

function missingPart(laid: Laid, node: ts.Node): Words | null {
  return ts.isObjectLiteralExpression(node) && isCall(node.parent) ? wrongArgument(laid, node) : null
}

function fixedPart(laid: Laid, node: ts.Node): Words | null {
  const access = ts.isPropertyAccessExpression(node.parent) ? node.parent : null
  const name = laid.wordsAt(node)
  if (access && isVector(laid.checker.getTypeAtLocation(access.expression))) {
    const v = quoted(laid.wordsAt(access.expression)) || "v"
    const parts = ["x", "y", "z"].map(c => (c === name ? "…" : `${v}.${c}`)).join(", ")
    return {
      code: "vector-component-set",
      text: `A vector never changes, so its ${name} cannot be set.`,
      todo: `Make a new vector and give it the name: ${v} = vec3(${parts}).`,
    }
  }
  return {
    code: "constant-changed",
    text: `${name} is fixed and cannot be given another value.`,
    todo: "Make a new object with the new value.",
  }
}

const typeWords: ReadonlyMap<string, string> = new Map([
  ["number", "a number"],
  ["string", "a text"],
  ["boolean", "true or false"],
  ["Vec3", "a vector"],
  ["undefined", "no value"],
  ["null", "no value"],
  ["void", "no value"],
  ["never", "nothing"],
])

/** A finding without words of its own: what the checker says, with kinds in words. */
function general(message: string): Words {
  const text = message
    .replace(
      /'([^']*)'/g,
      (whole, name: string) =>
        typeWords.get(name) ??
        (/^[\w$.]+(\[\])?$/.test(name) ? name : whole.length > 50 ? "something else" : name),
    )
    .replace(/\b[Tt]ype (a number|a text|a vector|true or false|no value|nothing)\b/g, "$1")
    .replace(/\bis not assignable to\b/g, "does not fit")
    .replace(/\b[Pp]roperty\b/g, "part")
    .replace(/\b[Aa]rgument of\b/g, "value of")
    .replace(/\bexpression\b/g, "line")
    .replace(/\btype\b/g, "kind")
    .replace(/\s+/g, " ")
    .trim()
    .replace(/\.$/, "")
  return {
    code: "kinds-disagree",
    text: `What stands here does not fit together: ${text.charAt(0).toLowerCase()}${text.slice(1)}.`,
    todo: "Check what each name in this line holds.",
  }
}
