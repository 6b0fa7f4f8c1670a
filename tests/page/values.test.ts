import { readFileSync } from "node:fs"
import type { Browser, BrowserContext, Page } from "playwright-core"
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from "vitest"
import { launchChromium } from "../support/chromium.ts"
import { publishedSite, type Site } from "./fixtures/site.ts"

let browser: Browser
let site: Site
let context: BrowserContext
let page: Page
let faults: string[]

beforeAll(async () => {
  site = await publishedSite("tests/page/fixtures/bell-buoy.md")
  browser = await launchChromium()
}, 120_000)
afterAll(async () => {
  await browser?.close()
  site?.close()
})
beforeEach(async () => {
  context = await browser.newContext({ viewport: { width: 1440, height: 900 } })
  context.setDefaultTimeout(15_000)
  page = await context.newPage()
  faults = []
  page.on("pageerror", error => faults.push(error.message))
  page.on("console", message => message.type() === "error" && faults.push(message.text()))
  await page.goto(`${site.address}#bell-buoy`)
  await page.waitForSelector(".cm-line.ruled")
})
afterEach(async () => {
  await context.close()
  expect(faults).toEqual([])
})

const plain = (text: string) => text.replaceAll("\u00a0", " ").replaceAll("\u2212", "-")

/** What stands beside the line with this text, as it is drawn. */
async function beside(line: string): Promise<string> {
  const figures = page.locator(".cm-line", { hasText: line }).locator(".beside-figure")
  const found = await figures.evaluateAll(all => all.map(one => (one as HTMLElement).dataset.figure ?? ""))
  return plain(found.join("; "))
}
const found = () =>
  page.waitForFunction(
    () =>
      document.querySelector(".beside-figure[data-figure]:not([data-figure=''])") !== null &&
      document.querySelector(".beside-old") === null,
  )
/** Until the figures have followed the time bar, which they do some times in a second. */
const followed = () => page.waitForTimeout(250)
const caretOn = async (line: string) => {
  await page.locator(".cm-line", { hasText: line }).first().click()
}
const row = async () => plain((await page.locator(".line-values-row").first().textContent()) ?? "")

async function fillAll(): Promise<void> {
  await page.locator(".gap-empty").click()
  await page.keyboard.insertText("vec3(0, lift, 0)")
  await page.locator(".cm-line.ruled").first().click()
  await page.keyboard.press("End")
  await page.keyboard.press("Shift+Home")
  await page.keyboard.press("Shift+Home")
  await page.keyboard.press("Backspace")
  await page.keyboard.insertText("p = p + Fnet * dt\nr = r + (p / mass) * dt")
}

describe("values beside the lines", () => {
  it("are those of the row that the time bar shows, and leave the listing's own text as it is", async () => {
    await fillAll()
    await found()
    const text = await page.locator(".cm-content").first().textContent()
    const ruler = page.getByRole("slider", { name: "instant shown" })
    await ruler.press("Home")
    await followed()
    const first = await beside("r = r + (p / mass) * dt")
    expect(first).toMatch(/^\(.*\) m$/)
    await ruler.press("PageUp")
    await followed()
    const second = await beside("r = r + (p / mass) * dt")
    expect(second).toMatch(/^\(.*\) m$/)
    expect(second).not.toBe(first)
    await ruler.press("Home")
    await followed()
    expect(await beside("r = r + (p / mass) * dt")).toBe(first)
    expect(await page.locator(".cm-content").first().textContent()).toBe(text)
  })
  it("are put away and brought back by a key, and found as they were left", async () => {
    await fillAll()
    await found()
    await page.getByRole("button", { name: "put the values away" }).first().press("Enter")
    expect(await page.locator(".beside").count()).toBe(0)
    await page.reload()
    await page.waitForSelector(".cm-line.ruled")
    const back = page.getByRole("button", { name: "values beside the lines" }).first()
    await back.press("Enter")
    await found()
  })
  it("are gone through turn by turn, said and sent to a plot by keys in the listing", async () => {
    await fillAll()
    await found()
    await page.getByRole("slider", { name: "instant shown" }).press("Home")
    await caretOn("r = r + (p / mass) * dt")
    expect(await row()).toMatch(/^row 1 of /)
    await page.keyboard.press("Alt+.")
    await page.keyboard.press("Alt+.")
    await page.keyboard.press("Alt+,")
    await followed()
    expect(await row()).toMatch(/^row 2 of /)
    await page.keyboard.press("Alt+v")
    const said = plain((await page.locator(".listing-keys [role=status]").textContent()) ?? "")
    expect(said).toBe(`r is ${await beside("r = r + (p / mass) * dt")}`)
    await page.keyboard.press("Alt+p")
    await page.waitForSelector(".bn-arriving .bn-plot-field svg[aria-label*='r']")
    expect(await page.locator(".bn-arriving .bn-readings").textContent()).toContain("r, y")
    await page.getByRole("button", { name: "take this plot away" }).press("Enter")
    expect(await page.locator(".bn-arriving").count()).toBe(0)
  })
  it("go to a plot at a press, and to a reader of the list by a button", async () => {
    await fillAll()
    await found()
    await page.locator(".beside-one:not(.beside-none)").last().click()
    await page.waitForSelector(".bn-arriving .bn-plot-field svg")
    await page.locator(".line-values-list summary").first().press("Enter")
    const rows = page.locator(".line-values-list tbody tr")
    await rows.nth(3).waitFor()
    await page.getByRole("button", { name: "plot p" }).first().press("Enter")
    await page.waitForFunction(() => document.querySelectorAll(".bn-arriving").length === 2)
  })
  it("are silent for a screen reader until asked, and break no rule of the accessibility checker", async () => {
    await fillAll()
    await found()
    expect(await page.locator(".beside:not([aria-hidden=true])").count()).toBe(0)
    await page.locator(".line-values-list summary").first().press("Enter")
    await page.locator(".bn-drawer-steps summary").press("Enter")
    await page.getByRole("button", { name: /^run with dt/ }).press("Enter")
    await page.waitForSelector(".bn-steps table")
    await page.waitForTimeout(200)
    await page.evaluate(readFileSync("node_modules/axe-core/axe.min.js", "utf8"))
    const violations = await page.evaluate(async () => {
      const { axe } = window as unknown as { axe: { run(): Promise<{ violations: { id: string }[] }> } }
      return (await axe.run()).violations.map(violation => violation.id)
    })
    expect(violations).toEqual([])
  })
})

describe("the study of the time step", () => {
  it("runs at one button, says what changes with what order, and is marked old after the next run", async () => {
    await fillAll()
    await found()
    await page.locator(".bn-drawer-steps summary").press("Enter")
    await page.getByRole("button", { name: "run with dt, dt/2 and dt/4" }).press("Enter")
    await page.waitForSelector(".bn-steps table")
    const text = plain((await page.locator(".bn-drawer-steps").textContent()) ?? "")
    expect(text).toContain("order 1")
    expect(await page.locator(".bn-steps tbody tr").count()).toBeGreaterThan(0)
    await page.getByRole("slider").nth(1).press("ArrowRight")
    await page.waitForFunction(() =>
      document.querySelector(".bn-drawer-steps [role=status]")?.textContent?.includes("earlier run"),
    )
  })
})
