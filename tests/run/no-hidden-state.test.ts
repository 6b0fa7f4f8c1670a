import fc from "fast-check"
import { afterAll, beforeAll, describe, expect, it } from "vitest"
import { assembleProgram, type CellSource, type Compiled, compile } from "../../src/cell/index.ts"
import { createNodeStripper } from "../../src/cell/strip.node.ts"
import type { Runner, RunOutcome } from "../../src/run/contract.ts"
import { createNodeRunner } from "../../src/run/node/runner.ts"

const strip = await createNodeStripper()

/** Three cells; the second and third use, and may change, what the ones before made. */
const cells: readonly CellSource[] = ["make", "use", "spoil"].map(name => ({
  name,
  line: 1,
  segments: [{ kind: "blank", name, prompt: "", inline: false, starter: "" }],
}))

type Texts = Readonly<Record<"make" | "use" | "spoil", string>>

const first: Texts = {
  make: "const forces = [vec3(1, 0, 0)]\nconst shared = { count: 0 }\nlet r = vec3(0, 0, 0)\nrecord(0, { a: { position: r }, n: shared.count, u: random() })",
  use: "for (const F of forces) r = r + F * mass\nrecord(1, { a: { position: r }, n: forces.length, u: random() })",
  spoil:
    "forces.push(vec3(0, 5, 0))\nshared.count = shared.count + 1\nrecord(2, { a: { position: r }, n: shared.count, u: random() })",
}

/** Other texts for each cell, some of which change what an earlier cell made. */
const others: { readonly [K in keyof Texts]: readonly string[] } = {
  make: [
    first.make,
    first.make.replace("(1, 0, 0)", "(2, 0, 0)"),
    first.make.replace("count: 0", "count: 7"),
  ],
  use: [
    first.use,
    "r = r * 2 + forces[0]\nrecord(1, { a: { position: r }, n: shared.count, u: random() })",
    "forces.reverse()\nrecord(1, { a: { position: forces[0] }, n: 1, u: random() })",
  ],
  spoil: [
    first.spoil,
    "forces.length = 0\nrecord(2, { n: forces.length })",
    "Object.assign(shared, { count: 99 })\nforces[0] = vec3(9, 9, 9)\nrecord(2, { n: shared.count })",
  ],
}

async function compiled(texts: Texts): Promise<Compiled> {
  const result = await compile(assembleProgram(cells, texts, ["mass"], "dt"), strip)
  if (!result.ok) throw new Error(JSON.stringify(result.problems))
  return result.compiled
}

/** All that a run leaves, to the bit. */
const kept = ({ recordings, output, problem }: RunOutcome): string =>
  JSON.stringify({
    recordings: recordings.map(one => ({
      ...one,
      data: [...new BigUint64Array(one.data.slice(0, one.rows * one.width).buffer)].map(String),
    })),
    output,
    problem,
  })

const runners: Runner[] = []
const runner = (): Runner => {
  const fresh = createNodeRunner({ workers: 1 })
  runners.push(fresh)
  return fresh
}
let used: Runner
beforeAll(() => {
  used = runner()
})
afterAll(async () => {
  await Promise.all(runners.map(one => one.close()))
})

async function run(on: Runner, texts: Texts, seed = 7, mass = 2): Promise<string> {
  return kept(await on.run({ compiled: await compiled(texts), parameters: { mass }, seed }))
}

describe("all cells are one program in the order of the document, run as a whole", () => {
  it("the second run of a text gives the bits of the first, whatever its cells change in each other's things", async () => {
    const once = await run(used, first)
    expect(await run(used, first)).toBe(once)
    expect(await run(used, first)).toBe(once)
  })
  it("an earlier cell never sees what a later one did: a spoilt list is whole again in the next run", async () => {
    const before = await run(used, first)
    await run(used, { ...first, spoil: others.spoil[1]! })
    await run(used, { ...first, spoil: others.spoil[2]! })
    expect(await run(used, first)).toBe(before)
  })
  it("an edit of any cell gives what a fresh place gives for the text as it now stands", async () => {
    const edit = fc.tuple(fc.constantFrom("make", "use", "spoil"), fc.nat({ max: 2 })) as fc.Arbitrary<
      [keyof Texts, number]
    >
    await fc.assert(
      fc.asyncProperty(fc.array(edit, { minLength: 2, maxLength: 6 }), async edits => {
        let texts = first
        for (const [cell, which] of edits) {
          texts = { ...texts, [cell]: others[cell][which]! }
          await run(used, texts)
        }
        const fresh = runner()
        try {
          expect(await run(used, texts)).toBe(await run(fresh, texts))
        } finally {
          await fresh.close()
        }
      }),
      { numRuns: 6, seed: 41 },
    )
  })
  it("what depends on an edited cell follows, though its own text is the same", async () => {
    const before = await run(used, first)
    const after = await run(used, { ...first, make: others.make[1]! })
    expect(after).not.toBe(before)
  })
  it("random numbers come from the seed and from nothing else", async () => {
    const seven = await run(used, first, 7)
    expect(await run(used, first, 8)).not.toBe(seven)
    expect(await run(used, first, 7)).toBe(seven)
    expect(await run(runner(), first, 7)).toBe(seven)
  })
  it.each(["Date.now()", "performance.now()", "setTimeout(() => 1, 0)", "new Date()"])(
    "there is no clock: %s",
    async text => {
      const outcome = await used.run({
        compiled: await compiled({ ...first, use: text }),
        parameters: { mass: 2 },
        seed: 1,
      })
      expect(outcome.problem).toMatchObject({ code: "unknown-name", where: { cell: "use", line: 1 } })
    },
  )
})
