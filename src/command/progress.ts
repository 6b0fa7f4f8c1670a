/** A bar with rate and time left on a terminal; nothing at all when the output goes elsewhere. */
export interface Progress {
  step(): void
  end(): void
}

const width = 28
const redrawMilliseconds = 100

export function createProgress(
  word: string,
  total: number,
  stream: NodeJS.WriteStream = process.stderr,
): Progress {
  const start = performance.now()
  let done = 0
  let drawn = Number.NEGATIVE_INFINITY
  let ended = !stream.isTTY || total < 2
  const draw = (): void => {
    const seconds = (performance.now() - start) / 1000
    const rate = done / Math.max(seconds, 1e-3)
    const left = Math.ceil((total - done) / Math.max(rate, 1e-3))
    const filled = Math.round((width * done) / total)
    const ruler = "━".repeat(filled) + "╌".repeat(width - filled)
    stream.write(
      `\r\u001b[K${ruler} ${done} of ${total} ${word}, ${rate.toFixed(0)} a second, ${left} s left`,
    )
  }
  return {
    step() {
      done++
      const now = performance.now()
      if (ended || now - drawn < redrawMilliseconds) return
      drawn = now
      draw()
    },
    end() {
      if (ended) return
      ended = true
      stream.write("\r\u001b[K")
    },
  }
}
