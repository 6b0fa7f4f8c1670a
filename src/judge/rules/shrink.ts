/** Each halving of the step leaves at most this part. */
const shrinkRatio = 0.7
/** What is left at the finest step is at most this, as part of the whole. */
const leastLeft = 0.05

/** A violation that is the step's own and not the law's: it goes away at first order or better as the step shrinks. */
export function shrinksAway(parts: readonly number[]): boolean {
  if (parts.length < 3) return false
  const [coarse, middle, fine] = parts.slice(-3) as [number, number, number]
  return middle <= shrinkRatio * coarse && fine <= shrinkRatio * middle && fine <= leastLeft
}

/** Two runs that look like the beginning of that; a third will tell. */
export const mayShrink = (parts: readonly number[]): boolean =>
  parts.length === 2 && parts[1]! <= shrinkRatio * parts[0]!
