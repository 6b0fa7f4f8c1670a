import { count } from "./say.ts"

/** A bar with rate and time left on a terminal; nothing at all when the output goes elsewhere. */
export interface Progress {
  /** @param worked false for what was known already: it says nothing about how fast the rest will go */
  step(worked?: boolean): void
  end(): void
}

const width = 28
const redrawMilliseconds = 100
/** Rate and time left are those of the last so many milliseconds: students of a kind often come together. */
const window = 10_000

export function createProgress(
  word: string,
  total: number,
  stream: NodeJS.WriteStream = process.stderr,
): Progress {
  const marks: { at: number; worked: number }[] = [{ at: performance.now(), worked: 0 }]
  let done = 0
  let workedOn = 0
  let drawn = Number.NEGATIVE_INFINITY
  let ended = !stream.isTTY || total < 2
  const draw = (now: number): void => {
    marks.push({ at: now, worked: workedOn })
    while (marks.length > 2 && marks[1]!.at < now - window) marks.shift()
    const rate = (workedOn - marks[0]!.worked) / Math.max((now - marks[0]!.at) / 1000, 1e-3)
    const filled = Math.round((width * done) / total)
    const ruler = "━".repeat(filled) + "╌".repeat(width - filled)
    stream.write(`\r\u001b[K${ruler} ${done} of ${total} ${word}${restWords(total - done, rate)}`)
  }
  return {
    step(worked = true) {
      done++
      if (worked) workedOn++
      const now = performance.now()
      if (ended || now - drawn < redrawMilliseconds) return
      drawn = now
      draw(now)
    },
    end() {
      if (ended) return
      ended = true
      stream.write("\r\u001b[K")
    },
  }
}

/** “, 85 a second, about 2 minutes left” */
export function restWords(left: number, rate: number): string {
  if (rate < 0.05) return ""
  const pace = rate >= 2 ? `${rate.toFixed(0)} a second` : `${(rate * 60).toFixed(0)} a minute`
  return `, ${pace}, about ${timeWords(left / rate)} left`
}

function timeWords(seconds: number): string {
  if (seconds < 100) return `${Math.ceil(seconds)} s`
  if (seconds < 5400) return count(Math.round(seconds / 60), "minute")
  return `${(seconds / 3600).toFixed(1)} hours`
}
