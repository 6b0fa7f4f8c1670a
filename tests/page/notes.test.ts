import { describe, expect, it } from "vitest"
import type { CheckResult } from "../../src/judge/contract.ts"
import { worksheetIn } from "../../src/page/address.ts"
import { notesFor, stackNotes } from "../../src/page/reader/notes.ts"
import { frameStrobe, planeEdge, roundLength } from "../../src/page/shelf/frame.ts"
import { grouped, pointsWords, stateWords } from "../../src/page/words.ts"
import { smallEdition } from "./fixtures/edition.ts"

const { sheet } = smallEdition()
const cell = sheet.cells[0]!

const result = (part: Partial<CheckResult>): CheckResult => ({
  name: "update",
  verdict: "not met",
  points: 0,
  outOf: 4,
  departsAt: 0.1,
  slip: null,
  message: "It leaves the reference at 0.1 s.",
  ...part,
})
const standing = (checks: CheckResult[], current = true) => ({
  judgement: { points: 0, outOf: 4, checks, problems: [] },
  current,
})

const none = new Set<string>()

describe("notes in the margin", () => {
  it("a verdict stands beside the blank that it speaks of", () => {
    const [note] = notesFor(cell, sheet.checks, [], standing([result({})]), null, none)
    expect(note?.anchor).toEqual({ kind: "blank", name: "update" })
  })
  it("a recognised slip stands beside the blank it was made in", () => {
    const reference = {
      parameters: {},
      factors: [1],
      runs: [],
      slips: [{ slip: "sign-turned", blank: "net", hint: "", recordings: [] }],
    }
    const [note] = notesFor(
      cell,
      sheet.checks,
      [],
      standing([result({ slip: "sign-turned" })]),
      reference,
      none,
    )
    expect(note?.anchor).toEqual({ kind: "blank", name: "net" })
  })
  it("what stops a program comes first, at its line, and is not said twice", () => {
    const problem = { code: "x", text: "No.", todo: "Do.", where: { cell: "fall", line: 4, column: 2 } }
    const notes = notesFor(
      cell,
      sheet.checks,
      [problem],
      standing([result({ verdict: "could not run" })]),
      null,
      none,
    )
    expect(notes.map(note => note.anchor)).toEqual([{ kind: "line", line: 4 }])
  })
  it("a verdict over an older text says that it is", () => {
    expect(notesFor(cell, sheet.checks, [], standing([result({})], false), null, none)[0]?.stale).toBe(true)
  })
  it("what holds for all notes beside one blank is said once, and not of an older text", () => {
    const checks = [
      sheet.checks[0]!,
      { ...sheet.checks[0]!, name: "net" },
      { ...sheet.checks[0]!, name: "end" },
    ]
    const results = checks.map(({ name }) => result({ name, verdict: "met" }))
    const asides = (current: boolean) =>
      notesFor(cell, checks, [], standing(results, current), null, none, () => "here").map(note => note.aside)
    // "end" is no blank: it stands beside the first one, "net"
    expect(asides(true)).toEqual(["here", "here", ""])
    expect(asides(false)).toEqual(["", "", ""])
  })
  it("nothing is held against a blank that nobody has written in", () => {
    const empty = new Set(["update"])
    expect(notesFor(cell, sheet.checks, [], standing([result({})]), null, empty)).toEqual([])
    expect(
      notesFor(cell, sheet.checks, [], standing([result({ verdict: "met" })]), null, empty),
    ).toHaveLength(1)
  })
  it("notes never overlap and none stands above its place", () => {
    const notes = [
      { key: "c", top: 50, height: 30 },
      { key: "a", top: 0, height: 40 },
      { key: "b", top: 10, height: 40 },
    ]
    expect([...stackNotes(notes, 5)]).toEqual([
      ["a", 0],
      ["b", 45],
      ["c", 90],
    ])
  })
})

describe("the strobe picture", () => {
  const strobe = {
    interval: 0.1,
    bodies: [
      {
        name: "key",
        radius: 0.5,
        points: [
          [0, 0],
          [4, 1],
        ] as const,
      },
    ],
    planes: [{ point: [0, -0.5] as const, normal: [0, 1] as const }],
  }
  it("has one scale for both directions and holds every image whole", () => {
    const frame = frameStrobe(strobe, 320, 160, 10)
    expect(frame.x(1) - frame.x(0)).toBeCloseTo(frame.y(0) - frame.y(1), 9)
    expect(frame.x(-0.5)).toBeGreaterThanOrEqual(10 - 1e-9)
    expect(frame.x(4.5)).toBeLessThanOrEqual(310 + 1e-9)
    expect(frame.y(1.5)).toBeGreaterThanOrEqual(10 - 1e-9)
  })
  it("a box is framed by its own width and height", () => {
    const box = { ...strobe, bodies: [{ ...strobe.bodies[0]!, box: [1, 4] as const }] }
    const frame = frameStrobe(box, 320, 160, 10)
    expect(frame.y(3)).toBeGreaterThanOrEqual(10 - 1e-9)
    expect(frame.y(-2)).toBeLessThanOrEqual(150 + 1e-9)
  })
  it("a plane's edge is cut at the picture's border; one outside is not drawn", () => {
    const frame = frameStrobe(strobe, 320, 160, 10)
    const edge = planeEdge(strobe.planes[0]!, frame, 320, 160)!
    expect([edge.x1, edge.x2].sort((a, b) => a - b)).toEqual([0, 320])
    expect(edge.y1).toBeCloseTo(frame.y(-0.5), 9)
    expect(planeEdge({ point: [0, -50], normal: [0, 1] }, frame, 320, 160)).toBeNull()
  })
  it("its scale bar is 1, 2 or 5 times a power of ten", () => {
    expect([0.9, 1, 2.4, 7, 30].map(roundLength)).toEqual([0.5, 1, 2, 5, 20])
  })
})

describe("words", () => {
  it("an address names a worksheet, or the shelf", () => {
    expect(["", "#", "#/", "#lamp-key", "#/lamp-key", "#%E0"].map(worksheetIn)).toEqual([
      null,
      null,
      null,
      "lamp-key",
      "lamp-key",
      "%E0",
    ])
  })
  it("groups of three digits stand apart, as ISO 80000-1 sets them", () => {
    expect([7, 1000, 1234567].map(grouped)).toEqual(["7", "1\u202f000", "1\u202f234\u202f567"])
  })
  it("says where a program stopped, and when the picture is older", () => {
    const problem = { code: "endless-loop", text: "", todo: "", where: { line: 16, column: 3 } }
    expect(stateWords({ kind: "stopped", problem, older: false })).toBe(
      "stopped: the loop at line 16 never ends",
    )
    expect(stateWords({ kind: "stopped", problem: { ...problem, code: "x" }, older: true })).toBe(
      "stopped at line 16; shown is the run before",
    )
  })
  it("says the state in words", () => {
    expect(stateWords({ kind: "ran", steps: 1000, milliseconds: 2 })).toBe(
      "run: 1\u202f000 steps in 2.0\u202fms",
    )
    expect(pointsWords(3, 4)).toBe("3 of 4 points")
    expect(pointsWords(0.5, 1)).toBe("0.5 of 1 point")
  })
})
