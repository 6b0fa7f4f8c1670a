import { readdirSync } from "node:fs"
import type { Browser } from "playwright-core"
import { afterAll, beforeAll, describe, expect, it } from "vitest"
import { launchChromium } from "../support/chromium.ts"
import { answerFile, shipped } from "../support/class.ts"
import { publishedSite, type Site } from "./fixtures/site.ts"

const ids = readdirSync("worksheets")
  .filter(name => name.endsWith(".md"))
  .map(name => name.slice(0, -3))

let browser: Browser
let site: Site
beforeAll(async () => {
  site = await publishedSite(...ids.map(id => `worksheets/${id}.md`))
  browser = await launchChromium()
}, 240_000)
afterAll(async () => {
  await browser?.close()
  site?.close()
})

/** Opens a sheet, opens an answer file in it, and reads what the margin says of each check. */
async function verdicts(id: string, answers: Readonly<Record<string, string>>): Promise<string[]> {
  const context = await browser.newContext({ viewport: { width: 1440, height: 900 } })
  const page = await context.newPage()
  const faults: string[] = []
  page.on("pageerror", error => faults.push(error.message))
  page.on("console", message => message.type() === "error" && faults.push(message.text()))
  await page.goto(`${site.address}#${id}`)
  await page.waitForSelector(".cm-line.ruled, .gap-empty")
  const text = answerFile(shipped(id), 1, answers)
  await page
    .locator("input[type=file]")
    .setInputFiles({ name: `${id}.json`, mimeType: "application/json", buffer: Buffer.from(text) })
  const wanted = shipped(id).sheet.checks.length
  const found = await page.waitForFunction(
    n => {
      const marks = document.querySelectorAll(".note:not(.note-problem):not(.note-stale) .note-verdict")
      return marks.length >= n ? [...marks].map(mark => mark.textContent ?? "") : null
    },
    wanted,
    { timeout: 60_000 },
  )
  const said = (await found.jsonValue()) ?? []
  await context.close()
  expect(faults).toEqual([])
  return said
}

describe("a published course in Chromium", () => {
  it.each(ids)(
    "%s: the author's answers meet every check on the page",
    async id => {
      const { sheet, answers } = shipped(id)
      expect(await verdicts(id, answers)).toEqual(sheet.checks.map(() => "met"))
    },
    120_000,
  )
  it("a wrong answer does not: the weight turned round", async () => {
    const { answers } = shipped("lamp-key")
    const turned = { ...answers, update: answers.update!.replace("p + Fnet", "p - Fnet") }
    expect(turned.update).not.toBe(answers.update)
    expect(await verdicts("lamp-key", turned)).toContain("not met")
  }, 120_000)
  it("asked for nothing that the folder does not hold", () => expect(site.missing).toEqual([]))
})
