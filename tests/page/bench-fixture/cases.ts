import type { Problem } from "../../../src/cell/problem.ts"
import type { Departure } from "../../../src/page/bench/departures.ts"
import type { Recording } from "../../../src/run/contract.ts"
import type { StudentSheet } from "../../../src/worksheet/contract.ts"
import { bounce, crowd, helix, long, moored, pair, projectile, slide, swing } from "./recordings.ts"
import { heightParameter, sheetOf, speedParameter, stiffnessParameter } from "./sheets.ts"

/** One state of the bench to be looked at: a sheet, and what a run with parameters would record. */
export interface FixtureCase {
  readonly sheet: StudentSheet
  readonly run: (parameters: Readonly<Record<string, number>>) => readonly Recording[]
  readonly reference?: readonly Recording[]
  readonly ghost?: readonly Recording[]
  readonly departures?: readonly Departure[]
  readonly problem?: Problem
}

const stopped: Problem = {
  code: "endless-loop",
  text: "The loop never ends: after 20,000,000 turns y is still above 0 m.",
  todo: "Look at the line that steps the position: does y change in each turn?",
  where: { cell: "bounce", line: 12, column: 1 },
}

const deck = {
  bodies: [{ body: "buoy", shape: "disc", width: 0.3, height: 0.3, label: "buoy" }],
  fixtures: [
    { kind: "plane", point: [0, -0.25], normal: [0, 1], label: "deck" },
    { kind: "spring", from: [0, -0.25], to: "buoy", restLength: 0.25, label: "deck" },
  ],
} as const

const slipway = {
  bodies: [{ body: "crate", shape: "box", width: 0.6, height: 0.4, label: "crate" }],
  fixtures: [{ kind: "plane", point: [0, -0.2], normal: [0, 1], label: "slipway" }],
} as const

const lantern = {
  view: "space",
  bodies: [{ body: "lamp", shape: "box", width: 0.3, height: 0.4, label: "lamp" }],
  fixtures: [
    { kind: "rope", from: [0, 0, 0], to: "lamp", length: 2, label: "cord" },
    { kind: "plane", point: [1.5, 0, 0], normal: [-1, 0, 0], label: "wall" },
  ],
} as const

/** By the name that the address asks for. */
export const cases: Readonly<Record<string, () => FixtureCase>> = {
  projectile: () => ({
    sheet: sheetOf("throw", null, [], [speedParameter]),
    run: p => [projectile("throw", p.speed, 0.01, 0.004)],
    reference: [projectile("throw")],
    ghost: [projectile("throw", 7, 0.01, 0.004)],
    departures: [{ instant: 0.37, of: ["weight.position"] }],
  }),
  bounce: () => ({
    sheet: sheetOf(
      "bounce",
      deck,
      [
        {
          name: "height",
          x: "t",
          y: ["buoy.position.y"],
          caption: "Height of the buoy above the relaxed deck.",
        },
      ],
      [heightParameter, stiffnessParameter],
    ),
    run: p => [bounce("bounce", p.height, 0.001, 3000, p.stiffness)],
    reference: [bounce("bounce", 1.5, 0.001, 3000, 700)],
  }),
  measured: () => {
    const [recording] = [projectile("throw")]
    const { data, width, rows } = recording
    const at = (row: number, column: number) => data[row * width + column] ?? 0
    const read = Array.from({ length: 12 }, (_, k) => Math.floor((k * (rows - 1)) / 11))
    const plot = { name: "height", x: "t", y: ["weight.position.y"], caption: "" }
    return {
      sheet: {
        ...sheetOf("throw", null, [plot], []),
        data: [
          {
            name: "camera",
            columns: [
              { name: "t", unit: "s" },
              { name: "y", unit: "m" },
            ],
            rows: read.map((row, k) => [at(row, 0), at(row, 2) + (k % 2 === 0 ? 0.01 : -0.01)]),
          },
        ],
      },
      run: () => [recording],
    }
  },
  moored: () => ({
    sheet: sheetOf(
      "moored",
      {
        bodies: [
          { body: "float", shape: "disc", width: 0.3, height: 0.3, label: "float" },
          { body: "arm", shape: "disc", width: 0.16, height: 0.16, label: "arm" },
        ],
        fixtures: [
          { kind: "plane", point: [-1.2, 0], normal: [1, 0], label: "wall" },
          { kind: "rope", from: [0, 1.4], to: "float", length: 1.5, label: "rope" },
          { kind: "strut", from: [-1.2, 0.4], to: "arm", label: "strut" },
        ],
      },
      [],
      [],
    ),
    run: () => [moored("moored")],
  }),
  slide: () => ({
    sheet: sheetOf(
      "slide",
      slipway,
      [{ name: "momentum", x: "t", y: ["crate.momentum.x", "crate.position.x"], caption: "" }],
      [],
    ),
    run: () => [slide("slide")],
  }),
  crowd: () => ({ sheet: sheetOf("crowd", null, [], []), run: () => [crowd("crowd")] }),
  swing: () => ({ sheet: sheetOf("swing", lantern, [], []), run: () => [swing("swing")] }),
  helix: () => ({ sheet: sheetOf("helix", null, [], []), run: () => [helix("helix")] }),
  long: () => {
    const recordings = [long("long")]
    return { sheet: sheetOf("long", null, [], []), run: () => recordings }
  },
  pair: () => ({
    sheet: sheetOf(
      "pair",
      null,
      [],
      [{ ...stiffnessParameter, name: "stiffness", range: [20, 120], value: 60 }],
    ),
    run: p => [pair("pair", p.stiffness ?? 60)],
  }),
  empty: () => ({ sheet: sheetOf("bounce", deck, [], [heightParameter]), run: () => [] }),
  problem: () => ({
    sheet: sheetOf("bounce", deck, [], [heightParameter]),
    run: () => [bounce("bounce", 1.5, 0.001, 700)],
    problem: stopped,
  }),
  corrupted: () => ({
    sheet: sheetOf("bounce", deck, [], [heightParameter, stiffnessParameter]),
    run: () => [corrupt(bounce("bounce"))],
  }),
}

/** The bounce with its record tampered with: from row 800 to 900 the momentum gains what no force gave. */
function corrupt(recording: Recording): Recording {
  const data = recording.data.slice()
  for (let row = 800; row < recording.rows; row++) {
    const at = row * recording.width
    data[at + 5] = (data[at + 5] ?? 0) + Math.min(1, (row - 800) / 100) * 2
    data[at + 2] = (data[at + 2] ?? 0) + Math.min(1, (row - 800) / 100) * 0.4
  }
  return { ...recording, data }
}
