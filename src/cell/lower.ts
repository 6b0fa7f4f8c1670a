import type { File, Statement } from "@babel/types"
import type { Program, Site } from "./contract.ts"
import type { Hidden } from "./emit/emitter.ts"
import { emitProgram } from "./emit/program.ts"
import { mayCatch } from "./emit/questions.ts"
import { fillEmptyBlanks, hiddenNames } from "./empty-blanks.ts"
import { remarksOf, type Skip, skipsOf } from "./erase.ts"
import { fitProblems } from "./fit.ts"
import { ANY, inferKinds, type Kinds } from "./infer.ts"
import { misplaced } from "./misplaced.ts"
import { knownNames } from "./names.ts"
import type { Problem } from "./problem.ts"
import { tooManyRemarks } from "./remarks.ts"
import { type Scopes, scopesOf } from "./scopes.ts"
import { parseText } from "./syntax.ts"
import { brokenCharacter, syntaxProblem } from "./syntax-words.ts"
import { unfinishedLines } from "./unfinished.ts"
import { chooseSplit } from "./vectors/split.ts"

/** A program that was read and found whole: what both texts of it are made from. */
export interface Read {
  readonly program: Program
  /** the program's text with a name in each inline blank that nobody filled */
  readonly text: string
  readonly file: File
  readonly scopes: Scopes
  readonly kinds: Kinds
  readonly hidden: Hidden
  readonly emptyBlanks: ReadonlySet<string>
  readonly skips: readonly Skip[]
  /** true where no types are left in what is emitted, so that no stripper is needed */
  readonly plain: boolean
  /** an offset of `text` as an offset of the program's own text */
  toProgram(offset: number): number
}

export type ReadResult =
  | { readonly ok: true; readonly read: Read }
  | { readonly ok: false; readonly problems: readonly Problem[] }

/** Parses a program and checks what can be told before it runs. Never throws. */
export function readProgram(program: Program): ReadResult {
  try {
    return readWhole(program)
  } catch (cause) {
    if (!(cause instanceof RangeError)) throw cause
    return { ok: false, problems: [tooDeep(program)] }
  }
}

function readWhole(program: Program): ReadResult {
  const broken = brokenCharacter(program) ?? tooManyRemarks(program)
  if (broken) return { ok: false, problems: [broken] }
  const hidden = hiddenNames(program.text)
  const filled = fillEmptyBlanks(program, hidden)
  const parsed = parseText(filled.text)
  if (!parsed.ok) {
    return { ok: false, problems: [syntaxProblem(program, filled, parsed.fault)] }
  }
  const read = { program, ...filled, file: parsed.file, hidden, emptyBlanks: filled.names }
  const unfinished = unfinishedLines(program, parsed.file, filled)
  if (unfinished.length > 0) return { ok: false, problems: unfinished }
  const unfit = fitProblems(read)
  if (unfit.length > 0) return { ok: false, problems: unfit }
  const scopes = scopesOf(parsed.file)
  const wrong = misplaced(read, scopes)
  if (wrong.length > 0) return { ok: false, problems: wrong }
  const skips = skipsOf(parsed.file, filled.text)
  return {
    ok: true,
    read: {
      ...read,
      scopes,
      kinds: inferKinds(scopes, program.parameters, knownNames),
      skips: skips ?? remarksOf(parsed.file),
      plain: skips !== null,
    },
  }
}

/** What runs over the edge of a blank or a cell, in words; nothing for a text that is no program at all. */
export function checkBlanks(program: Program): Problem[] {
  const result = readProgram(program)
  return result.ok
    ? []
    : result.problems.filter(p => p.code === "blank-reaches-out" || p.code === "cell-not-whole")
}

export interface LowerOptions {
  readonly trace: boolean
  readonly blind?: boolean
  /** leaves the types to the stripper, whatever they are */
  readonly keepTypes?: boolean
}

export interface Lowered {
  readonly text: string
  /** false where the text holds types still, for the stripper */
  readonly plain: boolean
  readonly sites: readonly Site[]
}

