import fc from "fast-check"
import { describe, expect, it } from "vitest"
import { clipEdit, followRegions, type Replacement } from "../../src/page/editor/clip.ts"
import type { Region } from "../../src/page/editor/listing.ts"

/** "given ‹blank› given ‹blank› given": regions written between angle marks. */
function listing(marked: string): { text: string; regions: Region[] } {
  const regions: Region[] = []
  let text = ""
  let from = 0
  for (const character of marked) {
    if (character === "‹") from = text.length
    else if (character === "›")
      regions.push({ name: `b${regions.length}`, prompt: "", inline: false, from, to: text.length })
    else text += character
  }
  return { text, regions }
}

function apply(text: string, changes: readonly Replacement[]): string {
  let out = text
  for (const { from, to, insert } of [...changes].reverse()) out = out.slice(0, from) + insert + out.slice(to)
  return out
}

const edited = (marked: string, edit: Replacement[], whole = false): string => {
  const { text, regions } = listing(marked)
  return apply(text, clipEdit(text, regions, edit, whole).changes)
}

describe("given lines are locked", () => {
  it("an edit inside a blank, or at its edges, passes as it is", () => {
    expect(edited("ab‹cd›ef", [{ from: 3, to: 3, insert: "x" }])).toBe("abcxdef")
    expect(edited("ab‹cd›ef", [{ from: 2, to: 2, insert: "x" }])).toBe("abxcdef")
    expect(edited("ab‹cd›ef", [{ from: 4, to: 4, insert: "x" }])).toBe("abcdxef")
    expect(edited("ab‹›ef", [{ from: 2, to: 2, insert: "x" }])).toBe("abxef")
  })
  it("an edit on given text is refused and says so", () => {
    const { text, regions } = listing("ab‹cd›ef")
    expect(clipEdit(text, regions, [{ from: 0, to: 1, insert: "" }], false)).toEqual({
      changes: [],
      refused: true,
    })
  })
  it("deleting across given text takes only what lies in blanks", () => {
    expect(edited("ab‹cd›ef‹gh›i", [{ from: 0, to: 9, insert: "" }])).toBe("abefi")
    expect(edited("ab‹cd›ef", [{ from: 1, to: 3, insert: "" }])).toBe("abdef")
  })
  it("typing over a selection across given text writes in the first blank", () => {
    expect(edited("ab‹cd›ef‹gh›i", [{ from: 1, to: 8, insert: "X" }])).toBe("abXefi")
  })
  it("a text copied from the whole listing is set back on its blanks", () => {
    expect(
      edited("let a = ‹1›\nlet b = ‹2›\n", [{ from: 0, to: 20, insert: "let a = 10\nlet b = 20\n" }]),
    ).toBe("let a = 10\nlet b = 20\n")
  })
  it("half a move is no move", () => {
    const { text, regions } = listing("ab‹cd›ef")
    const move = [
      { from: 0, to: 1, insert: "" },
      { from: 3, to: 3, insert: "a" },
    ]
    expect(clipEdit(text, regions, move, true).changes).toEqual([])
    expect(clipEdit(text, regions, move, false).changes).toEqual([{ from: 3, to: 3, insert: "a" }])
  })
  it("a blank inside a line stays one line", () => {
    const regions: Region[] = [{ name: "b", prompt: "", inline: true, from: 2, to: 4 }]
    expect(
      apply("abcdef", clipEdit("abcdef", regions, [{ from: 3, to: 3, insert: "\n  " }], false).changes),
    ).toBe("abcdef")
    expect(
      apply("abcdef", clipEdit("abcdef", regions, [{ from: 3, to: 3, insert: "x\n y" }], false).changes),
    ).toBe("abcx ydef")
  })
  it("whatever the edit, the given text stands afterwards, letter for letter", () => {
    const parts = fc.array(fc.stringMatching(/^[a-z\n]{1,4}$/), { minLength: 2, maxLength: 5 })
    fc.assert(
      fc.property(
        parts,
        fc.array(fc.stringMatching(/^[A-Z]{0,4}$/), { minLength: 5, maxLength: 5 }),
        fc.nat(40),
        fc.nat(40),
        fc.stringMatching(/^[A-Za-z\n]{0,6}$/),
        (given, blanks, a, b, insert) => {
          let text = ""
          const regions: Region[] = []
          given.forEach((part, i) => {
            text += part
            if (i === given.length - 1) return
            regions.push({
              name: `b${i}`,
              prompt: "",
              inline: false,
              from: text.length,
              to: text.length + blanks[i]!.length,
            })
            text += blanks[i]!
          })
          const [from, to] = [Math.min(a, b, text.length), Math.min(Math.max(a, b), text.length)]
          const { changes } = clipEdit(text, regions, [{ from, to, insert }], false)
          const after = apply(text, changes)
          const moved = followRegions(regions, (position, side) => {
            let at = position
            for (const change of [...changes].reverse())
              if (change.from < position || (change.from === position && side > 0))
                at += change.insert.length - (Math.min(change.to, position) - change.from)
            return at
          })
          const kept = [...moved]
            .reverse()
            .reduce((rest, r) => rest.slice(0, r.from) + rest.slice(r.to), after)
          expect(kept).toBe(given.join(""))
        },
      ),
      { seed: 4, numRuns: 500 },
    )
  })
})
