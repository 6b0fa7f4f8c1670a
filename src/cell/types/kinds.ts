import ts from "typescript"

/** What a value may be, as far as operators care. A union is a set of these. */
export type Kind = "number" | "vector" | "text" | "bigint" | "truth" | "nothing" | "any" | "other"

const { TypeFlags } = ts

/** The members of a union, or the type itself. */
export const membersOf = (type: ts.Type): readonly ts.Type[] => (type.isUnion() ? type.types : [type])

export function isVector(type: ts.Type): boolean {
  const name = type.getSymbol()?.name
  return name === "Vec3"
}

export function kindsOf(type: ts.Type): ReadonlySet<Kind> {
  return new Set(membersOf(type).map(kindOf))
}

function kindOf(type: ts.Type): Kind {
  const { flags } = type
  if (flags & (TypeFlags.Any | TypeFlags.Unknown | TypeFlags.Never | TypeFlags.Instantiable)) return "any"
  if (flags & TypeFlags.NumberLike) return "number"
  if (flags & TypeFlags.StringLike) return "text"
  if (flags & TypeFlags.BigIntLike) return "bigint"
  if (flags & TypeFlags.BooleanLike) return "truth"
  if (flags & (TypeFlags.Undefined | TypeFlags.Null | TypeFlags.Void)) return "nothing"
  return isVector(type) ? "vector" : "other"
}

export const mayBeNothing = (type: ts.Type): boolean => kindsOf(type).has("nothing")

/** An object with the numbers x, y and z: what the library takes for a vector, although it is none. */
export function isLikeVector(type: ts.Type, checker: ts.TypeChecker): boolean {
  return ["x", "y", "z"].every(name => {
    const part = checker.getPropertyOfType(type, name)
    return part !== undefined && kindsOf(checker.getTypeOfSymbol(part)).has("number")
  })
}

/** A type in words, with its article: "a vector", "a list of numbers", "a number or no value". */
export function kindWords(type: ts.Type, checker: ts.TypeChecker): string {
  const words = new Set(membersOf(type).map(one => oneKind(one, checker, 0)))
  return joined(
    [...words].filter(word => word !== "no value").concat(words.has("no value") ? ["no value"] : []),
  )
}

/** A value's kind; what exactly a text says is no matter. */
export const givenWords = (type: ts.Type, checker: ts.TypeChecker): string =>
  kindWords(checker.getBaseTypeOfLiteralType(type), checker)

export function joined(words: readonly string[], last = "or"): string {
  if (words.length <= 1) return words[0] ?? "nothing"
  return `${words.slice(0, -1).join(", ")} ${last} ${words[words.length - 1]}`
}

function oneKind(type: ts.Type, checker: ts.TypeChecker, depth: number): string {
  switch (kindOf(type)) {
    case "any":
      return "something"
    case "number":
      return "a number"
    case "vector":
      return "a vector"
    case "text":
      return type.isStringLiteral() ? `the text "${type.value.slice(0, 30)}"` : "a text"
    case "bigint":
      return "a bigint"
    case "truth":
      return "true or false"
    case "nothing":
      return "no value"
    default:
      return objectWords(type, checker, depth)
  }
}

const plurals: ReadonlyMap<string, string> = new Map([
  ["a number", "numbers"],
  ["a vector", "vectors"],
  ["a text", "texts"],
  ["a list", "lists"],
  ["a Body", "bodies"],
  ["a RigidBody", "rigid bodies"],
])

function objectWords(type: ts.Type, checker: ts.TypeChecker, depth: number): string {
  if (checker.isArrayType(type) || checker.isTupleType(type)) {
    const item = checker.getTypeArguments(type as ts.TypeReference)[0]
    if (item === undefined || depth > 1) return "a list"
    const word = membersOf(item).length > 1 ? "" : oneKind(item, checker, depth + 1)
    const many =
      plurals.get(word) ?? (word.startsWith("a ") && /^a [A-Z]\w+$/.test(word) ? `${word.slice(2)}s` : "")
    return many === "" ? "a list" : `a list of ${many}`
  }
  if (type.getCallSignatures().length > 0) return "a function"
  if (type.getConstructSignatures().length > 0) return "a class"
  const name = (type.aliasSymbol ?? type.getSymbol())?.name ?? ""
  return /^[A-Z]\w*$/.test(name) && name !== "Object"
    ? `${/^[AEIO]/.test(name) ? "an" : "a"} ${name}`
    : "an object"
}
