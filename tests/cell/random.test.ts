import fc from "fast-check"
import { describe, expect, it } from "vitest"
import { lower } from "../../src/cell/index.ts"
import { mechanicsProgram, plainProgram } from "./random-programs.ts"
import { program, run } from "./run.ts"

/** The programs here hold no types, so what lowering gives runs as it is. */
function lowered(text: string, options: { trace: boolean; blind?: boolean }): string {
  const result = lower(program(text), options)
  if (!result.ok) throw new Error(JSON.stringify(result.problems) + text)
  return result.lowered.text
}

function printed(js: string): unknown {
  const { printed, error, recorded } = run({ js, traceJs: "", sites: [], program: program("") })
  return [printed, String(error), JSON.stringify(recorded)]
}

const runs = { numRuns: Number(process.env.RUNS ?? 120), seed: 7 }

describe("random programs", () => {
  it("print the same rewritten, blindly rewritten, traced and as they are", () =>
    fc.assert(
      fc.property(plainProgram, text => {
        const log: unknown[] = []
        let failed: unknown
        try {
          new Function("console", `"use strict";${text}`)({ log: (v: unknown) => log.push(v) })
        } catch (error) {
          failed = error
        }
        const expected = [log, String(failed), "[]"]
        expect(printed(lowered(text, { trace: false }))).toEqual(expected)
        expect(printed(lowered(text, { trace: false, blind: true }))).toEqual(expected)
        expect(printed(lowered(text, { trace: true }))).toEqual(expected)
      }),
      runs,
    ))

  it("with vectors give the same bits split into components, rewritten blindly, and traced", () =>
    fc.assert(
      fc.property(mechanicsProgram, text => {
        const blind = printed(lowered(text, { trace: false, blind: true }))
        expect(printed(lowered(text, { trace: false }))).toEqual(blind)
        expect(printed(lowered(text, { trace: true }))).toEqual(blind)
      }),
      runs,
    ))
})
