/** A text that wants to stand near something, px. */
export interface Wanted {
  readonly text: string
  /** the middle of what it names, and its half sizes */
  readonly x: number
  readonly y: number
  readonly halfWidth: number
  readonly halfHeight: number
}

export interface Placed {
  readonly text: string
  /** start of its base line */
  readonly x: number
  readonly y: number
}

/** Mean width of a letter, height of a line, and the gap to what is named, px at the picture's text size. */
const letter = 6.4
const line = 14
const gap = 5

/** A rectangle of the picture, px. */
export interface Box {
  readonly left: number
  readonly top: number
  readonly right: number
  readonly bottom: number
}

/**
 * Places for texts so that none covers another or another's thing, where one of eight places around its own thing allows it:
 * the upper right first, as one would write it by hand. What does not move is kept clear as well (`fixed`). Texts given first are placed first; none leaves the field sideways.
 */
export function placeLabels(wanted: readonly Wanted[], field: Box, fixed: readonly Box[] = []): Placed[] {
  const things = wanted.map(w =>
    boxOf(w.x - w.halfWidth, w.y - w.halfHeight, 2 * w.halfWidth, 2 * w.halfHeight),
  )
  const taken: Box[] = []
  return wanted.map((w, own) => {
    const others = [...things.filter((_, k) => k !== own), ...taken, ...fixed]
    const candidates = places(w)
    const cost = (box: Box) =>
      others.reduce((sum, other) => sum + overlap(box, other), 0) + 10 * outside(box, field)
    const best = candidates.reduce((a, b) => (cost(b) < cost(a) - 1 ? b : a))
    taken.push(best)
    const x = Math.max(field.left, Math.min(best.left, field.right - w.text.length * letter))
    return { text: w.text, x, y: best.bottom - 3 }
  })
}

function places({ text, x, y, halfWidth, halfHeight }: Wanted): Box[] {
  const wide = text.length * letter
  const [right, left] = [x + halfWidth + gap, x - halfWidth - gap - wide]
  const [above, below] = [y - halfHeight - gap - line, y + halfHeight + gap]
  return [
    boxOf(right, y - halfHeight - line, wide, line),
    boxOf(left, y - halfHeight - line, wide, line),
    boxOf(x - wide / 2, above, wide, line),
    boxOf(right, y + halfHeight, wide, line),
    boxOf(left, y + halfHeight, wide, line),
    boxOf(x - wide / 2, below, wide, line),
    boxOf(right, y - line / 2, wide, line),
    boxOf(left, y - line / 2, wide, line),
  ]
}

function boxOf(left: number, top: number, wide: number, high: number): Box {
  return { left, top, right: left + wide, bottom: top + high }
}

function overlap(a: Box, b: Box): number {
  const wide = Math.min(a.right, b.right) - Math.max(a.left, b.left)
  const high = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top)
  return wide > 0 && high > 0 ? wide * high : 0
}

function outside(box: Box, field: Box): number {
  const across = Math.max(0, field.left - box.left) + Math.max(0, box.right - field.right)
  return across + Math.max(0, field.top - box.top) + Math.max(0, box.bottom - field.bottom)
}
