import { readFileSync } from "node:fs"
import type { Browser, BrowserContext, Page } from "playwright-core"
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from "vitest"
import { readAnswerFile } from "../../src/worksheet/answers.ts"
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
})
afterAll(async () => {
  await browser?.close()
  site?.close()
})
beforeEach(async () => {
  context = await browser.newContext({ viewport: { width: 1440, height: 900 } })
  context.setDefaultTimeout(8_000)
  page = await context.newPage()
  faults = []
  page.on("pageerror", error => faults.push(error.message))
  page.on("console", message => message.type() === "error" && faults.push(message.text()))
  await open()
})
afterEach(async () => {
  await context.close()
  expect(faults).toEqual([])
  expect(site.missing).toEqual([])
})

async function open(on = page): Promise<void> {
  await on.goto(`${site.address}#bell-buoy`)
  await on.waitForSelector(".cm-line.ruled")
}

const listing = (on = page): Promise<string> =>
  on.locator(".cm-line").evaluateAll(lines => lines.map(line => line.textContent ?? "").join("\n"))

/** Puts the caret into the block blank and takes out what is there. */
async function emptyUpdate(): Promise<void> {
  await page.locator(".cm-line.ruled").first().click()
  await page.keyboard.press("End")
  await page.keyboard.press("Shift+Home")
  await page.keyboard.press("Shift+Home")
  await page.keyboard.press("Backspace")
}

async function fillAll(): Promise<void> {
  await page.locator(".gap-empty").click()
  await page.keyboard.insertText("vec3(0, lift, 0)")
  await emptyUpdate()
  await page.keyboard.insertText("p = p + Fnet * dt\nr = r + (p / mass) * dt")
}

const state = (): Promise<string | null> => page.locator("#bench").textContent()

describe("given lines", () => {
  it("cannot be typed in, deleted, cut or pasted over; the caret passes through them", async () => {
    const before = await listing()
    await page.locator(".cm-line.given").first().click()
    await page.keyboard.type("let x = 1")
    await page.keyboard.press("Backspace")
    await page.keyboard.press("Control+x")
    await page.keyboard.press("Alt+ArrowDown")
    expect(await listing()).toBe(before)
    expect(await page.locator(".listing-keys").textContent()).toContain("given lines stay as they are")
  })
  it("selecting everything and typing changes blanks only; undo brings the student's text back", async () => {
    await fillAll()
    const before = await listing()
    await page.keyboard.press("Control+a")
    await page.keyboard.type("1")
    const after = await listing()
    expect(after).toContain("const Fnet: Vec3<'N'> = 1\n")
    expect(after).toContain("record(t, { buoy:")
    expect(after).not.toContain("p / mass")
    await page.keyboard.press("Control+z")
    expect(await listing()).toBe(before)
    for (let i = 0; i < 8; i++) await page.keyboard.press("Control+z")
    expect(await listing()).toContain("record(t, { buoy:")
    expect(await listing()).toContain("// p = ...")
  })
  it("Tab leaves the listing, so that the keyboard is not caught", async () => {
    await page.locator(".cm-line.ruled").first().click()
    await page.keyboard.press("Tab")
    expect(await page.evaluate(() => document.activeElement?.closest(".cm-editor"))).toBeNull()
  })
})

describe("the run loop in the browser", () => {
  it("what is typed moves, is judged, and the verdict stands beside its blank", async () => {
    await fillAll()
    const note = page.locator(".note-met")
    await note.waitFor({ timeout: 20_000 })
    expect(await note.textContent()).toMatch(/update\s*met/)
    expect(await page.locator(".student-points").textContent()).toBe("4 of 5 points so far")
    const [noteBox, blankBox] = await Promise.all([
      note.boundingBox(),
      page.locator(".prompt").last().boundingBox(),
    ])
    expect(Math.abs(noteBox!.y - blankBox!.y)).toBeLessThan(30)
    expect(noteBox!.x).toBeGreaterThan(blankBox!.x + blankBox!.width)
  })
  it("a fault is underlined at the student's own line and column, with words beside it", async () => {
    await fillAll()
    await page.keyboard.type(" +")
    await page.keyboard.press("Control+Enter")
    const note = page.locator(".note-problem")
    await note.waitFor({ timeout: 20_000 })
    const lines = await page.locator(".cm-line").evaluateAll(all => all.map(line => line.textContent ?? ""))
    const at = Number(/Line (\d+)/.exec((await note.textContent()) ?? "")?.[1])
    expect(lines.slice(at - 2, at + 1).join("\n")).toContain("r = r + (p / mass) * dt +")
    expect(await page.locator(".wrong").count()).toBeGreaterThan(0)
  })
  it("a fault of mechanics is named at its operator", async () => {
    await page.locator(".gap-empty").click()
    await page.keyboard.type("vec3(0, lift, 0) + mass")
    await page.keyboard.press("Control+Enter")
    await page.locator(".note-problem").waitFor({ timeout: 20_000 })
    const wrong = (await page.locator(".wrong").allInnerTexts()).join("")
    expect("vec3(0, lift, 0) + mass").toContain(wrong)
    expect(wrong).toContain("+")
  })
  it("an endless loop leaves the page alive and is named; stop works while it runs", async () => {
    await page.locator(".gap-empty").click()
    await page.keyboard.insertText("vec3(0, lift, 0)")
    await emptyUpdate()
    await page.keyboard.insertText("while (true) { p = p + Fnet * 0 }")
    await page.keyboard.press("Control+Enter")
    // the page answers while the worker turns
    const started = await page.evaluate(
      () =>
        new Promise<number>(done => {
          let frames = 0
          const count = (): void => {
            if (++frames === 10) done(frames)
            else requestAnimationFrame(count)
          }
          requestAnimationFrame(count)
        }),
    )
    expect(started).toBe(10)
    await page.waitForFunction(
      () => document.querySelector("#bench")?.textContent?.includes("never ends"),
      null,
      {
        timeout: 30_000,
      },
    )
    expect(await page.locator(".note-problem").textContent()).toMatch(/^\s*Line \d+/)
    await emptyUpdate()
    await page.keyboard.insertText("p = p + Fnet * dt\nr = r + (p / mass) * dt")
    await page.locator(".note-met").waitFor({ timeout: 20_000 })
  })
})

