import type { Browser, BrowserContext, Page } from "playwright-core"
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from "vitest"
import { launchChromium } from "../support/chromium.ts"
import { publishedSite, type Site } from "./fixtures/site.ts"

let browser: Browser
let site: Site
let context: BrowserContext
let page: Page
let faults: string[]
let asked: string[]

beforeAll(async () => {
  site = await publishedSite("tests/page/fixtures/bell-buoy.md")
  browser = await launchChromium()
  context = await browser.newContext({ viewport: { width: 1440, height: 900 } })
  context.setDefaultTimeout(30_000)
}, 120_000)
afterAll(async () => {
  await context?.close()
  await browser?.close()
  site?.close()
})
beforeEach(async () => {
  page = await context.newPage()
  faults = []
  asked = []
  page.on("pageerror", error => faults.push(error.message))
  page.on("console", message => message.type() === "error" && faults.push(message.text()))
  page.on("request", request => asked.push(request.url()))
  await page.goto(`${site.address}#bell-buoy`)
  await page.evaluate(() => localStorage.clear())
  await page.reload()
  await page.waitForSelector(".cm-line.ruled")
})
afterEach(async () => {
  await page.close()
  expect(faults).toEqual([])
  expect(site.missing).toEqual([])
})

/** Puts a text into the blank of whole lines, as if pasted. */
async function write(text: string): Promise<void> {
  await page.locator(".cm-line.ruled").first().click()
  await page.keyboard.press("End")
  await page.keyboard.press("Shift+Home")
  await page.keyboard.press("Shift+Home")
  await page.keyboard.insertText(text)
}
const fillNet = async (text = "vec3(0, lift, 0)"): Promise<void> => {
  await page.locator(".gap-empty").click()
  await page.keyboard.insertText(text)
}
const ruled = (): Promise<string> =>
  page.locator(".cm-line.ruled").evaluateAll(lines =>
    lines
      .map(line => {
        const copy = line.cloneNode(true) as HTMLElement
        for (const beside of copy.querySelectorAll(".beside")) beside.remove()
        return copy.textContent
      })
      .join("\n"),
  )
const noteOf = (words: string) => page.locator(".note-text", { hasText: words })
const checkerAsked = (): boolean => asked.some(url => url.includes("types.worker"))
const options = (on: Page) => on.locator(".cm-tooltip-autocomplete li")

describe("kinds of value, in Chromium, over a published folder", () => {
  it("the checker comes after the page is usable, from the page's own place", async () => {
    expect(checkerAsked()).toBe(false)
    await expect.poll(checkerAsked, { timeout: 20_000 }).toBe(true)
    await expect
      .poll(() => asked.some(url => url.endsWith("reference/declarations.json")), { timeout: 20_000 })
      .toBe(true)
    for (const url of asked)
      expect(url.startsWith(site.address) || url.startsWith("blob:") || url.startsWith("data:")).toBe(true)
  })
  it("a vector and a number under one sign are told at the sign, in a line that is never run", async () => {
    await fillNet()
    await write("p = p + Fnet * dt\nr = r + (p / mass) * dt\nif (t < 0) {\n  r = r + mass\n}")
    await noteOf("A vector and a number cannot be added: r is a vector and mass is a number.").waitFor()
    const head = page.locator(".note-problem .note-head").first()
    expect(await head.textContent()).toContain("Line 11, column 9")
    const marks = await page
      .locator(".wrong")
      .evaluateAll(all => all.map(one => [one.textContent, getComputedStyle(one).textDecorationStyle]))
    expect(marks).toEqual([["+", "wavy"]])
    await page
      .locator(".unseen[aria-live=polite]", { hasText: "Line 11 of rise: A vector and a number" })
      .waitFor({ state: "attached" })
  })
  it("one fault, one message: what stopped the run is not said again", async () => {
    await fillNet()
    await write("p = p + mass\nr = r + (p / mass) * dt")
    await noteOf("cannot be added").waitFor()
    await page.waitForTimeout(1500)
    expect(await page.locator(".note-problem").count()).toBe(1)
  })
  it("sound lines without any types are left alone", async () => {
    await fillNet()
    await write(
      "let F = Fnet\nconst step = (q, rate) => q + rate * dt\np = step(p, F)\nr = step(r, p / mass)",
    )
    await page.locator(".note-met").waitFor()
    await page.waitForTimeout(1500)
    expect(await page.locator(".note-problem").count()).toBe(0)
  })
})

describe("a new line in a listing, in Chromium", () => {
  it("stands at its block's indentation even where the editor was cut off while it read", async () => {
    await write("p = p + ")
    // a clock that runs off at each look: the editor's 20 ms for reading what was typed are always over
    await page.evaluate(() => {
      const now = Date.now
      let ahead = 0
      Date.now = () => now() + (ahead += 21)
      addEventListener("keyup", () => (Date.now = now), { once: true })
    })
    await page.keyboard.type("F")
    await page.keyboard.press("Enter")
    expect(await ruled()).toBe("p = p + F\n  ")
  })
})

