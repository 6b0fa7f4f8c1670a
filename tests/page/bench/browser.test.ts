import { readFileSync } from "node:fs"
import { fileURLToPath } from "node:url"
import type { Browser, BrowserContextOptions, Page } from "playwright-core"
import { afterAll, beforeAll, describe, expect, it } from "vitest"
import { launchChromium } from "../../support/chromium.ts"
import { serveFixture } from "../bench-fixture/serve.ts"

const axe = fileURLToPath(new URL("../../../node_modules/axe-core/axe.min.js", import.meta.url))
let browser: Browser
let served: Awaited<ReturnType<typeof serveFixture>>

beforeAll(async () => {
  ;[browser, served] = await Promise.all([launchChromium(), serveFixture()])
})

afterAll(async () => {
  await browser?.close()
  await served?.close()
})

/** Opens a state of the bench, does something there, and closes it; any error of the page fails the test. */
async function on<T>(
  name: string,
  act: (page: Page) => Promise<T>,
  options: BrowserContextOptions = {},
): Promise<T> {
  const context = await browser.newContext({ viewport: { width: 760, height: 1000 }, ...options })
  const page = await context.newPage()
  const errors: string[] = []
  page.on("pageerror", error => errors.push(error.message))
  try {
    await page.goto(`${served.url}?case=${name}`)
    await page.waitForSelector(".bn-bench")
    const result = await act(page)
    expect(errors).toEqual([])
    return result
  } finally {
    await context.close()
  }
}

/** What stands there once the page has drawn what was asked of it. */
async function text(page: Page, place: string): Promise<string> {
  await drawn(page)
  return ((await page.locator(place).first().textContent()) ?? "").replaceAll("\u00a0", " ")
}

const drawn = (page: Page) =>
  page.evaluate(() => new Promise(done => requestAnimationFrame(() => setTimeout(done))))
const instant = async (page: Page) => Number.parseFloat(await text(page, ".bn-instant"))
const ruler = (page: Page) => page.getByRole("slider", { name: "instant shown" })
const open = (page: Page, drawer: string) => page.locator(`.bn-drawer-${drawer} summary`).click()
const words = (page: Page) => text(page, ".bn-words p")

describe("the time bar", () => {
  it("is worked by keys: rows, marks, ends, play, speed and loop", () =>
    on("bounce", async page => {
      await ruler(page).focus()
      await page.keyboard.press("Home")
      expect(await instant(page)).toBeCloseTo(0.001, 9)
      await page.keyboard.press("ArrowRight")
      await page.keyboard.press("ArrowRight")
      await page.keyboard.press("ArrowLeft")
      expect(await instant(page)).toBeCloseTo(0.002, 9)
      await page.keyboard.press("Shift+ArrowRight")
      expect(await text(page, ".bn-here")).toContain("deck begins to act on buoy")
      expect(await ruler(page).getAttribute("aria-valuetext")).toContain("deck begins to act")
      await page.keyboard.press("End")
      expect(await instant(page)).toBe(3)
      await page.keyboard.press("-")
      await drawn(page)
      expect(await page.getByRole("radio", { name: "1/2 times real time" }).isChecked()).toBe(true)
      await page.keyboard.press("l")
      expect(await page.getByRole("button", { name: "loop" }).getAttribute("aria-pressed")).toBe("true")
      await page.keyboard.press("Home")
      await page.keyboard.press("Space")
      await page.waitForFunction(
        () => Number.parseFloat(document.querySelector(".bn-instant")?.textContent ?? "0") > 0.1,
      )
      await page.keyboard.press("Space")
      const stopped = await instant(page)
      await page.waitForTimeout(120)
      expect(await instant(page)).toBe(stopped)
    }))

  it("plays at the speed chosen and stops at the end", () =>
    on("bounce", async page => {
      await page.getByRole("radio", { name: "8 times real time", exact: true }).press("Space")
      const begun = Date.now()
      await page.getByRole("button", { name: "play" }).click()
      await page.waitForSelector("button:text-is('play')")
      expect(await instant(page)).toBe(3)
      expect(Date.now() - begun).toBeGreaterThan((3 / 8) * 1000 * 0.9)
    }))

  it("follows the pointer, and so do picture and plot", () =>
    on("bounce", async page => {
      const box = await ruler(page).boundingBox()
      if (!box) throw new Error("no ruler")
      const place = () => page.locator(".bn-body").locator("xpath=..").getAttribute("transform")
      const before = await place()
      await page.mouse.click(box.x + box.width / 2, box.y + 20)
      expect(Math.abs((await instant(page)) - 1.5)).toBeLessThan(0.01)
      expect(await place()).not.toBe(before)
      await page.waitForSelector(".bn-plot-hair path", { state: "attached" })
      const plot = await page.locator(".bn-plot-field").boundingBox()
      if (!plot) throw new Error("no plot")
      await page.mouse.click(plot.x + 54 + (plot.width - 68) * 0.25, plot.y + 60)
      expect(Math.abs((await instant(page)) - 0.75)).toBeLessThan(0.02)
    }))
})

