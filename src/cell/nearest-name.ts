/**
 * The name most like a misspelt one: at most two letters added, left out, changed or swapped, one
 * in a short name; null if none is that near.
 */
export function nearestName(name: string, candidates: readonly string[]): string | null {
  let best: string | null = null
  // another case of the same letters is always near
  let least = Math.max(0.5, name.length < 6 ? Math.min(1, name.length - 1) : 2)
  for (const candidate of new Set(candidates)) {
    if (candidate === name) continue
    if (Math.abs(candidate.length - name.length) > least) continue
    const distance = candidate.toLowerCase() === name.toLowerCase() ? 0.5 : editDistance(name, candidate)
    if (distance <= least && (best === null || distance < least)) {
      best = candidate
      least = distance
    }
  }
  return best
}

/** Optimal string alignment distance: insertions, deletions, substitutions and swaps of neighbours. */
function editDistance(a: string, b: string): number {
  const rows: number[][] = [Array.from({ length: b.length + 1 }, (_, j) => j)]
  for (let i = 1; i <= a.length; i++) {
    const row = [i]
    for (let j = 1; j <= b.length; j++) {
      const change = rows[i - 1]![j - 1]! + (a[i - 1] === b[j - 1] ? 0 : 1)
      let least = Math.min(rows[i - 1]![j]! + 1, row[j - 1]! + 1, change)
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) {
        least = Math.min(least, rows[i - 2]![j - 2]! + 1)
      }
      row.push(least)
    }
    rows.push(row)
  }
  return rows[a.length]![b.length]!
}