describe("names in a listing, in Chromium", () => {
  beforeEach(async () => {
    await fillNet()
    await expect
      .poll(() => asked.some(url => url.endsWith("reference/declarations.json")), { timeout: 20_000 })
      .toBe(true)
  })
  it("are suggested; Enter and Tab keep their meaning until an arrow key chooses one", async () => {
    await write("p = p + ")
    await page.keyboard.press("Control+Space")
    await options(page).first().waitFor()
    await page.keyboard.type("Fn")
    await expect.poll(() => options(page).allTextContents()).toEqual([expect.stringContaining("Fnet")])
    expect(await options(page).first().textContent()).toContain("a vector, N")
    await page.keyboard.press("Enter")
    await expect.poll(ruled).toBe("p = p + Fn\n  ")
    await page.keyboard.press("Backspace")
    await page.keyboard.press("Backspace")
    await page.keyboard.press("Control+Space")
    await options(page).first().waitFor()
    // a list that has only just come takes no keys yet, so that nobody chooses by accident
    await page.waitForTimeout(150)
    await page.keyboard.press("ArrowDown")
    await expect.poll(() => page.locator("li[aria-selected]").count()).toBe(1)
    expect(await page.locator(".cm-content[aria-activedescendant]").count()).toBe(1)
    await page.waitForTimeout(100)
    await page.keyboard.press("Enter")
    await expect.poll(ruled).toBe("p = p + Fnet")
    await page.keyboard.press("Tab")
    expect(await page.evaluate(() => document.activeElement?.closest(".cm-editor") === null)).toBe(true)
  })
  it("are the parts of a vector behind a dot, in a line that is not finished", async () => {
    await write("p = p + r")
    // asked for by key, the list waits for the checker; what comes by itself does not
    await page.keyboard.press("Control+Space")
    await options(page).first().waitFor()
    await page.keyboard.press("Escape")
    await page.keyboard.type(".")
    await expect
      .poll(async () => (await options(page).allTextContents()).join(" "), { timeout: 20_000 })
      .toContain("magnitude")
    await page.keyboard.press("Escape")
    await expect.poll(() => options(page).count()).toBe(0)
  })
  it("are not suggested while typing once that is put away, also after the page is loaded again; by key they still are", async () => {
    const off = page.getByRole("button", { name: "names suggested while typing: yes" })
    await write("")
    await off.click()
    await page.reload()
    await page.waitForSelector(".cm-line.ruled")
    await write("")
    await page.keyboard.type("p = p + Fn", { delay: 20 })
    await page.waitForTimeout(1200)
    expect(await options(page).count()).toBe(0)
    await page.keyboard.press("Control+Space")
    await options(page).first().waitFor()
  })
  it("are explained by key: what they hold, and a parameter's label and unit", async () => {
    await write("p = p + lift * Fnet")
    await page.keyboard.press("Alt+h")
    await page.locator(".library-words", { hasText: "Fnet: a vector, N" }).waitFor()
    for (let i = 0; i < 8; i++) await page.keyboard.press("ArrowLeft")
    await page.keyboard.press("Alt+h")
    await page.locator(".library-words", { hasText: "lift: a number" }).waitFor()
  })
  it("are renamed by key everywhere in what may be written; a given name is not, and it says so", async () => {
    await write("let half = 0.5 * dt\np = p + Fnet * half + Fnet * half\nr = r + (p / mass) * half")
    await page.keyboard.press("F2")
    await page.getByLabel("New name for half").waitFor()
    await page.keyboard.type("dt")
    await page.keyboard.press("Enter")
    await page.locator(".rename-refused", { hasText: "dt is used already" }).waitFor()
    await page.getByLabel("New name for half").fill("h")
    await page.keyboard.press("Enter")
    await expect.poll(ruled).toBe("let h = 0.5 * dt\np = p + Fnet * h + Fnet * h\nr = r + (p / mass) * h")
    await page.locator("[role=status]", { hasText: "half is called h now, in 4 places." }).waitFor()
    await page.locator(".cm-line.ruled").first().click()
    await page.keyboard.press("End")
    await page.keyboard.press("F2")
    await page.locator("[role=status]", { hasText: "given lines stay as they are" }).waitFor()
  })
})

describe("lines as equations, in Chromium", () => {
  const formulas = () => page.locator(".line-equation")
  it("stand above their lines on request, by button and by key, follow what is typed, and are kept for the next visit", async () => {
    expect(await formulas().count()).toBe(0)
    expect(asked.some(url => url.includes("katex") && url.endsWith(".js"))).toBe(false)
    await fillNet()
    await write("p = p + Fnet * dt")
    await page.keyboard.press("Alt+e")
    await formulas().first().waitFor()
    const list = page.locator(".unseen li")
    await expect
      .poll(() => list.allTextContents())
      .toContain("line 8: vector p new equals vector p old plus vector capital F net times delta t")
    await page.keyboard.type("\nr = r + ")
    await page.waitForTimeout(500)
    expect((await list.allTextContents()).some(text => text.startsWith("line 9"))).toBe(false)
    await page.keyboard.type("(p / mass) * dt")
    await expect
      .poll(async () => (await list.allTextContents()).some(text => text.startsWith("line 9: vector r new")))
      .toBe(true)
    const above = await page.evaluate(() => {
      const line = [...document.querySelectorAll(".cm-line.ruled")].find(one =>
        one.textContent?.startsWith("r = r"),
      )
      return line?.previousElementSibling?.querySelector(".katex") !== null
    })
    expect(above).toBe(true)
    await page.reload()
    await formulas().first().waitFor()
    await page.getByRole("button", { name: "put the equations away" }).click()
    await expect.poll(() => formulas().count()).toBe(0)
    await page.reload()
    await page.waitForSelector(".cm-line.ruled")
    await page.waitForTimeout(500)
    expect(await formulas().count()).toBe(0)
  })
  it("do not stick out of a narrow screen, and are printed", async () => {
    await page.setViewportSize({ width: 390, height: 844 })
    await page.getByRole("button", { name: "lines as equations" }).click()
    await formulas().first().waitFor()
    const wide = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)
    expect(wide).toBeLessThanOrEqual(0)
    await page.emulateMedia({ media: "print" })
    expect(await formulas().first().isVisible()).toBe(true)
  })
})
