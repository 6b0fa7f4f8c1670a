import type { Compiled, CompileResult, Program, TypeStripper } from "./contract.ts"
import { harmlessText } from "./harden-text.ts"
import {
  type Lowered,
  type LowerOptions,
  lowerRead,
  type Read,
  type ReadResult,
  readProgram,
  tooDeep,
} from "./lower.ts"
import type { Problem } from "./problem.ts"
import { problemAt } from "./problems.ts"

export type LowerResult =
  | { readonly ok: true; readonly lowered: Lowered }
  | { readonly ok: false; readonly problems: readonly Problem[] }

/**
 * The part of compiling that needs nothing from outside: operators as calls, loops guarded, names handed in, types
 * taken away where that is all they need.
 */
export function lower(program: Program, options: LowerOptions): LowerResult {
  const result = readProgram(program)
  if (!result.ok) return result
  return { ok: true, lowered: lowerRead(result.read, options) }
}

export interface CompileOptions {
  /** false leaves the text with the trace to traceProgram, for whoever runs many programs of which few fail */
  readonly trace?: boolean
}

/** A program made ready to run, or what is wrong with it in words. Rejects only if the stripper itself is gone. */
export async function compile(
  program: Program,
  strip: TypeStripper,
  { trace = true }: CompileOptions = {},
): Promise<CompileResult> {
  const result = readProgram(program)
  if (!result.ok) return result
  const texts = lowerTexts(result, trace)
  if (texts === null) return { ok: false, problems: [tooDeep(program)] }
  const { fast, traced } = texts
  const plain = async ({ text }: Lowered): Promise<string> =>
    harmlessText(fast.plain ? text : await strip(text))
  try {
    const [js, traceJs] = await Promise.all([plain(fast), traced && plain(traced)])
    return { ok: true, compiled: { js, traceJs, sites: (traced ?? fast).sites, program } }
  } catch (cause) {
    if (!isStripFault(cause)) throw cause
    return { ok: false, problems: [await secondOpinion(result.read, cause, strip)] }
  }
}

/** The same program with its trace, for one that was compiled without; null if it cannot be read. */
export async function traceProgram({ program }: Compiled, strip: TypeStripper): Promise<Compiled | null> {
  const result = await compile(program, strip)
  return result.ok ? result.compiled : null
}

function lowerTexts(
  { read }: ReadResult & { ok: true },
  trace: boolean,
): { fast: Lowered; traced: Lowered | null } | null {
  try {
    const fast = lowerRead(read, { trace: false })
    return { fast, traced: trace ? lowerRead(read, { trace: true }, fast.sites) : null }
  } catch (cause) {
    if (cause instanceof RangeError) return null
    throw cause
  }
}

interface StripFault {
  readonly errors: readonly {
    readonly text: string
    readonly location: { readonly line: number; readonly column: number; readonly lineText: string } | null
  }[]
}

const isStripFault = (cause: unknown): cause is StripFault =>
  typeof cause === "object" && cause !== null && Array.isArray((cause as { errors?: unknown }).errors)

/** What our parser let pass and the stripper does not: its words, at the place it gives for the text as typed. */
async function secondOpinion(read: Read, first: StripFault, strip: TypeStripper): Promise<Problem> {
  const { program, text } = read
  let fault = first
  let offset = 0
  try {
    await strip(text)
  } catch (cause) {
    if (!isStripFault(cause)) throw cause
    fault = cause
    const at = cause.errors[0]?.location
    if (at) {
      const start = text.split("\n", at.line - 1).join("\n").length + (at.line > 1 ? 1 : 0)
      offset =
        start + new TextDecoder().decode(new TextEncoder().encode(at.lineText).slice(0, at.column)).length
    }
  }
  const words = fault.errors[0]?.text ?? "no reason given"
  return problemAt(
    program,
    read.toProgram(offset),
    read.toProgram(offset),
    "cannot-understand",
    `This cannot be read as a program: ${words.replace(/\.$/, "")}.`,
    "Compare the line with one that works.",
  )
}
