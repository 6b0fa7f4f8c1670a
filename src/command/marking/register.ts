import { lineSum } from "./line-sum.ts"
import { openLines, type Span } from "./lines.ts"
import type { Verdict } from "./verdict.ts"

/**
 * Verdicts on disk by what they depend on: the journal of a marking under way, and what a later one need not judge
 * again. A line is written when its verdict is there, and never changed.
 */
export interface Register {
  /** the verdict over the same worksheet, answers and program; null where there is none that can be trusted */
  find(key: string): Verdict | null
  add(key: string, verdict: Verdict): void
  /** lines that were not what they should be, and were left aside */
  readonly damaged: () => number
  close(): void
}

const form = /^([0-9a-f]{32}) ([0-9a-f]{64}) (\{.*\})$/

/**
 * @param readVerdict says whether something is a verdict of its kind
 * @throws what the system says
 */
export function openRegister(file: string, readVerdict: (written: unknown) => Verdict | null): Register {
  const spans = new Map<string, Span>()
  let damaged = 0
  const lines = openLines(file, (line, span) => {
    // a copy: a slice would keep its whole line in memory
    const key = Buffer.from(line.slice(33, 97), "latin1").toString("latin1")
    if (/^[0-9a-f]{64}$/.test(key)) spans.set(key, span)
    else damaged++
  })
  return {
    find(key) {
      const span = spans.get(key)
      if (span === undefined) return null
      const verdict = readLine(lines.read(span), key)
      if (verdict !== null) return verdict
      damaged++
      spans.delete(key)
      return null
    },
    add(key, verdict) {
      // two equal files may have been judged at the same time
      if (spans.has(key)) return
      const text = JSON.stringify(verdict)
      spans.set(key, lines.append(`${lineSum(key, text)} ${key} ${text}`))
    },
    damaged: () => damaged,
    close: () => lines.close(),
  }

  function readLine(line: string, key: string): Verdict | null {
    const [, sum, own, text] = form.exec(line) ?? []
    if (own !== key || text === undefined || sum !== lineSum(key, text)) return null
    try {
      return readVerdict(JSON.parse(text))
    } catch {
      return null
    }
  }
}
