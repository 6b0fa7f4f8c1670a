/**
 * `work`, never twice at once: asked for while it is under way, it is done once more afterwards, however often it was
 * asked for. Resolves at once for those who only asked.
 */
export function oneAtATime(work: () => Promise<void>, closed: () => boolean): () => Promise<void> {
  let busy = false
  let again = false
  return async () => {
    if (busy) {
      again = true
      return
    }
    busy = true
    do {
      again = false
      await work()
    } while (again && !closed())
    busy = false
  }
}
