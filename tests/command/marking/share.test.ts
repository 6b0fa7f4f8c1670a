import { describe, expect, it } from "vitest"
import { isOfShare, readShare } from "../../../src/command/marking/share.ts"

describe("a share of a class", () => {
  const files = Array.from({ length: 1000 }, (_, i) => `group ${i % 7}/${i}.json`)
  it("is told by the file's name: each file is of exactly one, and they are about equal", () => {
    const shares = [1, 2, 3, 4].map(k => files.filter(file => isOfShare(file, { k, n: 4 })))
    expect(shares.flat().sort()).toEqual([...files].sort())
    for (const share of shares) expect(share.length).toBeGreaterThan(200)
  })
  it("moves no file when another is added", () => {
    const before = files.filter(file => isOfShare(file, { k: 2, n: 4 }))
    expect(
      [...files, "late.json"].filter(file => isOfShare(file, { k: 2, n: 4 })).slice(0, before.length),
    ).toEqual(before)
  })
  it.each(["0/4", "5/4", "1/0", "2", "1/4/2", "-1/4", "1.5/4", "K/N", "1/99999"])(
    "%s is refused in words",
    text => {
      expect(readShare(text)).toMatchObject({
        code: "asked-wrongly",
        todo: expect.stringMatching(/--share 2\/8/),
      })
    },
  )
  it("1/1 is the whole class", () => {
    expect(readShare("1/1")).toEqual({ k: 1, n: 1 })
    expect(files.every(file => isOfShare(file, { k: 1, n: 1 }))).toBe(true)
  })
})
