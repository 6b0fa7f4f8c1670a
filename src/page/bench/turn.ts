import type { Triple } from "./vectors.ts"

/** From where a motion is seen in space, degrees: about the vertical, and above the horizontal. 0, 0 is the side view. */
export interface Bearing {
  readonly azimuth: number
  readonly elevation: number
}

/** Unit vectors to the right of the picture, up it, and out of it towards the eye, in the world's axes. */
export type Turn = readonly [right: Triple, up: Triple, out: Triple]

/** As drawings in space usually have it: x to the right, y up, z towards the lower left. */
export const firstBearing: Bearing = { azimuth: 30, elevation: 20 }
export const fromAbove: Bearing = { azimuth: 0, elevation: 90 }
export const fromSide: Bearing = { azimuth: 0, elevation: 0 }

/**
 * Parallel projection (axonometry): lengths keep their scale at every depth, so that what is drawn can be measured.
 * The three vectors are orthonormal and right-handed: right × up = out.
 */
export function turnOf({ azimuth, elevation }: Bearing): Turn {
  const [a, e] = [(azimuth * Math.PI) / 180, (elevation * Math.PI) / 180]
  const [sa, ca, se, ce] = [Math.sin(a), Math.cos(a), Math.sin(e), Math.cos(e)]
  return [
    [ca, 0, -sa],
    [-se * sa, ce, -se * ca],
    [sa * ce, se, ca * ce],
  ]
}

/** The bearing after a turn by so many degrees; never upside down, a little below the horizontal at most. */
export function turnedBy(bearing: Bearing, azimuth: number, elevation: number): Bearing {
  const turned = (bearing.azimuth + azimuth) % 360
  return {
    azimuth: turned > 180 ? turned - 360 : turned <= -180 ? turned + 360 : turned,
    elevation: Math.min(90, Math.max(-10, bearing.elevation + elevation)),
  }
}

/** A vector of the world as the picture has it: to the right, up, towards the eye. */
export function seenAs(turn: Turn, vector: Triple): Triple {
  const along = (unit: Triple) => unit[0] * vector[0] + unit[1] * vector[1] + unit[2] * vector[2]
  return [along(turn[0]), along(turn[1]), along(turn[2])]
}

/** What is seen from where, in words: for a screen reader. */
export function bearingWords({ azimuth, elevation }: Bearing): string {
  const about = Math.round(azimuth)
  const above = Math.round(elevation)
  if (above === 90) return "seen from above"
  const height = above === 0 ? "level" : `${Math.abs(above)}° ${above > 0 ? "above" : "below"} the horizontal`
  return about === 0
    ? `seen from the front, ${height}`
    : `seen from ${Math.abs(about)}° to the ${about > 0 ? "right" : "left"}, ${height}`
}

/** The faces of a box that the eye sees, about its centre, as path data; half sizes in px, as deep as it is wide. */
export function boxFaces(turn: Turn, halfWidth: number, halfHeight: number): string[] {
  const half: Triple = [halfWidth, halfHeight, halfWidth]
  const faces: string[] = []
  for (const axis of [0, 1, 2] as const) {
    const towards = turn[2][axis]
    if (Math.abs(towards) < 1e-6) continue
    const [u, v] = [(axis + 1) % 3, (axis + 2) % 3] as [0 | 1 | 2, 0 | 1 | 2]
    const corners = [
      [-1, -1],
      [1, -1],
      [1, 1],
      [-1, 1],
    ].map(([a = 0, b = 0]) => {
      const corner: [number, number, number] = [0, 0, 0]
      corner[axis] = Math.sign(towards) * half[axis]
      corner[u] = a * half[u]
      corner[v] = b * half[v]
      const [right, up] = seenAs(turn, corner)
      return `${right.toFixed(2)} ${(-up).toFixed(2)}`
    })
    faces.push(`M${corners.join("L")}Z`)
  }
  return faces
}
