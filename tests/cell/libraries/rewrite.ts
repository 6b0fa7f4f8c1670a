import { parse } from "@babel/parser"
import type { File } from "@babel/types"
import { emitProgram } from "../../../src/cell/emit/program.ts"
import { mayCatch } from "../../../src/cell/emit/questions.ts"
import { remarksOf } from "../../../src/cell/erase.ts"
import { ANY, inferKinds } from "../../../src/cell/infer.ts"
import { scopesOf } from "../../../src/cell/scopes.ts"
import { chooseSplit } from "../../../src/cell/vectors/split.ts"

export type Way = "split" | "blind" | "traced"

/**
 * A whole file of JavaScript rewritten as cells are: operators as calls, loops and functions guarded. A file brings its own
 * imports and exports and may be written in the loose mode, which cells cannot; the rest of the way is the same.
 */
export function rewriteFile(text: string, isModule: boolean, way: Way): string {
  const file: File = parse(text, {
    sourceType: isModule ? "module" : "script",
    allowReturnOutsideFunction: true,
    attachComment: false,
    tokens: false,
  })
  const scopes = scopesOf(file)
  const known = new Set<string>(["Math", "Infinity", "NaN", "undefined"])
  const prefix = "ds$"
  if (text.includes(prefix)) throw new Error("The file uses our prefix")
  const hidden = { prefix, of: (name: string) => prefix + name }
  const kinds = way === "blind" ? { of: () => ANY, ofBinding: () => ANY } : inferKinds(scopes, [], known)
  const body = emitProgram({
    text,
    file,
    scopes,
    kinds,
    hidden,
    trace: way === "traced",
    split: way === "split" ? chooseSplit({ file, scopes, kinds, hidden, known, timeStep: "" }) : null,
    emptyBlanks: new Set(),
    timeStep: "",
    catches: mayCatch(text),
    known,
    cells: 0,
    shapes: [],
    skips: remarksOf(file),
    cellOf: () => -1,
    site: () => 0,
  })
  const names = [
    "add",
    "subtract",
    "multiply",
    "divide",
    "negate",
    "power",
    "mutable",
    "divideByZero",
    "squareRoot",
    "Vec3",
    "at",
    "overrun",
    "caught",
  ]
  const strict = /^\s*(["'])use strict\1/.test(text.replace(/^(\s|\/\*[\s\S]*?\*\/|\/\/.*\n)+/, ""))
    ? '"use strict";'
    : ""
  const host = `${strict}const {${names.map(n => `${n}: ${prefix}${n}`).join(", ")}} = globalThis.rewrittenHost; let ${prefix}turns = 0, ${prefix}asked = 0; const ${prefix}max = Infinity;\n`
  return text.startsWith("#!") ? body : host + body
}
