import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs"
import { createRequire } from "node:module"
import { tmpdir } from "node:os"
import { join } from "node:path"
import { pathToFileURL } from "node:url"
import type { Browser, Page } from "playwright-core"
import { afterAll, beforeAll, describe, expect, it } from "vitest"
import { pageName } from "../../src/report/file-name.ts"
import { launchChromium } from "../support/chromium.ts"
import { filesOf, marked, refusedFile } from "../support/marked.ts"

const axe = readFileSync(createRequire(import.meta.url).resolve("axe-core"), "utf8")
const tokens = readFileSync("src/page/tokens.css", "utf8")
const folder = mkdtempSync(join(tmpdir(), "deltasheet-report-"))
let browser: Browser
let report: string
let own: string

beforeAll(async () => {
  const nasty = '</script><img src="https://deltasheet.example/x.png" onerror="document.title=1">\u202e'
  const files = await filesOf(
    [
      marked(1),
      marked(2, { verdicts: { follows: "not met", impulse: "not met" }, slip: "mass-missing", pull: 4 }),
      marked(3, {
        name: nasty,
        verdicts: { follows: "not met", heavier: "not met" },
        message: `The motion leaves. ${nasty}`,
        blanks: { update: `${nasty}\n${"r = r + p / mass * dt // ".repeat(120)}`, formula: "" },
        questions: { heavier: "heavy", "own-words": nasty },
      }),
      marked(4, { verdicts: { impulse: "could not run", follows: "could not run" } }),
      refusedFile("005.json"),
    ],
    { styles: tokens, smallStyles: tokens },
  )
  report = join(folder, "report.html")
  own = join(folder, "own.html")
  writeFileSync(report, files.get("report.html")!)
  writeFileSync(own, files.get(pageName({ file: "003.json", student: { id: "hs3", name: nasty } }))!)
  browser = await launchChromium()
})
afterAll(async () => {
  await browser?.close()
  rmSync(folder, { recursive: true, force: true })
})

interface Look {
  readonly width?: number
  readonly dark?: boolean
}

/** Opens a file as a teacher does, from the disk; gathers what was asked of the network and what went wrong. */
async function withPage<T>(
  file: string,
  { width = 1024, dark = false }: Look,
  use: (page: Page) => Promise<T>,
): Promise<T> {
  const context = await browser.newContext({
    viewport: { width, height: 800 },
    colorScheme: dark ? "dark" : "light",
    bypassCSP: false,
  })
  const page = await context.newPage()
  const asked: string[] = []
  const faults: string[] = []
  page.on("request", request => asked.push(request.url()))
  page.on("pageerror", error => faults.push(error.message))
  page.on("console", message => faults.push(message.text()))
  try {
    const address = pathToFileURL(file).href
    await page.goto(address)
    const result = await use(page)
    expect(asked).toEqual([address])
    expect(faults).toEqual([])
    return result
  } finally {
    await context.close()
  }
}

describe.each([
  ["the teacher's page", () => report],
  ["a student's page", () => own],
])("%s, opened from the disk", (_, file) => {
  it("asks for nothing, runs nothing and breaks no rule of its own policy", async () => {
    const { title, scripts, pictures } = await withPage(file(), {}, page =>
      page.evaluate(() => ({
        title: document.title,
        scripts: document.scripts.length,
        pictures: document.images.length,
      })),
    )
    expect(title).toContain("The dropped lamp key")
    expect([scripts, pictures]).toEqual([0, 0])
  })
  it.each([390, 1024, 1440])("fits a window of %i px", async width => {
    const over = await withPage(file(), { width }, page =>
      page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth),
    )
    expect(over).toBe(0)
  })
  it.each([
    ["light", false, 1024],
    ["dark", true, 1024],
    ["narrow", false, 390],
  ])("holds what WCAG 2.2 AA asks for as far as axe-core sees (%s)", async (_look, dark, width) => {
    const violations = await withPage(file(), { dark, width }, async page => {
      // the policy forbids scripts that are put into the page; the checker is run from outside of it
      await page.evaluate(axe)
      return page.evaluate(async () => {
        const checker = (globalThis as unknown as { axe: typeof import("axe-core") }).axe
        const { violations } = await checker.run({
          runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"],
        })
        return violations.map(
          ({ id, nodes }) => `${id}: ${nodes.map(node => node.html.slice(0, 160)).join(" | ")}`,
        )
      })
    })
    expect(violations).toEqual([])
  })
})

describe("the teacher's page", () => {
  it("would be found at fault: a picture without words is seen by the checker", async () => {
    const violations = await withPage(report, {}, async page => {
      await page.evaluate(axe)
      return page.evaluate(async () => {
        document.querySelector("figure.overlay svg")?.removeAttribute("aria-label")
        const checker = (globalThis as unknown as { axe: typeof import("axe-core") }).axe
        return (await checker.run()).violations.map(({ id }) => id)
      })
    })
    expect(violations).toContain("svg-img-alt")
  })
  it("leads from a name to the student's work and back by keyboard", async () => {
    const target = await withPage(report, {}, async page => {
      await page.locator(".register tbody a", { hasText: "Student 2" }).focus()
      await page.keyboard.press("Enter")
      return page.evaluate(() => document.querySelector(":target")?.querySelector("h3")?.textContent)
    })
    expect(target).toContain("Student 2")
  })
  it("prints: light ink whatever the screen has, listings whole, nothing cut off", async () => {
    await withPage(report, { dark: true, width: 700 }, async page => {
      await page.emulateMedia({ media: "print", colorScheme: "dark" })
      const { cut, nav, ink } = await page.evaluate(() => ({
        cut: [...document.querySelectorAll("pre, .scroll, .wrote")].filter(
          part => part.scrollHeight > part.clientHeight + 2 && getComputedStyle(part).overflowY !== "visible",
        ).length,
        nav: getComputedStyle(document.querySelector("nav")!).display,
        ink: getComputedStyle(document.querySelector("h1")!).color,
      }))
      expect([cut, nav, ink]).toEqual([0, "none", "rgb(30, 35, 40)"])
      expect((await page.pdf({ format: "A4" })).length).toBeGreaterThan(10_000)
    })
  })
})