describe("nothing typed is lost", () => {
  it("a reload finds text, answers and student as they were", async () => {
    await fillAll()
    await page.locator("#student-name").fill("Mara Quill")
    await page.locator(".number-field").fill("3,0")
    await page.locator("textarea").fill("It has momentum.")
    const before = await listing()
    await page.reload()
    await page.waitForSelector(".cm-line.ruled")
    expect(await listing()).toBe(before)
    expect(await page.locator("#student-name").inputValue()).toBe("Mara Quill")
    expect(await page.locator(".number-field").inputValue()).toBe("3,0")
    expect(await page.locator("textarea").inputValue()).toBe("It has momentum.")
    await page.locator(".note-met").waitFor({ timeout: 20_000 })
  })
  it("another window of the same browser follows", async () => {
    const second = await context.newPage()
    await open(second)
    await page.bringToFront()
    await fillAll()
    await page.locator("#student-name").click()
    await second.waitForFunction(() =>
      document.querySelector(".cm-content")?.textContent?.includes("p / mass"),
    )
    expect(await listing(second)).toBe(await listing())
    await second.close()
  })
  it("a blank started again can be brought back", async () => {
    await fillAll()
    await page.getByRole("button", { name: "start update again" }).click()
    expect(await listing()).toContain("// p = ...")
    await page.getByText("earlier texts of update").click()
    await page.getByRole("button", { name: "bring back" }).click()
    expect(await listing()).toContain("r = r + (p / mass) * dt")
  })
  it("the answer file goes out, is one, and comes in again with a way back", async () => {
    await fillAll()
    await page.getByRole("button", { name: "Download answer file" }).click()
    expect(await page.locator(".hand-in-said").textContent()).toContain("name and number")
    await page.locator("#student-name").fill("Mara Quill")
    await page.locator("#student-id").fill("1042")
    await page.locator(".number-field").fill("3")
    const [download] = await Promise.all([
      page.waitForEvent("download"),
      page.getByRole("button", { name: "Download answer file" }).click(),
    ])
    expect(download.suggestedFilename()).toBe("bell-buoy-1042.json")
    const text = readFileSync((await download.path())!, "utf8")
    const read = readAnswerFile(text)
    expect(read.ok && read.answers).toMatchObject({
      worksheet: { id: "bell-buoy", version: 1 },
      student: { id: "1042", name: "Mara Quill" },
      answers: { net: "vec3(0, lift, 0)" },
      questions: { speed: 3, why: null },
    })
    const before = await listing()
    const changed = text.replace("vec3(0, lift, 0)", "vec3(0, lift, 1)")
    const give = (name: string, content: string) =>
      page.locator("input[type=file]").setInputFiles({
        name,
        mimeType: "application/json",
        buffer: Buffer.from(content),
      })
    await give("a.json", changed)
    await page.getByText("Opened the answers of Mara Quill").waitFor()
    expect(await listing()).toContain("vec3(0, lift, 1)")
    await page.getByRole("button", { name: "Back to what was here" }).click()
    expect(await listing()).toBe(before)
    await give("b.json", "{ half")
    await page.getByText("it is not JSON").waitFor()
    await give("c.json", text.replace('"bell-buoy"', '"fender"'))
    await page.getByText("belongs to the worksheet “fender”").waitFor()
    await give("d.json", " ".repeat(3_000_000))
    await page.getByText("at most 2 MB").waitFor()
    expect(await listing()).toBe(before)
  })
})

