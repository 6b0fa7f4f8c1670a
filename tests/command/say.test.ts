import { describe, expect, it } from "vitest"
import { shown } from "../../src/command/say.ts"

describe("what a stranger wrote, on a terminal", () => {
  it("steers nothing: control signs and signs that turn the text round are shown as their escapes", () => {
    expect(shown("a\u001b[2K\u001b]0;owned\u0007\u009b\r\u202eb")).toBe(
      String.raw`a\u001b[2K\u001b]0;owned\u0007\u009b\u000d\u202eb`,
    )
  })
  it("keeps tabs, lines and every letter", () => {
    const text = "Zoë\t“ñ”\n👩‍🔬 مرحبا"
    expect(shown(text)).toBe(text)
  })
  it("is the same text in JSON", () => {
    const name = "a\u009b\u202eb\u001b"
    expect(JSON.parse(shown(JSON.stringify(name)))).toBe(name)
  })
})
