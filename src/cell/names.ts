import * as physics from "../physics/index.ts"

/**
 * The names of the language, besides the physics library, that cells may use. The run hands each of them in; they
 * are destructured from what is handed in, because a name looked up in the room's own globals costs fifteen times a local.
 */
export const languageNames = [
  "Infinity",
  "NaN",
  "undefined",
  "isFinite",
  "isNaN",
  "parseFloat",
  "parseInt",
  "Array",
  "BigInt",
  "Boolean",
  "JSON",
  "Map",
  "Math",
  "Number",
  "Object",
  "RegExp",
  "Set",
  "String",
  "Symbol",
  "Error",
  "RangeError",
  "ReferenceError",
  "SyntaxError",
  "TypeError",
  "console",
  "random",
] as const

/** Every name that a cell may use without making it: language, physics library, record. */
export const knownNames: ReadonlySet<string> = new Set<string>([
  ...languageNames,
  ...Object.keys(physics),
  "record",
])

/** Names that look ordinary but would open a way around the language, with what to say about them. */
export const withheldNames: ReadonlyMap<string, string> = new Map([
  ["eval", "Text cannot be run as program here."],
  ["arguments", "The list of all arguments is only there inside a function of your own."],
])
