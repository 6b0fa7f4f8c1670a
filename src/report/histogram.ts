import { type Entry, isFull } from "./tally.ts"
import { number } from "./text.ts"

const width = 360
const height = 170
const floor = 142
const ceiling = 18
/** Columns at most; above, points are counted in bands. */
const mostColumns = 13

/** How many have how many points, as columns with their counts. "" for an empty class. */
export function histogram(entries: readonly Entry[], outOf: number): string {
  const marked = entries.filter(entry => !entry.refused)
  if (marked.length === 0 || outOf <= 0) return ""
  const band = Math.max(1, Math.ceil(outOf / (mostColumns - 1)))
  const bands = Math.ceil(outOf / band) + 1
  // full points stand alone in the last column: they are what one looks for
  const counts = new Array<number>(bands).fill(0)
  for (const entry of marked)
    counts[isFull(entry) ? bands - 1 : Math.min(bands - 2, Math.floor(entry.points / band))]!++
  const most = Math.max(...counts)
  const pitch = width / bands
  const labelOf = (i: number): string => {
    if (i === bands - 1) return number(outOf)
    const last = Math.min(outOf - 1, (i + 1) * band - 1)
    return band === 1 || last <= i * band ? number(i * band) : `${number(i * band)}–${number(last)}`
  }
  const columns = counts.map((n, i) => {
    const tall = (n / most) * (floor - ceiling)
    const x = i * pitch + pitch * 0.14
    return [
      n === 0
        ? ""
        : `<rect class="${i === bands - 1 ? "column full" : "column"}" x="${number2(x)}" y="${number2(floor - tall)}" width="${number2(pitch * 0.72)}" height="${number2(tall)}"/><text class="amount" x="${number2((i + 0.5) * pitch)}" y="${number2(floor - tall - 5)}" text-anchor="middle">${n}</text>`,
      `<text class="tick" x="${number2((i + 0.5) * pitch)}" y="${floor + 16}" text-anchor="middle">${labelOf(i)}</text>`,
    ].join("")
  })
  const said = counts.flatMap((n, i) => (n === 0 ? [] : [`${labelOf(i)} points: ${n}`])).join("; ")
  return `<figure class="histogram"><svg viewBox="0 0 ${width} ${height}" role="img" aria-label="How many have how many points. ${said}."><line class="floor" x1="0" y1="${floor}" x2="${width}" y2="${floor}"/>${columns.join("")}</svg><figcaption>How many (above the columns) have how many points (below).</figcaption></figure>`
}

const number2 = (value: number): string => String(Math.round(value * 10) / 10)