it("each control is reached by the tab key", () =>
  on("bounce", async page => {
    await open(page, "values")
    // the drawer's own control comes with its next frame
    await page.getByRole("button", { name: "add the instant shown" }).waitFor()
    const controls =
      "button:not(:disabled), select, summary, [tabindex], input:not([type=radio]), input[type=radio]:checked"
    const count = await page.locator(controls).count()
    const reached: number[] = []
    for (let k = 0; k <= count; k++) {
      await page.keyboard.press("Tab")
      reached.push(
        await page.evaluate(
          all => [...document.querySelectorAll(all)].indexOf(document.activeElement as Element),
          controls,
        ),
      )
    }
    expect(reached.filter(k => k >= 0).sort((a, b) => a - b)).toEqual(
      Array.from({ length: count }, (_, k) => k),
    )
  }))

describe("the picture", () => {
  it("moves and zooms by keys and comes back whole", () =>
    on("projectile", async page => {
      const way = async () => {
        await drawn(page)
        return page.locator(".bn-way").first().getAttribute("d")
      }
      const whole = await way()
      await page.locator(".bn-picture").focus()
      await page.keyboard.press("+")
      const zoomed = await way()
      expect(zoomed).not.toBe(whole)
      await page.keyboard.press("ArrowRight")
      expect(await way()).not.toBe(zoomed)
      await page.keyboard.press("0")
      expect(await way()).toBe(whole)
    }))

  it("shows and hides each quantity from its key", () =>
    on("projectile", async page => {
      await page.waitForSelector(".bn-arrow-force")
      const inScene = async (name: string) => {
        await drawn(page)
        return page.locator(`.bn-picture ${name}`).count()
      }
      for (const [name, mark] of [
        ["velocity", ".bn-arrow-velocity"],
        ["momentum", ".bn-arrow-momentum"],
        ["net force", ".bn-arrow-net"],
      ] as const) {
        expect(await inScene(mark)).toBe(0)
        await page.locator(`.bn-legend-key:has-text("${name}")`).press("Enter")
        expect(await inScene(mark)).toBe(1)
      }
      await page.locator('.bn-legend-key:has-text("reference")').press("Space")
      expect(await inScene(".bn-way-reference")).toBe(0)
      expect(await page.locator(".bn-departure text").innerHTML()).toContain("departs 0.37")
    }))

  it("and the words, books and arrows come from the recording: a corrupted one shows", async () => {
    const look = (name: string) =>
      on(name, async page => {
        const box = await ruler(page).boundingBox()
        if (!box) throw new Error("no ruler")
        await page.mouse.click(box.x + 14 + (box.width - 28) * 0.5, box.y + 20)
        await open(page, "books")
        return {
          dots: await page.locator(".bn-dots").first().getAttribute("d"),
          body: await page.locator(".bn-body").locator("xpath=..").getAttribute("transform"),
          words: await words(page),
          books: await text(page, ".bn-drawer-books p"),
        }
      })
    const [whole, corrupted] = [await look("bounce"), await look("corrupted")]
    expect(corrupted.dots).not.toBe(whole.dots)
    expect(corrupted.body).not.toBe(whole.body)
    expect(corrupted.words).not.toBe(whole.words)
    expect(whole.books).toContain("The books balance")
    expect(corrupted.books).toContain("The books do not balance: between 0.801")
  })
})

