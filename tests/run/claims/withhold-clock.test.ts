import { expect, it } from "vitest"
import { allClosed, createProbe } from "../support/probe.ts"

const probe = createProbe()
const clocks = [
  "Date",
  "performance",
  "setTimeout",
  "setInterval",
  "setImmediate",
  "queueMicrotask",
  "requestAnimationFrame",
  "Temporal",
  "Intl",
  "Atomics",
]

it("claim: a program sees no clock, timer, calendar or locale", async () => {
  expect(await probe.ask(...clocks)).toEqual(allClosed(clocks))
})

it("claim: texts of numbers do not depend on the place where the program runs", async () => {
  const { output } = await probe.runner.run({
    compiled: (await import("../support/program.ts")).raw(
      "lib.console.log((1234567.5).toLocaleString('de'), 'ä'.localeCompare('z') )",
    ),
    parameters: {},
    seed: 1,
  })
  expect(output).toEqual(["1234567.5 1"])
})
