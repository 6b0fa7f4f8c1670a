import { describe, expect, it } from "vitest"
import { booksOf } from "../../../src/page/bench/books.ts"
import { booksWords } from "../../../src/page/bench/books-words.ts"
import { massOf } from "../../../src/page/bench/mass.ts"
import { bodiesOf } from "../../../src/page/bench/series.ts"
import { studyOf } from "../../../src/page/bench/study.ts"
import { timelineOf } from "../../../src/page/bench/timeline.ts"
import type { Recording } from "../../../src/run/contract.ts"
import { bounce, projectile, record, slide } from "../bench-fixture/recordings.ts"

function books(recording: Recording) {
  const [body] = bodiesOf(recording)
  if (!body) throw new Error("no body")
  const kept = booksOf(recording, timelineOf(recording), body)
  if (!kept) throw new Error("no books")
  return kept
}

const mass = (recording: Recording) => {
  const [body] = bodiesOf(recording)
  if (!body) throw new Error("no body")
  return massOf(recording, timelineOf(recording), body)
}

/** Runs a spring on 1.3 kg by hand; `position` gets the old and new momentum and says what moves the body. */
function spring(position: (old: number, next: number) => number, steps = 400): Recording {
  const [m, k, h] = [1.3, 20, 0.01]
  let [x, p] = [0.5, 0]
  const rows = [[0, x, 0, 0, p, 0, 0, -k * x, 0, 0]]
  for (let n = 1; n <= steps; n++) {
    const force = -k * x
    const old = p
    p += force * h
    x += (position(old, p) / m) * h
    rows.push([n * h, x, 0, 0, p, 0, 0, force, 0, 0])
  }
  return record("cell", ["bob.position", "bob.momentum", "bob.forces.spring"], rows)
}

describe("mass read from a recording", () => {
  it("is momentum over change of position, exact for momentum stepped first and for position stepped first", () => {
    for (const recording of [
      spring((_, next) => next),
      spring(old => old),
      projectile("cell"),
      slide("cell"),
    ]) {
      const found = mass(recording)
      expect(found.kind).toBe("found")
      if (found.kind === "found") expect(found.exact).toBe(true)
    }
    expect(mass(spring((_, next) => next))).toMatchObject({ mass: expect.closeTo(1.3, 9) })
    expect(mass(slide("cell"))).toMatchObject({ mass: expect.closeTo(12, 9) })
  })

  it("is not given when momentum and motion do not belong together", () => {
    expect(mass(spring((_, next) => -next + 0.3))).toEqual({ kind: "none", why: "no common ratio" })
  })

  it("is not given for a body that stays, or has no momentum recorded", () => {
    const still = record(
      "cell",
      ["a.position", "a.momentum"],
      [
        [0, 1, 1, 0, 0, 0, 0],
        [1, 1, 1, 0, 0, 0, 0],
      ],
    )
    expect(mass(still)).toEqual({ kind: "none", why: "no motion" })
    expect(mass(record("cell", ["a.position"], [[0, 1, 1, 0]]))).toEqual({ kind: "none", why: "no momentum" })
  })
})

describe("books of momentum and energy", () => {
  it("close each step to rounding, with work booked at the average of old and new velocity", () => {
    const kept = books(spring((_, next) => next))
    expect(kept.gap).toBeNull()
    const [entry] = kept.entries
    expect(entry?.impulse[0]).toBeCloseTo(kept.change.momentum[0], 12)
    expect(entry?.work).toBeCloseTo(kept.change.energy ?? Number.NaN, 12)
  })

  it("would over-count by F²h²/2m a step if work were booked at the new velocity", () => {
    // derived in the check L01 from the update rule: W(new velocity) - ΔK = sum of h²F²/2m
    const [m, h] = [1.3, 0.01]
    const recording = spring((_, next) => next)
    let [naive, excess] = [0, 0]
    for (let row = 1; row < recording.rows; row++) {
      const at = row * recording.width
      const [force, p] = [recording.data[at + 7] ?? 0, recording.data[at + 4] ?? 0]
      naive += force * (p / m) * h
      excess += (force * h) ** 2 / (2 * m)
    }
    const work = books(recording).entries[0]?.work ?? Number.NaN
    expect(excess).toBeGreaterThan(0.01)
    expect(naive - work).toBeCloseTo(excess, 12)
  })

  it("take a force for the step that begins at its row when that is how it was recorded", () => {
    const after = spring((_, next) => next)
    const data = after.data.slice()
    for (let row = 0; row + 1 < after.rows; row++)
      data[row * after.width + 7] = after.data[(row + 1) * after.width + 7] ?? 0
    const kept = books({ ...after, data })
    expect(kept.forceOf).toBe("step after")
    expect(kept.gap).toBeNull()
    expect(books(after).forceOf).toBe("step before")
  })

  it("of a slide: friction takes all of the kinetic energy, m v²/2", () => {
    const kept = books(slide("cell", 3))
    expect(kept.entries.find(e => e.force === "friction")?.work).toBeCloseTo(-0.5 * 12 * 9, 9)
    expect(kept.entries.find(e => e.force === "weight")?.work).toBeCloseTo(0, 12)
    expect(kept.gap).toBeNull()
  })

  it("name the stretch in which momentum appeared, and what acted then", () => {
    const recording = bounce("cell")
    const data = recording.data.slice()
    for (let row = 600; row < recording.rows; row++)
      data[row * recording.width + 5] =
        (data[row * recording.width + 5] ?? 0) + Math.min(1, (row - 599) / 20) * 0.8
    const kept = books({ ...recording, data })
    expect(kept.gap?.from).toBeCloseTo(0.6, 9)
    expect(kept.gap?.to).toBeCloseTo(0.62, 9)
    expect(kept.gap?.momentum[1]).toBeCloseTo(0.8, 9)
    expect(kept.gap?.acting).toEqual(["weight", "deck"])
    const [sentence] = booksWords(studyOf({ ...recording, data }), kept)
    expect(sentence).toMatch(
      /do not balance: between 0\.600\u00a0s and 0\.620\u00a0s .* 0\.800\u00a0N\u00a0s up/,
    )
    expect(sentence).toContain("while weight and deck acted")
  })

  it("say so when a force was left out of the record", () => {
    const whole = bounce("cell")
    const hidden = { ...whole, series: whole.series.filter(s => s.name !== "buoy.forces.deck") }
    expect(books(whole).gap).toBeNull()
    expect(books(hidden).gap?.acting).toEqual(["weight"])
    expect(booksWords(studyOf(hidden), books(hidden))[0]).toContain("no recorded force accounts for")
  })
})