describe("parameters", () => {
  it("run again as a slider moves, by keys too, and go back to the sheet", () =>
    on("bounce", async page => {
      const told = await words(page)
      const slider = page.getByRole("slider", { name: "drop height" })
      await slider.focus()
      for (let k = 0; k < 10; k++) await page.keyboard.press("ArrowRight")
      expect(await slider.inputValue()).toBe("1.7")
      expect(await words(page)).toContain("y = 1.70 m")
      await page.getByRole("button", { name: "as on my sheet" }).press("Enter")
      expect(await slider.inputValue()).toBe("1.5")
      expect(await words(page)).toBe(told)
    }))

  it("refuse an impossible value in words and keep what was typed", () =>
    on("bounce", async page => {
      const typed = page.getByRole("textbox", { name: "drop height" })
      await typed.fill("12")
      await typed.press("Enter")
      expect(await typed.inputValue()).toBe("12")
      expect(await typed.getAttribute("aria-invalid")).toBe("true")
      expect(await text(page, "[role=alert]")).toBe(
        "12 is outside; drop height goes from 0.5 m to 3 m. drop height stays at 1.500 m.",
      )
      await typed.fill("2,25")
      await typed.press("Enter")
      expect(await typed.inputValue()).toBe("2.25")
      expect(await page.getByRole("slider", { name: "drop height" }).inputValue()).toBe("2.25")
      expect(await page.getByRole("alert").count()).toBe(0)
    }))

  it("keep the instant shown when a new recording comes", () =>
    on("bounce", async page => {
      await ruler(page).focus()
      await page.keyboard.press("PageUp")
      const before = await instant(page)
      await page.getByRole("slider", { name: "drop height" }).press("ArrowRight")
      expect(await instant(page)).toBe(before)
    }))
})

describe("the picture under fingers", () => {
  const touch = { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true } as const
  it("comes nearer when two spread, and is whole again at a press", () =>
    on(
      "bounce",
      async page => {
        const box = await page.locator(".bn-picture").boundingBox()
        if (!box) throw new Error("no picture")
        const cdp = await page.context().newCDPSession(page)
        const fingers = (apart: number) => [
          { x: box.x + box.width / 2 - apart, y: box.y + box.height / 2, id: 1 },
          { x: box.x + box.width / 2 + apart, y: box.y + box.height / 2, id: 2 },
        ]
        const send = (
          type: "touchStart" | "touchMove" | "touchEnd",
          touchPoints: ReturnType<typeof fingers>,
        ) => cdp.send("Input.dispatchTouchEvent", { type, touchPoints })
        const before = (await page.locator(".bn-body").first().boundingBox())?.width ?? 0
        await send("touchStart", fingers(30))
        for (const apart of [40, 60, 80, 90]) await send("touchMove", fingers(apart))
        await send("touchEnd", [])
        await drawn(page)
        const after = (await page.locator(".bn-body").first().boundingBox())?.width ?? 0
        expect(after / before).toBeCloseTo(3, 0)
        await page.getByRole("button", { name: "whole" }).tap()
        await drawn(page)
        expect((await page.locator(".bn-body").first().boundingBox())?.width).toBeCloseTo(before, 0)
      },
      touch,
    ))
})

