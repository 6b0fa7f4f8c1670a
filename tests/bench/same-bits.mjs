/*
 * Does the library's Math give the same bits in Node and in Chromium? node tests/bench/same-bits.mjs
 * Every function at 200,000 seeded arguments, and a stepped motion, come out as one digest in each engine.
 */
import { createHash } from "node:crypto"
import { fileURLToPath } from "node:url"
import { chromium } from "playwright-core"
import { build } from "vite"

const entry = fileURLToPath(new URL("physics/bits.ts", import.meta.url))
const built = await build({
  configFile: false,
  logLevel: "error",
  build: { write: false, target: "es2022", lib: { entry, formats: ["iife"], name: "bits" } },
})
const code = built[0].output[0].code

const browser = await chromium.launch({
  executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium",
  args: [
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
  ],
})
try {
  const page = await browser.newPage()
  const there = await page.evaluate(`${code}; bits.digests()`)
  const here = new Function(`${code}; return bits.digests()`)()
  let differ = 0
  for (const name of Object.keys(here)) {
    if (here[name] !== there[name]) differ++
    console.log(
      `${name.padEnd(16)} ${here[name]} ${here[name] === there[name] ? "same" : `differs: ${there[name]}`}`,
    )
  }
  const engine = await page.evaluate(
    "Object.keys(bits.engineDigests()).map(name => [name, bits.engineDigests()[name]])",
  )
  const own = new Function(`${code}; return bits.engineDigests()`)()
  const unlike = engine.filter(([name, digest]) => own[name] !== digest).map(([name]) => name)
  const whole = createHash("sha256").update(JSON.stringify(here)).digest("hex").slice(0, 16)
  console.log(
    `Node ${process.version}, Chromium ${browser.version()}: ${differ} of ${Object.keys(here).length} differ; ${whole}`,
  )
  console.log(`the engines' own Math differs in: ${unlike.join(", ") || "nothing"}`)
  process.exitCode = differ === 0 ? 0 : 1
} finally {
  await browser.close()
}
