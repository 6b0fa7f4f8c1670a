import type { Browser, BrowserContext, Page } from "playwright-core"
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from "vitest"
import { openWords, valueWords } from "../../src/page/reader/sheetValues.ts"
import { unreadWords } from "../../src/page/reader/unread.ts"
import { launchChromium } from "../support/chromium.ts"
import { smallEdition } from "./fixtures/edition.ts"
import { publishedSite, type Site } from "./fixtures/site.ts"

const { sheet } = smallEdition()
const problem = { code: "x", text: "", todo: "", where: { cell: "fall", line: 18, column: 2 } }

describe("what a verdict leaves open", () => {
  const varying = { parameters: sheet.parameters.map(parameter => ({ ...parameter, vary: true })) }
  it("is said of one that is met and is tried with other values when it is marked, and of no other", () => {
    expect(openWords(varying, { draws: 2 }, "met")).toContain("other values are tried")
    expect(openWords(varying, { draws: 2 }, "not met")).toBe("")
    expect(openWords(varying, { draws: 0 }, "met")).toBe("")
    expect(openWords(sheet, { draws: 2 }, "met")).toBe("")
  })
  it("sliders that stand elsewhere are named beside every verdict", () => {
    expect(valueWords(sheet, { draws: 0 }, "not met", true)).toContain("the sheet's own values")
    expect(valueWords(sheet, { draws: 0 }, "not met", false)).toBe("")
  })
})

describe("a line that cannot be read, at handing in", () => {
  it("is named by listing and line, and nothing is said of a program that runs", () => {
    expect(unreadWords(sheet, { kind: "not-compiled" }, [problem])).toBe(
      "Listing 1, line 18 cannot be read yet; with it no line of the program counts.",
    )
    expect(unreadWords(sheet, { kind: "ran", steps: 1, milliseconds: 1 }, [])).toBe("")
    expect(unreadWords(sheet, { kind: "stopped", problem, older: false }, [problem])).toBe("")
  })
})

describe("on the page", () => {
  let browser: Browser
  let site: Site
  let context: BrowserContext
  let page: Page

  beforeAll(async () => {
    site = await publishedSite("tests/page/fixtures/hoist.md")
    browser = await launchChromium()
  })
  afterAll(async () => {
    await browser?.close()
    site?.close()
  })
  beforeEach(async () => {
    context = await browser.newContext({ viewport: { width: 1440, height: 900 } })
    context.setDefaultTimeout(8_000)
    page = await context.newPage()
    await page.goto(`${site.address}#hoist`)
    await page.locator(".cm-line.ruled").first().click()
    await page.keyboard.press("End")
    await page.keyboard.press("Shift+Home")
    await page.keyboard.press("Shift+Home")
    await page.keyboard.insertText("p = p + Fnet * dt\nr = r + (p / mass) * dt")
  })
  afterEach(async () => {
    await context.close()
  })

  const met = () => page.locator(".note-met").waitFor({ timeout: 20_000 })

  it("a met verdict names the values that it is about, in the note and in the list", async () => {
    await met()
    const open = "Met with the values of the sheet; other values are tried when it is marked."
    expect(await page.locator(".note-met").textContent()).toContain(open)
    expect(await page.locator(".checks-open").textContent()).toBe(open)
    expect(await page.locator(".note-met").textContent()).not.toContain("Said of the sheet's own values")
    await page.getByRole("slider", { name: "pull" }).press("ArrowRight")
    await page.locator(".note-met", { hasText: "the bench shows others" }).waitFor()
  })
  it("after a change that cannot be read nothing is called met, and handing in says so", async () => {
    await met()
    expect(await page.locator(".hand-in-unread").count()).toBe(0)
    await page.keyboard.type(" +")
    await page.locator(".checks-stale").waitFor()
    expect(await page.locator(".check-verdict").textContent()).toBe("not yet")
    expect(await page.locator(".check-points").textContent()).toBe("4 points")
    expect(await page.locator(".student-points").textContent()).toBe("4 points")
    await page.locator(".hand-in-unread").waitFor()
    expect(await page.locator(".hand-in-unread").textContent()).toMatch(
      /^Listing 1, line \d+ cannot be read yet/,
    )
    await page.locator("#student-name").fill("Mara Quill")
    await page.locator("#student-id").fill("1042")
    await page.getByRole("button", { name: "Download answer file" }).click()
    await page.locator(".hand-in-said", { hasText: "no line of the program counts" }).waitFor()
  })
  it("what the program prints is on the bench, also of a run that was stopped", async () => {
    await page.keyboard.insertText("\nif (t < 0.015) console.log(p)")
    await page.locator(".bn-printed pre").waitFor()
    expect(await page.locator(".bn-printed pre").textContent()).toMatch(
      /^\(0, 0\.1\d+, 0\)\n\(0, 0\.2\d+, 0\)$/,
    )
    await page.keyboard.insertText("\nwhile (true) { console.log('round') }")
    await page.locator(".bn-printed pre", { hasText: "round" }).waitFor({ timeout: 30_000 })
    expect(await page.locator("#bench").textContent()).toContain("never ends")
    expect(await page.locator(".bn-printed pre").textContent()).toContain("more lines are not shown")
    await page.keyboard.press("Control+z")
    await page.keyboard.press("Control+z")
    await page.locator(".bn-printed").waitFor({ state: "detached" })
  })
})