it("a rope hangs while its ends are nearer than its length, and is straight when they are not", () =>
  on("moored", async page => {
    await ruler(page).focus()
    await page.keyboard.press("Home")
    await drawn(page)
    expect(await page.locator(".bn-rope").getAttribute("class")).toBe("bn-rope")
    const box = await ruler(page).boundingBox()
    if (!box) throw new Error("no ruler")
    await page.mouse.click(box.x + box.width / 2, box.y + 20)
    await drawn(page)
    expect(await page.locator(".bn-rope").getAttribute("class")).toBe("bn-rope bn-rope-slack")
    expect(await page.locator(".bn-strut").count()).toBe(1)
  }))

describe("drawers", () => {
  it("stay as they were left, also after the page is opened again", () =>
    on("bounce", async page => {
      await open(page, "values")
      await open(page, "plots")
      await page.getByRole("slider", { name: "drop height" }).press("ArrowRight")
      expect(await page.locator(".bn-drawer-values table").count()).toBe(1)
      await page.reload()
      await page.waitForSelector(".bn-bench")
      expect(await page.locator(".bn-drawer-values table").count()).toBe(1)
      expect(await page.locator(".bn-drawer-plots figure").count()).toBe(0)
    }))

  it("take an expression of what is recorded, with its unit, and refuse one that makes no sense in words", () =>
    on("bounce", async page => {
      const field = page.getByRole("combobox", { name: "Plot" })
      await field.fill("buoy.position.y + t")
      await field.press("Enter")
      expect(await text(page, ".bn-add-plot [role=alert]")).toContain("m and s cannot be added")
      await field.fill("magnitude(buoy.momentum)^2 / 4")
      await field.press("Enter")
      expect(await text(page, ".bn-add-plot [role=alert]")).toBe("")
      await page.waitForSelector(".bn-plot >> nth=1 >> svg[aria-label*='m²/s²)']")
      expect(await text(page, ".bn-plot >> nth=1 >> .bn-value")).toContain("kg")
    }))

  it("lay the worksheet's data over a plot, with what is left below", () =>
    on("measured", async page => {
      await page.waitForSelector(".bn-plot-field svg[role=img]")
      expect(
        await page.locator(".bn-plot-field [aria-label=dot], .bn-plot-field g path").count(),
      ).toBeGreaterThan(8)
      expect(await text(page, ".bn-readings")).toContain("camera, y, measured")
      await page.getByRole("button", { name: "what is left, below" }).press("Enter")
      await page.waitForSelector(".bn-plot-residual svg")
      // the invented readings are the motion's own heights and a centimetre
      expect(await text(page, ".bn-plot >> .bn-caption >> nth=0")).toMatch(/root mean square 0\.010 m/)
      await page.getByRole("combobox", { name: "laid over" }).selectOption("no data")
      await page.waitForFunction(() => document.querySelector(".bn-plot-residual") === null)
      expect(await text(page, ".bn-readings")).not.toContain("measured")
    }))

  it("save a plot as CSV, SVG and PNG", () =>
    on("bounce", async page => {
      await page.waitForSelector(".bn-plot-field svg[role=img]")
      for (const [kind, begins] of [
        ["CSV", "t [s],buoy.position.y [m]"],
        ["SVG", "<svg"],
        ["PNG", "\u0089PNG"],
      ] as const) {
        const download = page.waitForEvent("download")
        await page.getByRole("button", { name: `save as ${kind}` }).press("Enter")
        const saved = await download
        expect(saved.suggestedFilename()).toBe(`bounce-buoy.position.y.${kind.toLowerCase()}`)
        const bytes = readFileSync(await saved.path())
        expect(bytes.toString("latin1").startsWith(begins)).toBe(true)
        expect(bytes.length).toBeGreaterThan(2000)
      }
    }))

  it("take the plots and the instants that a reader adds", () =>
    on("bounce", async page => {
      await page.getByRole("combobox", { name: "Plot" }).fill("buoy.position.y")
      await page.getByRole("combobox", { name: "against" }).fill("buoy.momentum.y")
      await page.getByRole("button", { name: "add", exact: true }).press("Enter")
      expect(await page.locator(".bn-plot").count()).toBe(2)
      await page.waitForSelector(".bn-plot >> nth=1 >> svg[aria-label*='against momentum of buoy']")
      await page.getByRole("button", { name: "take this plot away" }).press("Enter")
      expect(await page.locator(".bn-plot").count()).toBe(1)
      await open(page, "values")
      await page.waitForSelector(".bn-values tbody tr")
      const rows = () => page.locator(".bn-values tbody tr").count()
      const before = await rows()
      await ruler(page).press("PageUp")
      await page.getByRole("button", { name: "add the instant shown" }).press("Enter")
      await page.waitForFunction(n => document.querySelectorAll(".bn-values tbody tr").length !== n, before)
      expect(await rows()).toBe(before + 1)
    }))
})

