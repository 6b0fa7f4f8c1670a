import type { Ladder } from "../../src/judge/limit.ts"
import { trackOf } from "../../src/judge/track.ts"
import type { Recording } from "../../src/run/contract.ts"

/** One or more points in a plane: positions and momenta, two numbers a body. Own little steppers, no project code. */
export interface Scene {
  readonly masses: readonly number[]
  readonly r: readonly number[]
  readonly p: readonly number[]
  readonly force: (r: readonly number[], p: readonly number[], t: number) => number[]
  readonly until: number
  readonly dt: number
}

export type Method = "momentum first" | "explicit Euler" | "velocity Verlet" | "midpoint"
export const methods: readonly Method[] = ["momentum first", "explicit Euler", "velocity Verlet", "midpoint"]

export function simulate(scene: Scene, method: Method, factor = 1, steps?: number): Recording {
  const h = scene.dt * factor
  const n = steps ?? Math.round(scene.until / h)
  const mass = (i: number): number => scene.masses[i >> 1]!
  let r = [...scene.r]
  let p = [...scene.p]
  const width = 1 + 9 * scene.masses.length
  const data = new Float64Array(n * width)
  for (let step = 0; step < n; step++) {
    const t = step * h
    let f = scene.force(r, p, t)
    switch (method) {
      case "momentum first":
        p = p.map((v, i) => v + f[i]! * h)
        r = r.map((v, i) => v + (p[i]! / mass(i)) * h)
        break
      case "explicit Euler":
        r = r.map((v, i) => v + (p[i]! / mass(i)) * h)
        p = p.map((v, i) => v + f[i]! * h)
        break
      case "velocity Verlet": {
        const half = p.map((v, i) => v + (f[i]! * h) / 2)
        r = r.map((v, i) => v + (half[i]! / mass(i)) * h)
        f = scene.force(r, half, t + h)
        p = half.map((v, i) => v + (f[i]! * h) / 2)
        break
      }
      case "midpoint": {
        const rm = r.map((v, i) => v + ((p[i]! / mass(i)) * h) / 2)
        const pm = p.map((v, i) => v + (f[i]! * h) / 2)
        f = scene.force(rm, pm, t + h / 2)
        r = r.map((v, i) => v + (pm[i]! / mass(i)) * h)
        p = p.map((v, i) => v + f[i]! * h)
        break
      }
    }
    data[step * width] = (step + 1) * h
    scene.masses.forEach((_, b) => {
      for (let k = 0; k < 2; k++) {
        data[step * width + 1 + 9 * b + k] = r[2 * b + k]!
        data[step * width + 4 + 9 * b + k] = p[2 * b + k]!
        data[step * width + 7 + 9 * b + k] = f[2 * b + k]!
      }
    })
  }
  const series = scene.masses.flatMap((_, b) => [
    { name: `body${b}.position`, kind: "vector" as const, column: 1 + 9 * b },
    { name: `body${b}.momentum`, kind: "vector" as const, column: 4 + 9 * b },
    { name: `body${b}.forces.net`, kind: "vector" as const, column: 7 + 9 * b },
  ])
  return { cell: "cell", series, rows: n, width, data }
}

export const halvings = [1, 1 / 2, 1 / 4]

export function ladder(
  scene: Scene,
  method: Method,
  path = "body0.position",
  factors: readonly number[] = halvings,
): Ladder {
  return { factors, tracks: factors.map(factor => trackOf(simulate(scene, method, factor), path)!) }
}

/** Invented scenes. */
export const fall: Scene = {
  masses: [0.25],
  r: [0, 8],
  p: [0.5, 0],
  force: () => [0, -0.25 * 9.81],
  until: 1.2,
  dt: 0.001,
}

export const withDrag = (share: number): Scene => ({
  ...fall,
  p: [2, 3],
  force: (_, p) => {
    const v = p.map(x => x / 0.25)
    const speed = Math.hypot(...v)
    return v.map((x, i) => -share * 1.225 * 0.47 * 0.02 * speed * x - (i === 1 ? 0.25 * 9.81 : 0))
  },
})

/** A mass that bounces on an undamped spring floor: case I08. */
export const bounce = (stiffness = 2000, dt = 0.0005): Scene => ({
  masses: [0.2],
  r: [0, 0.5],
  p: [0, 0],
  force: r => [0, -0.2 * 9.80665 + (r[1]! < 0 ? -stiffness * r[1]! : 0)],
  until: 1.5,
  dt,
})

/** Two masses on a stiff strut, thrown on a rough springy floor. */
export const strut = (floor = 1): Scene => ({
  masses: [0.2, 0.2],
  r: [0, 0.4, 0.25, 0.55],
  p: [0.2, 0, 0.2, -0.3],
  force: (r, p) => {
    const f = [0, -0.2 * 9.81, 0, -0.2 * 9.81]
    const d = [r[2]! - r[0]!, r[3]! - r[1]!]
    const length = Math.hypot(...d)
    const rest = Math.hypot(0.25, 0.15)
    for (let k = 0; k < 2; k++) {
      const pull = (8000 * (length - rest) * d[k]!) / length
      f[k]! += pull
      f[2 + k]! -= pull
    }
    for (let b = 0; b < 2; b++) {
      const depth = -r[2 * b + 1]!
      if (depth <= 0) continue
      const normal = floor * 4000 * depth
      f[2 * b + 1]! += normal
      const slip = p[2 * b]! / 0.2
      f[2 * b]! -= 0.4 * normal * Math.tanh(slip / 0.01)
    }
    return f
  },
  until: 0.6,
  dt: 0.0002,
})
