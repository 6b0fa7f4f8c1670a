import { afterAll, beforeAll, describe, expect, it } from "vitest"
import { createNodeRunner } from "../../src/run/node/runner.ts"
import { openRunnerPage } from "./page/open.ts"
import { bitsOf, firstDifference } from "./support/bits.ts"
import { compiled, fallingKey, request } from "./support/program.ts"

const node = createNodeRunner()
let opened: Awaited<ReturnType<typeof openRunnerPage>>
beforeAll(async () => {
  opened = await openRunnerPage()
})
afterAll(async () => {
  await opened.close()
  await node.close()
})

/** Two masses on a strut over a rough, springy floor: vectors, square roots, friction, thousands of dependent steps. */
const strut = `
const m = 0.4, k = 220, L = 0.6, c = 1.3, mu = 0.35
const dt = 0.0005
let a = vec3(0, 1, 0), b = vec3(0.5, 1.2, 0.1)
let pa = vec3(0.2, 0, 0), pb = vec3(-0.1, 0, 0.3)
for (let t = 0; t < 2; t = t + dt) {
  const d = b - a
  const strut = k * (magnitude(d) - L) * unit(d)
  const floor = (r, p) => r.y > 0 ? vec3(0, 0, 0) : vec3(-mu * p.x, -900 * r.y - c * p.y, -mu * p.z)
  pa = pa + (strut + floor(a, pa) + vec3(0, -9.81 * m, 0)) * dt
  pb = pb + (floor(b, pb) - strut + vec3(0, -9.81 * m, 0)) * dt
  a = a + pa / m * dt
  b = b + pb / m * dt
  record(t, { a: { position: a, momentum: pa }, b: { position: b, momentum: pb } })
}`

/** Each function of Math at arguments over many magnitudes, random numbers, powers and numbers as text. */
const functions = `
for (let i = 0; i < 3000; i++) {
  const x = (random() - 0.5) * 10 ** Math.floor(random() * 8 - 3)
  const u = random() * 2 - 1
  record(i, {
    x, sin: Math.sin(x), cos: Math.cos(x), tan: Math.tan(x), exp: Math.exp(u * 20), log: Math.log(Math.abs(x) + 1e-9),
    pow: Math.pow(Math.abs(x), u), cube: x ** 3, half: Math.abs(x) ** 0.5, atan2: Math.atan2(x, u), asin: Math.asin(u),
    tanh: Math.tanh(u), sinh: Math.sinh(u), hypot: Math.hypot(x, u, 1), cbrt: Math.cbrt(x),
    text: Number(String(x).slice(0, 12)), fixed: Number(x.toFixed(3)), sorted: [x, u, 0.1].sort((p, q) => p - q)[1],
  })
}`

describe("the same program, parameters and seed", () => {
  it.each([
    ["a falling key", fallingKey],
    ["two masses on a strut over a rough floor", strut],
    ["functions and random numbers", functions],
  ])("give the same bits in Node's child process and in a page's worker: %s", async (_, text) => {
    const run = request(await compiled(text), { seed: 20_261_125 })
    const inNode = await node.run(run)
    const inPage = await opened.page.evaluate(r => window.runPlain(r), run)
    expect(inNode.problem).toBeNull()
    expect(inPage.problem).toBeNull()
    expect(inNode.recordings[0]!.rows).toBeGreaterThan(900)
    expect(inPage.recordings).toHaveLength(inNode.recordings.length)
    expect(inNode.recordings.map((r, i) => firstDifference(r, inPage.recordings[i]!.bits))).toEqual([null])
    // Not the turns: how often a sort calls its comparison is the engine's own affair.
    expect(inPage.recordings[0]!.bits).not.toMatch(/^0+$/)
  })

  it("are stopped at the same turn, with the same words, in both", async () => {
    const run = request(await compiled("let n = 0\nwhile (true) { n = n + 1\nrecord(n, { n }) }"), {
      limits: { turns: 3000 },
    })
    const inNode = await node.run(run)
    const inPage = await opened.page.evaluate(r => window.runPlain(r), run)
    expect(inPage.problem).toEqual(inNode.problem)
    expect(inPage.recordings.map(r => r.bits)).toEqual(inNode.recordings.map(bitsOf))
  })
})