describe("states", () => {
  it("nothing recorded yet: what to do", () =>
    on("empty", async page => {
      expect(await text(page, ".bn-empty")).toContain("Fill the blank “update” in cell bounce")
    }))

  it("a problem: its words, and what was recorded until then", () =>
    on("problem", async page => {
      expect(await text(page, "[role=alert]")).toContain("The loop never ends")
      expect(await page.locator(".bn-body").count()).toBe(1)
    }))

  it("reduced motion: strobe images, and nothing moves until asked", () =>
    on(
      "bounce",
      async page => {
        expect(await page.locator(".bn-strobe").isVisible()).toBe(true)
        const before = await instant(page)
        await page.waitForTimeout(100)
        expect(await instant(page)).toBe(before)
      },
      { reducedMotion: "reduce" },
    ))

  it("paper: strobe picture, plot and words, no keys", () =>
    on("bounce", async page => {
      await page.waitForSelector(".bn-plot-field svg")
      expect(await page.locator(".bn-strobe").isVisible()).toBe(false)
      await page.emulateMedia({ media: "print" })
      expect(await page.locator(".bn-strobe").isVisible()).toBe(true)
      expect(await page.locator(".bn-plot-field svg").first().isVisible()).toBe(true)
      expect(await page.locator(".bn-words p").isVisible()).toBe(true)
      expect(await page.getByRole("button", { name: "play" }).isVisible()).toBe(false)
    }))

  it.each([390, 520, 760])("fit a width of %i px without sideways scrolling", width =>
    on(
      "projectile",
      async page => {
        await open(page, "books")
        await page.waitForSelector(".bn-drawer-books svg")
        expect(await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth)).toBe(0)
      },
      { viewport: { width, height: 800 } },
    ),
  )
})

describe("axe-core finds no violation", () => {
  it.each([
    ["bounce", {}],
    ["projectile", { colorScheme: "dark" }],
    ["slide", { viewport: { width: 390, height: 800 } }],
    ["crowd", {}],
    ["helix", { colorScheme: "dark" }],
    ["swing", {}],
    ["empty", {}],
    ["problem", { colorScheme: "dark" }],
    ["corrupted", {}],
  ] as const)("in state %s", (name, options) =>
    on(
      name,
      async page => {
        if (name !== "empty") for (const drawer of ["books", "values"]) await open(page, drawer)
        if (name === "bounce") {
          await page.getByRole("textbox", { name: "drop height" }).fill("12")
          await page.keyboard.press("Enter")
        }
        if (name !== "empty") await page.waitForSelector(".bn-drawer-plots svg[role=img]")
        await page.addScriptTag({ path: axe })
        const found = await page.evaluate(async () => {
          const runner = (
            window as unknown as {
              axe: {
                run: () => Promise<{
                  violations: { id: string; nodes: { html: string; failureSummary: string }[] }[]
                }>
              }
            }
          ).axe
          const { violations } = await runner.run()
          return violations.map(
            v => `${v.id}: ${v.nodes.map(n => `${n.html} ${n.failureSummary}`).join("; ")}`,
          )
        })
        expect(found).toEqual([])
      },
      options,
    ),
  )
})