describe("the page", () => {
  it("has no fault that an accessibility checker finds: shelf, sheet, a fault beside a line, narrow", async () => {
    const axe = readFileSync("node_modules/axe-core/axe.min.js", "utf8")
    const found = async (): Promise<string[]> => {
      await page.evaluate(axe)
      // what appears fades in; a colour read half-way is nobody's
      await page.waitForFunction(() =>
        document.getAnimations().every(({ playState }) => playState === "finished"),
      )
      return page.evaluate(async () => {
        const { axe } = window as unknown as { axe: { run(): Promise<{ violations: { id: string }[] }> } }
        return (await axe.run()).violations.map(violation => violation.id)
      })
    }
    expect(await found()).toEqual([])
    await fillAll()
    await page.keyboard.insertText(" + mass")
    await page.keyboard.press("Control+Enter")
    await page.locator(".note-problem").waitFor({ timeout: 20_000 })
    expect(await page.locator("#bench").textContent()).not.toContain("recorded until then")
    expect(await found()).toEqual([])
    await page.setViewportSize({ width: 390, height: 844 })
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(390)
    expect(await found()).toEqual([])
    await page.goto(`${site.address}#/`)
    await page.locator(".card").waitFor()
    expect(await found()).toEqual([])
    // the checker does find what is wrong
    await page.evaluate(() => document.querySelector("main")!.append(document.createElement("button")))
    expect(await found()).toEqual(["button-name"])
  })
  it("asks nobody but the server it came from", async () => {
    const hosts = new Set<string>()
    page.on("request", request => hosts.add(new URL(request.url()).origin))
    await page.reload()
    await fillAll()
    await page.locator(".note-met").waitFor({ timeout: 20_000 })
    hosts.delete("null")
    expect([...hosts]).toEqual([new URL(site.address).origin])
  })
  it("a worksheet that is not there, and a shelf: each says what to do", async () => {
    await page.goto(`${site.address}#no-such`)
    await page.getByText("There is no worksheet “no-such” here.").waitFor()
    await page.getByText("To the shelf").click()
    await page.getByText("The bell buoy").waitFor()
    ;(site.missing as string[]).length = 0
    faults = faults.filter(fault => !fault.includes("404"))
  })
  it("tells how long it is from the last keystroke to the first new picture", async () => {
    await page.locator(".gap-empty").click()
    await page.keyboard.insertText("vec3(0, lift, 0)")
    await emptyUpdate()
    await page.keyboard.insertText("p = p + Fnet * dt * 1\nr = r + (p / mass) * dt")
    await page.locator(".note").first().waitFor({ timeout: 20_000 })
    await page.keyboard.press("ArrowUp")
    await page.keyboard.press("End")
    await page.evaluate(() => {
      const times: number[] = []
      Object.assign(window, { times })
      let pressed = 0
      addEventListener("keydown", () => (pressed = performance.now()), true)
      new MutationObserver(() => {
        if (pressed === 0) return
        const from = pressed
        pressed = 0
        requestAnimationFrame(() => times.push(performance.now() - from))
      }).observe(document.querySelector("#bench")!, {
        subtree: true,
        attributes: true,
        attributeFilter: ["d"],
      })
    })
    for (let i = 0; i < 15; i++) {
      await page.keyboard.type(i % 2 === 0 ? "2" : "1")
      await page.waitForTimeout(400)
      await page.keyboard.press("Shift+ArrowLeft")
      await page.waitForTimeout(50)
    }
    const times = await page.evaluate(() => (window as unknown as { times: number[] }).times)
    times.sort((a, b) => a - b)
    const median = times[Math.floor(times.length / 2)]!
    console.log(
      `keystroke to picture, 1,000 steps: median ${median.toFixed(0)} ms, longest ${times.at(-1)!.toFixed(0)} ms, n ${times.length}`,
    )
    expect(times.length).toBeGreaterThan(5)
    expect(await state()).toContain("run")
  })
})

describe("a library word in a listing", () => {
  it("is explained by key at the caret, with the way to its page", async () => {
    const word = page.locator(".cm-line", { hasText: "vec3(" }).first()
    await word.click()
    await page.keyboard.press("Home")
    // names of the cell are explained too, but only the library's have a page
    for (let i = 0; i < 60 && (await page.locator(".library-words a").count()) === 0; i++) {
      await page.keyboard.press("Alt+h")
      await page.waitForTimeout(150)
      if ((await page.locator(".library-words a").count()) === 0) await page.keyboard.press("ArrowRight")
    }
    expect(await page.locator(".library-words").textContent()).toMatch(/vector/)
    const href = await page.locator(".library-words a").getAttribute("href")
    expect(href).toMatch(/^reference\/index\.html#[vV]ec3$/)
    expect((await page.request.get(new URL("reference/index.html", site.address).href)).ok()).toBe(true)
  })
})