/**
 * The program with its operators as calls, its loops guarded and its names handed in.
 *
 * @param options trace: notes every place; blind and keepTypes: the long way round, for comparison
 * @param sites numbers already given away: the new ones follow them
 */
export function lowerRead(
  read: Read,
  { trace, blind = false, keepTypes = false }: LowerOptions,
  sites: readonly Site[] = [],
): Lowered {
  const { program, hidden, scopes } = read
  const all = [...sites]
  const known = new Set([...knownNames, ...program.parameters])
  const kinds = blind ? blindKinds : read.kinds
  const split =
    trace || blind
      ? null
      : chooseSplit({ file: read.file, scopes, kinds, hidden, known, timeStep: program.timeStep })
  const shapes: string[] = []
  const body = emitProgram({
    shapes,
    text: read.text,
    file: read.file,
    scopes,
    kinds,
    split,
    hidden,
    skips: keepTypes ? remarksOf(read.file) : read.skips,
    trace,
    emptyBlanks: read.emptyBlanks,
    timeStep: program.timeStep,
    catches: mayCatch(read.text),
    known,
    cells: program.cells.length,
    cellOf: (s: Statement) =>
      Math.max(
        0,
        program.cells.findLastIndex(c => c.from <= read.toProgram(s.start!)),
      ),
    site(from, to, what, endless) {
      const place = { from: read.toProgram(from), to: read.toProgram(to), what }
      all.push(endless === undefined ? place : { ...place, endless })
      return all.length - 1
    },
  })
  return { text: wrap(body, read, shapes), plain: read.plain && !keepTypes, sites: all }
}

const blindKinds: Kinds = { of: () => ANY, ofBinding: () => ANY }

const hostNames = [
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
  "overrun",
  "enterCell",
  "timeStep",
  "emptyBlank",
  "caught",
  "at",
] as const

/** The body of the function (lib, parameters, host) around a program: names first, then the program in a block of its own. */
function wrap(body: string, { scopes, program, hidden, text }: Read, shapes: readonly string[]): string {
  const catches = mayCatch(text)
  const ownVars = new Set([...scopes.program.names.values()].filter(b => b.kind === "var").map(b => b.name))
  const used = [...scopes.free.keys()].filter(name => !ownVars.has(name))
  const parameters = used.filter(name => program.parameters.includes(name))
  const library = used.filter(name => knownNames.has(name) && name !== "record" && !parameters.includes(name))
  const host = hostNames
    .filter(name => body.includes(hidden.of(name)))
    .map(name => `${name}: ${hidden.of(name)}`)
  host.push(`maxTurns: ${hidden.of("max")}`, `done: ${hidden.of("done")}`)
  if (used.includes("record") && !parameters.includes("record")) host.push("record")
  return [
    `"use strict";`,
    `const { ${library.join(", ")} } = lib;`,
    `const { ${parameters.join(", ")} } = parameters;`,
    `const { ${host.join(", ")} } = host;`,
    `let ${hidden.of("turns")} = 0;`,
    ...(catches ? [`let ${hidden.of("asked")} = 0;`] : []),
    ...(shapes.length === 0
      ? []
      : [
          `const ${hidden.of("rows")} = host.rows ?? (() => ({ view: null, next: 0, last: -1, lastTime: 0 }));`,
          `let ${shapes.map((_, i) => `${hidden.of(`rows${i}`)} = ${hidden.of("rows")}("")`).join(", ")};`,
        ]),
    "lib = parameters = host = undefined;",
    "try {",
    `${body}} finally {`,
    `${hidden.of("done")}(${hidden.of("turns")}${catches ? `, ${hidden.of("asked")}` : ""});`,
    "}",
    "",
  ].join("\n")
}

export function tooDeep(program: Program): Problem {
  return {
    code: "nested-too-deep",
    text: "The program nests brackets or operators too deep to be read.",
    todo: "Break the long line into several shorter ones, each with a name.",
    where: { ...(program.cells[0] ? { cell: program.cells[0].name } : {}), line: 1, column: 1 },
  }
}
