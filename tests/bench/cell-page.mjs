/* From text to runnable in Chromium, in the page's own compiler: node tests/bench/cell-page.mjs */
import { rmSync } from "node:fs"
import { fileURLToPath } from "node:url"
import { chromium } from "playwright-core"
import { build, preview } from "vite"

const root = fileURLToPath(new URL("cell/page", import.meta.url))
const outDir = fileURLToPath(new URL(`../../node_modules/.cache/bench-page-${process.pid}`, import.meta.url))
const config = {
  configFile: false,
  logLevel: "error",
  root,
  worker: { format: "es" },
  build: { outDir, target: "es2022", assetsInlineLimit: 0 },
}
await build(config)
const server = await preview({ ...config, preview: { port: 0, host: "127.0.0.1" } })
const browser = await chromium.launch({
  executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium",
  args: [
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
  ],
})
try {
  const page = await browser.newPage()
  page.on("pageerror", error => console.error(String(error)))
  await page.goto(server.resolvedUrls.local[0])
  await page.waitForFunction(() => "measure" in window)
  const { ready, times } = await page.evaluate(() => window.measure(200))
  const sorted = times.slice(20).sort((a, b) => a - b)
  const at = share => sorted[Math.floor(sorted.length * share)].toFixed(1)
  console.log(
    `ready after ${ready.toFixed(0)} ms (warmed), first ${times[0].toFixed(0)} ms, then median ${at(0.5)} ms, 95th percentile ${at(0.95)} ms`,
  )
} finally {
  await browser.close()
  await server.close()
  rmSync(outDir, { recursive: true, force: true })
}
process.exit(0)
