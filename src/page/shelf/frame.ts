import type { Strobe } from "../../judge/edition.ts"

/** How metres become picture units: x right, y down, one scale for both. */
export interface Frame {
  /** picture units per metre */
  readonly scale: number
  readonly x: (metres: number) => number
  readonly y: (metres: number) => number
  readonly bar: { readonly metres: number; readonly length: number }
}

/** The longest of 1, 2, 5 times a power of ten that fits. */
export function roundLength(most: number): number {
  const power = 10 ** Math.floor(Math.log10(most))
  for (const step of [5, 2, 1]) if (step * power <= most * (1 + 1e-9)) return step * power
  return power
}

/** Half the width and half the height of a body, m. */
export function halvesOf(body: Strobe["bodies"][number]): readonly [number, number] {
  return body.box ? [body.box[0] / 2, body.box[1] / 2] : [body.radius, body.radius]
}

/**
 * Fits all images of all bodies in the middle of a picture.
 *
 * @param head height kept free at the top, for the scale bar
 */
export function frameStrobe(strobe: Strobe, width: number, height: number, pad: number, head = 0): Frame {
  let [left, right, low, high] = [
    Number.POSITIVE_INFINITY,
    Number.NEGATIVE_INFINITY,
    Number.POSITIVE_INFINITY,
    Number.NEGATIVE_INFINITY,
  ]
  for (const body of strobe.bodies)
    for (const [x, y] of body.points) {
      if (!Number.isFinite(x) || !Number.isFinite(y)) continue
      const [halfWidth, halfHeight] = halvesOf(body)
      left = Math.min(left, x - halfWidth)
      right = Math.max(right, x + halfWidth)
      low = Math.min(low, y - halfHeight)
      high = Math.max(high, y + halfHeight)
    }
  if (left > right) [left, right, low, high] = [-1, 1, -1, 1]
  const scale = Math.min(
    (width - 2 * pad) / Math.max(right - left, 1e-9),
    (height - head - 2 * pad) / Math.max(high - low, 1e-9),
  )
  const middleX = (left + right) / 2
  const middleY = (low + high) / 2
  const metres = roundLength((width * 0.3) / scale)
  return {
    scale,
    x: x => width / 2 + (x - middleX) * scale,
    y: y => (height + head) / 2 - (y - middleY) * scale,
    bar: { metres, length: metres * scale },
  }
}

/** The stretch of a plane's edge that a picture shows, ends in picture units; null if it misses the picture. */
export function planeEdge(
  plane: Strobe["planes"][number],
  frame: Frame,
  width: number,
  height: number,
): { readonly x1: number; readonly y1: number; readonly x2: number; readonly y2: number } | null {
  const [px, py] = [frame.x(plane.point[0]), frame.y(plane.point[1])]
  const length = Math.hypot(plane.normal[0], plane.normal[1])
  if (!(length > 0)) return null
  // along the edge, y down
  const [dx, dy] = [plane.normal[1] / length, plane.normal[0] / length]
  let [from, to] = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY]
  const cut = (start: number, step: number, most: number): void => {
    if (Math.abs(step) < 1e-12) {
      if (start < 0 || start > most) to = Number.NEGATIVE_INFINITY
      return
    }
    const [a, b] = [(0 - start) / step, (most - start) / step]
    from = Math.max(from, Math.min(a, b))
    to = Math.min(to, Math.max(a, b))
  }
  cut(px, dx, width)
  cut(py, dy, height)
  if (!(from < to)) return null
  return { x1: px + from * dx, y1: py + from * dy, x2: px + to * dx, y2: py + to * dy }
}
