import { existsSync, mkdirSync, readFileSync, writeFileSync } from "node:fs"
import { fileURLToPath } from "node:url"
import type { Browser, Page } from "playwright-core"
import { afterAll, beforeAll, describe, expect, it } from "vitest"
import { launchChromium } from "../../support/chromium.ts"
import { serveFixture } from "../bench-fixture/serve.ts"

/*
 * Pictures against kept ones. Set KEEP_PICTURES=1 to keep what is drawn now, and look at it before it is committed.
 * Compared is ink: the part of all inked places (at half size, so that the smoothing of edges does not count) that differ.
 */
const folder = fileURLToPath(new URL("pictures/", import.meta.url))
const keep = process.env.KEEP_PICTURES === "1"
const allowed = 0.12

let browser: Browser
let served: Awaited<ReturnType<typeof serveFixture>>

beforeAll(async () => {
  ;[browser, served] = await Promise.all([launchChromium(), serveFixture()])
})

afterAll(async () => {
  await browser?.close()
  await served?.close()
})

async function picture(name: string, part: string, prepare: (page: Page) => Promise<void>): Promise<Buffer> {
  const page = await browser.newPage({ viewport: { width: 760, height: 1000 }, colorScheme: "light" })
  try {
    await page.goto(`${served.url}?case=${name}`)
    await page.waitForSelector(".bn-plot-field svg[role=img]")
    await page.evaluate(() => document.fonts.ready)
    await prepare(page)
    await page.mouse.move(0, 0)
    await page.evaluate(() => (document.activeElement as HTMLElement | null)?.blur())
    await page.evaluate(() => new Promise(done => requestAnimationFrame(() => setTimeout(done, 200))))
    return await page.locator(part).first().screenshot()
  } finally {
    await page.close()
  }
}

/** The part of inked places that differ between two pictures; 1 when their sizes do. Plain text, so that it is not rewritten. */
const compare = `async ([one, two]) => {
  const read = async data => {
    const image = await createImageBitmap(await (await fetch("data:image/png;base64," + data)).blob())
    const [w, h] = [image.width >> 1, image.height >> 1]
    const context = new OffscreenCanvas(w, h).getContext("2d")
    context.drawImage(image, 0, 0, w, h)
    return { w, h, data: context.getImageData(0, 0, w, h).data }
  }
  const [a, b] = [await read(one), await read(two)]
  if (Math.abs(a.w - b.w) > 1 || Math.abs(a.h - b.h) > 1) return 1
  const far = (p, i, q, j) => Math.abs(p[i] - q[j]) + Math.abs(p[i + 1] - q[j + 1]) + Math.abs(p[i + 2] - q[j + 2])
  let ink = 0, different = 0
  for (let y = 0; y < Math.min(a.h, b.h); y++)
    for (let x = 0; x < Math.min(a.w, b.w); x++) {
      const [i, j] = [4 * (y * a.w + x), 4 * (y * b.w + x)]
      const inked = far(a.data, i, a.data, 0) > 60 || far(b.data, j, b.data, 0) > 60
      if (inked) ink++
      if (far(a.data, i, b.data, j) > 120) different++
    }
  return different / Math.max(1, ink)
}`

async function difference(a: Buffer, b: Buffer): Promise<number> {
  const page = await browser.newPage()
  try {
    const arg = JSON.stringify([a.toString("base64"), b.toString("base64")])
    return Number(await page.evaluate(`(${compare})(${arg})`))
  } finally {
    await page.close()
  }
}

async function to(page: Page, part: number): Promise<void> {
  const box = await page.locator(".bn-ruler").boundingBox()
  if (!box) throw new Error("no ruler")
  await page.mouse.click(box.x + 14 + (box.width - 28) * part, box.y + 20)
}

const press = (page: Page, name: string) => page.locator(`.bn-legend-key:has-text("${name}")`).click()

const kept: readonly [string, string, string, (page: Page) => Promise<void>][] = [
  ["scene with contact forces", "bounce", ".bn-picture", page => to(page, 0.21)],
  [
    "strobe picture with all arrows",
    "projectile",
    ".bn-picture",
    async page => {
      await to(page, 0.7)
      for (const name of ["strobe", "velocity", "momentum", "net force"]) await press(page, name)
    },
  ],
  ["vector out of the page", "helix", ".bn-picture", page => to(page, 0.3)],
  ["struts and ropes", "moored", ".bn-picture", page => to(page, 0.5)],
  ["in space", "swing", ".bn-picture", page => to(page, 0.8)],
  ["plot with reference and crosshair", "bounce", ".bn-plot-field", page => to(page, 0.5)],
]

describe("the picture is the kept one", () => {
  it.each(kept)("%s", async (title, name, part, prepare) => {
    const file = `${folder}${title.replaceAll(" ", "-")}.png`
    const now = await picture(name, part, prepare)
    if (keep) {
      mkdirSync(folder, { recursive: true })
      writeFileSync(file, now)
    }
    expect(existsSync(file)).toBe(true)
    expect(await difference(readFileSync(file), now)).toBeLessThan(allowed)
  })

  it("and a corrupted recording's is not", async () => {
    const now = await picture("corrupted", ".bn-plot-field", page => to(page, 0.5))
    const before = readFileSync(`${folder}plot-with-reference-and-crosshair.png`)
    expect(await difference(before, now)).toBeGreaterThan(2 * allowed)
  })
})
