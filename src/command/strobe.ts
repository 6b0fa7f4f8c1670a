import type { Strobe } from "../judge/edition.ts"
import type { Recording } from "../run/contract.ts"
import type { StudentSheet } from "../worksheet/index.ts"

/** As many images as tell a motion on a card without running into each other. */
const images = 14

/** The shelf's picture: the bodies of the first cell that records any, at equal times. */
export function strobeOf(sheet: StudentSheet, recordings: readonly Recording[]): Strobe | null {
  const recording = recordings.find(r => r.rows > 1 && r.series.some(s => s.name.endsWith(".position")))
  if (!recording) return null
  const scene = sheet.scenes.find(s => s.cell === recording.cell)
  const { data, width, rows } = recording
  const first = data[0] ?? 0
  const interval = ((data[(rows - 1) * width] ?? 0) - first) / (images - 1)
  if (!(interval > 0)) return null
  const picks = Array.from({ length: images }, (_, i) => rowAt(recording, first + i * interval))
  const tracks = recording.series.filter(s => s.kind === "vector" && s.name.endsWith(".position"))
  return {
    interval,
    bodies: tracks.slice(0, 6).map(series => {
      const name = series.name.slice(0, -".position".length)
      const drawn = scene?.bodies.find(b => b.body === name)
      return {
        name,
        ...(drawn?.shape === "box" ? { box: [drawn.width, drawn.height] as const } : {}),
        radius: drawn ? Math.max(drawn.width, drawn.height) / 2 : 0,
        points: picks.map(
          row =>
            [round(data[row * width + series.column]), round(data[row * width + series.column + 1])] as const,
        ),
      }
    }),
    planes: (scene?.fixtures ?? []).flatMap(f =>
      f.kind === "plane" && Math.hypot(f.normal[0], f.normal[1]) > 0
        ? [{ point: [f.point[0], f.point[1]] as const, normal: [f.normal[0], f.normal[1]] as const }]
        : [],
    ),
  }
}

/** The last row whose time is not after an instant. */
function rowAt({ data, width, rows }: Recording, time: number): number {
  let low = 0
  let high = rows - 1
  while (low < high) {
    const middle = (low + high + 1) >> 1
    if (data[middle * width]! <= time + 1e-12) low = middle
    else high = middle - 1
  }
  return low
}

const round = (x: number | undefined): number => Number((x ?? 0).toPrecision(5))
