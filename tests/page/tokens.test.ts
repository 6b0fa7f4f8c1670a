import { readFileSync } from "node:fs"
import { describe, expect, it } from "vitest"

const css = readFileSync("src/page/tokens.css", "utf8")

/** Declarations of the blocks whose selector ends so. */
function inks(selector: string): Record<string, string> {
  const found: Record<string, string> = {}
  for (const [, head, body] of css.matchAll(/([^{}]+)\{([^{}]*)\}/g))
    if (head?.trim().endsWith(selector))
      for (const [, name, value] of (body ?? "").matchAll(/--([a-z-]+):\s*(#[0-9a-f]{6,8});/g))
        if (name && value) found[name] = value
  return found
}

const light = inks(':root[data-ink="light"]')
const dark = inks(':root[data-ink="dark"]')
const asked = inks(':root:not([data-ink="light"])')

/** Relative luminance and contrast after WCAG 2.2, section 8 (definitions). */
function luminance(hex: string): number {
  const [r, g, b] = [1, 3, 5].map(i => {
    const c = Number.parseInt(hex.slice(i, i + 2), 16) / 255
    return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4
  })
  return 0.2126 * r! + 0.7152 * g! + 0.0722 * b!
}
function contrast(a: string, b: string): number {
  const [low, high] = [luminance(a), luminance(b)].sort((x, y) => x - y)
  return (high! + 0.05) / (low! + 0.05)
}

const grounds = ["paper", "paper-raised", "paper-sunk", "plate", "plate-raised"]
const texts = [
  "ink",
  "ink-grey",
  "accent",
  ...Object.keys(light).filter(name => /^(code|verdict)-/.test(name)),
  "q-position",
  "q-velocity",
  "q-momentum",
  "q-force",
  "q-net-force",
  "q-reference",
  "q-energy",
]
const lines = ["ink-faint", "blank-rule", "q-ghost", "scene-ground"]

describe("inks", () => {
  it("the contrast formula gives WCAG's own extremes", () => {
    expect(contrast("#000000", "#ffffff")).toBeCloseTo(21, 6)
    expect(contrast("#777777", "#ffffff")).toBeCloseTo(4.48, 2)
  })
  it("the two dark lists are the same", () => expect(asked).toEqual(dark))
  it("dark names every ink that light names", () =>
    expect(Object.keys(dark).sort()).toEqual(Object.keys(light).sort()))
  describe.each([
    ["light", light],
    ["dark", dark],
  ])("%s", (_name, list) => {
    it.each(texts)("%s can be read on every ground (4.5)", name => {
      for (const ground of grounds)
        expect(contrast(list[name]!, list[ground]!), ground).toBeGreaterThanOrEqual(4.5)
    })
    it.each(lines)("%s can be seen as a line (3)", name => {
      for (const ground of ["paper", "plate"])
        expect(contrast(list[name]!, list[ground]!), ground).toBeGreaterThanOrEqual(3)
    })
    it("writing stays readable on the wash of a blank", () => {
      for (const name of [
        "code-ink",
        "code-comment",
        "code-number",
        "code-string",
        "code-type",
        "code-word",
        "ink-grey",
      ])
        expect(contrast(list[name]!, list["blank-wash"]!), name).toBeGreaterThanOrEqual(4.5)
    })
  })
})
