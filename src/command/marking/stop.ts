/** Notices that someone wants the command to stop (Ctrl-C, or the system's request to end), once; a second time it ends at once. */
export interface Stopper {
  readonly stopped: () => boolean
  release(): void
}

const signals = ["SIGINT", "SIGTERM"] as const

/** @param first called at the first request */
export function createStopper(first: () => void): Stopper {
  let stopped = false
  const hear = (): void => {
    if (stopped) process.exit(130)
    stopped = true
    first()
  }
  for (const signal of signals) process.on(signal, hear)
  return {
    stopped: () => stopped,
    release() {
      for (const signal of signals) process.off(signal, hear)
    },
  }
}
