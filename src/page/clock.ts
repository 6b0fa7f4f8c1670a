/** Time as the page sees it; tests bring their own. */
export interface Clock {
  /** ms since 1970 */
  now(): number
  /** calls once after `ms`; the returned function calls it off */
  after(ms: number, act: () => void): () => void
}

export const wallClock: Clock = {
  now: () => Date.now(),
  after(ms, act) {
    const timer = setTimeout(act, ms)
    return () => clearTimeout(timer)
  },
}

/** Something that happens once after a pause; asking again starts the pause anew. */
export interface Pause {
  ask(): void
  /** at once, if it was asked for */
  hurry(): void
  drop(): void
  readonly asked: boolean
}

export function pause(clock: Clock, ms: number, act: () => void): Pause {
  let drop: (() => void) | null = null
  const self = {
    ask() {
      drop?.()
      drop = clock.after(ms, () => {
        drop = null
        act()
      })
    },
    hurry() {
      if (!drop) return
      self.drop()
      act()
    },
    drop() {
      drop?.()
      drop = null
    },
    get asked() {
      return drop !== null
    },
  }
  return self
}
