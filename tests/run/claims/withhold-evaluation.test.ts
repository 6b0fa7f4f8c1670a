import { expect, it } from "vitest"
import { allClosed, createProbe } from "../support/probe.ts"
import { raw, request } from "../support/program.ts"

const probe = createProbe()
const makers = [
  "eval('1')",
  "(0, eval)('1')",
  "Function('return 1')",
  "(() => {}).constructor('return 1')",
  "(async () => {}).constructor('return 1')",
  "(function* () {}).constructor('yield 1')",
  "(async function* () {}).constructor('yield 1')",
  "lib.vec3.constructor('return 1')",
  "host.record.constructor('return 1')",
]

it("claim: no text becomes a program", async () => {
  expect(await probe.ask(...makers)).toEqual(allClosed(makers))
})

it.each([
  "import('node:fs')",
  "import /**/ ('node:fs')",
  "im\\u0070ort('node:fs')",
  "import.meta.url",
  "new Worker('a')",
])("claim: no module is loaded by %s", async js => {
  const { problem, recordings } = await probe.runner.run(
    request(raw(`host.record(0, { a: 1 }); ${js}; host.record(1, { a: 1 })`)),
  )
  expect(problem).not.toBeNull()
  expect(recordings[0]?.rows ?? 0).toBeLessThan(2)
})
