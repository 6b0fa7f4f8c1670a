import type { Browser, Page } from "playwright-core"
import { afterAll, beforeAll, describe, expect, it } from "vitest"
import { launchChromium } from "../../support/chromium.ts"
import { serveFixture } from "../bench-fixture/serve.ts"

let browser: Browser
let served: Awaited<ReturnType<typeof serveFixture>>

beforeAll(async () => {
  ;[browser, served] = await Promise.all([launchChromium(), serveFixture()])
})

afterAll(async () => {
  await browser?.close()
  await served?.close()
})

async function on(name: string, act: (page: Page) => Promise<void>): Promise<void> {
  const page = await browser.newPage({ viewport: { width: 760, height: 1000 } })
  const errors: string[] = []
  page.on("pageerror", error => errors.push(error.message))
  try {
    await page.goto(`${served.url}?case=${name}`)
    await page.waitForSelector(".bn-picture")
    await act(page)
    expect(errors).toEqual([])
  } finally {
    await page.close()
  }
}

const picture = (page: Page) => page.locator(".bn-picture")
const label = async (page: Page) => (await picture(page).getAttribute("aria-label")) ?? ""
const way = (page: Page) => page.locator(".bn-way").first().getAttribute("d")
const view = (page: Page, name: string) => page.getByRole("button", { name, exact: true })

describe("the picture in space", () => {
  it("is what a scene begins with that asks for it, and is turned by keys", () =>
    on("swing", async page => {
      expect(await view(page, "in space").getAttribute("aria-pressed")).toBe("true")
      expect(await label(page)).toContain("seen from 30° to the right, 20° above the horizontal")
      const before = await way(page)
      await picture(page).press("ArrowLeft")
      await page.waitForFunction(d => document.querySelector(".bn-way")?.getAttribute("d") !== d, before)
      expect(await label(page)).toContain("seen from 40° to the right")
      await picture(page).press("ArrowDown")
      await page.waitForFunction(() =>
        document.querySelector(".bn-picture")?.getAttribute("aria-label")?.includes("30° above"),
      )
    }))

  it("is turned by dragging, and does not slide away", () =>
    on("swing", async page => {
      const box = await picture(page).boundingBox()
      if (!box) throw new Error("no picture")
      await page.mouse.move(box.x + 200, box.y + 150)
      await page.mouse.down()
      await page.mouse.move(box.x + 100, box.y + 150, { steps: 5 })
      await page.mouse.up()
      await page.waitForFunction(() =>
        document.querySelector(".bn-picture")?.getAttribute("aria-label")?.includes("70° to the right"),
      )
    }))

  it("is one of three views of any motion that leaves the plane, each reached by keyboard", () =>
    on("helix", async page => {
      expect(await view(page, "from the side").getAttribute("aria-pressed")).toBe("true")
      const side = await way(page)
      await view(page, "in space").press("Enter")
      await page.waitForSelector(".bn-room-grid")
      expect(await way(page)).not.toBe(side)
      await view(page, "from above").press("Enter")
      await page.waitForFunction(() =>
        document.querySelector(".bn-picture")?.getAttribute("aria-label")?.includes("seen from above"),
      )
      await view(page, "from the side").press("Enter")
      await page.waitForFunction(() => document.querySelector(".bn-room-grid") === null)
      expect(await way(page)).toBe(side)
    }))

  it("is not offered for a motion in a plane", () =>
    on("projectile", async page => {
      expect(await view(page, "in space").count()).toBe(0)
    }))

  it("hangs a plumb line from the body where it is recorded, to the floor", () =>
    on("swing", async page => {
      const foot = page.locator(".bn-room-foot")
      const before = await foot.getAttribute("cx")
      await page.getByRole("slider", { name: "instant shown" }).press("PageDown")
      await page.getByRole("slider", { name: "instant shown" }).press("End")
      await page.waitForFunction(
        x => document.querySelector(".bn-room-foot")?.getAttribute("cx") !== x,
        before,
      )
    }))
})
