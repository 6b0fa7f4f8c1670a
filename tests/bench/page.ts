/*
 * Speeds of the bench in Chromium: node tests/bench/start.mjs tests/bench/page.ts
 * Prints what one waits for: frames while a slider is dragged, while a long recording is scrubbed, while many bodies play.
 * Medians and 95th percentiles in ms; a frame is from one animation frame to the next.
 */
import type { Browser, Page } from "playwright-core"
import { serveFixture } from "../page/bench-fixture/serve.ts"
import { launchChromium } from "../support/chromium.ts"

interface Frames {
  readonly frames: readonly number[]
  readonly long: readonly number[]
}

/** Frame times and tasks above 50 ms while something is done; plain text so that it is not rewritten on its way. */
const watch = `() => {
  const seen = { frames: [], long: [], on: true }
  let before = performance.now()
  const tick = now => { seen.frames.push(now - before); before = now; if (seen.on) requestAnimationFrame(tick) }
  requestAnimationFrame(tick)
  new PerformanceObserver(list => { for (const e of list.getEntries()) seen.long.push(e.duration) }).observe({ type: "longtask" })
  window.benchFrames = seen
}`

async function during(page: Page, act: () => Promise<void>): Promise<Frames> {
  await page.evaluate(`(${watch})()`)
  await act()
  return page.evaluate("(window.benchFrames.on = false, window.benchFrames)")
}

function told(name: string, { frames, long }: Frames): string {
  const sorted = [...frames].slice(2).sort((a, b) => a - b)
  const at = (part: number) => (sorted[Math.floor(sorted.length * part)] ?? Number.NaN).toFixed(1)
  const worst = (sorted.at(-1) ?? Number.NaN).toFixed(1)
  const tasks =
    long.length === 0
      ? "no task above 50 ms"
      : `${long.length} tasks above 50 ms, longest ${Math.max(...long)}`
  return `${name}: ${sorted.length} frames, median ${at(0.5)}, 95 % ${at(0.95)}, longest ${worst} ms; ${tasks}`
}

async function open(browser: Browser, url: string, name: string, ready: string): Promise<Page> {
  const page = await browser.newPage({ viewport: { width: 760, height: 1000 } })
  await page.goto(`${url}?case=${name}`)
  await page.waitForSelector(ready)
  await page.waitForTimeout(500)
  return page
}

async function drag(page: Page, target: string, moves: number): Promise<void> {
  const box = await page.locator(target).first().boundingBox()
  if (!box) throw new Error(`nothing to drag: ${target}`)
  const y = box.y + box.height / 2
  await page.mouse.move(box.x + box.width / 2, y)
  await page.mouse.down()
  for (let k = 0; k < moves; k++) {
    const part = 0.5 + 0.35 * Math.sin(k / 9)
    await page.mouse.move(box.x + box.width * part, y)
    await page.waitForTimeout(16)
  }
  await page.mouse.up()
}

const fixture = await serveFixture()
const browser = await launchChromium()
try {
  const pair = await open(browser, fixture.url, "pair", ".bn-plot-field svg")
  console.log(
    told(
      "slider, two bodies, 10,000 rows, run on the page's own thread included",
      await during(pair, () => drag(pair, ".bn-slider input", 120)),
    ),
  )
  await pair.close()

  const long = await open(browser, fixture.url, "long", ".bn-plot-field svg")
  console.log(
    told("scrubbing 1,000,000 rows of 15 numbers", await during(long, () => drag(long, ".bn-ruler", 180))),
  )
  const heap = await long.evaluate("performance.memory.usedJSHeapSize / 1e6")
  console.log(`heap with 1,000,000 rows (120 MB of numbers beside it): ${Number(heap).toFixed(0)} MB`)
  await long.close()

  const crowd = await open(browser, fixture.url, "crowd", ".bn-plot-field svg")
  for (const name of ["force", "velocity"]) await crowd.locator(`.bn-legend-key:has-text("${name}")`).click()
  const play = async () => {
    await crowd.getByRole("button", { name: "play" }).click()
    await crowd.waitForTimeout(4000)
  }
  console.log(told("playing 50 bodies with force and velocity arrows", await during(crowd, play)))
  await crowd.close()
} finally {
  await browser.close()
  await fixture.close()
}
