/** Answers of questions asked before, each made once even if it is asked twice at the same time. */
export interface Memo<T> {
  get(key: string, make: () => Promise<T>): Promise<T>
  has(key: string): boolean
}

/** @param most answers kept; those asked for longest ago are forgotten */
export function createMemo<T>(most: number): Memo<T> {
  const kept = new Map<string, Promise<T>>()
  return {
    has: key => kept.has(key),
    get(key, make) {
      const known = kept.get(key)
      if (known !== undefined) {
        kept.delete(key)
        kept.set(key, known)
        return known
      }
      const made = make()
      kept.set(key, made)
      // what failed may be tried again
      made.catch(() => kept.delete(key))
      if (kept.size > most) kept.delete(kept.keys().next().value!)
      return made
    },
  }
}
