import { distance } from "fastest-levenshtein"

/** The known word nearest to a misspelt one, or null when none is near enough to be meant. */
export function nearest(word: string, known: readonly string[]): string | null {
  let best: string | null = null
  let least = Math.max(2, Math.floor(word.length / 3)) + 1
  for (const candidate of known) {
    const d = distance(word.toLowerCase(), candidate.toLowerCase())
    if (d < least) {
      least = d
      best = candidate
    }
  }
  return best
}

/** "Did you mean “points”?", or the list of what would have been right. */
export function suggest(word: string, known: readonly string[]): string {
  const near = nearest(word, known)
  if (near !== null) return `Did you mean “${near}”?`
  if (known.length === 0) return "Take it out."
  return `Known here: ${known.join(", ")}.`
}
