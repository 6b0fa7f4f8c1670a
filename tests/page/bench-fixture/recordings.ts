import type { Recording, Series } from "../../../src/run/contract.ts"

/** Invented motions, stepped here with plain numbers: momentum first, then position. Nothing of src/physics is used. */

/** Packs rows of numbers, time first, under series names; names that end in `!` are scalars. */
export function record(
  cell: string,
  names: readonly string[],
  rows: readonly (readonly number[])[],
): Recording {
  let column = 1
  const series: Series[] = names.map(name => {
    const scalar = name.endsWith("!")
    const entry = { name: name.replace("!", ""), kind: scalar ? "scalar" : "vector", column } as const
    column += scalar ? 1 : 3
    return entry
  })
  return { cell, series, rows: rows.length, width: column, data: Float64Array.from(rows.flat()) }
}

/** A heaving line's weight thrown: mass 0.4 kg, 30 steps of 0.05 s and more, until it is below the start. */
export function projectile(cell: string, speed = 9, dt = 0.01, drag = 0): Recording {
  const m = 0.4
  let [x, y, px, py, t] = [0, 3, m * speed * 0.6, m * speed * 0.8, 0]
  const rows = [[t, x, y, 0, px, py, 0, 0, -9.81 * m, 0, 0, 0, 0]]
  while (y > 0 && rows.length < 20_000) {
    const v = Math.hypot(px, py) / m
    const [fx, fy] = [(-drag * v * px) / m, (-drag * v * py) / m]
    px += fx * dt
    py += (-9.81 * m + fy) * dt
    x += (px / m) * dt
    y += (py / m) * dt
    t += dt
    rows.push([t, x, y, 0, px, py, 0, 0, -9.81 * m, 0, fx, fy, 0])
  }
  const names = ["weight.position", "weight.momentum", "weight.forces.gravity", "weight.forces.drag"]
  return record(cell, names, rows)
}

/** A buoy dropped on a sprung deck: mass 2 kg, stiffness 900 N/m, damping 6 kg/s, a contact that never pulls. */
export function bounce(cell: string, height = 1.5, dt = 0.001, steps = 3000, stiffness = 900): Recording {
  const m = 2
  let [y, p, t] = [height, 0, 0]
  const rows: number[][] = []
  for (let k = 0; k < steps; k++) {
    const push = y < 0 ? Math.max(0, -stiffness * y - 6 * (p / m)) : 0
    p += (push - 9.81 * m) * dt
    y += (p / m) * dt
    t = (k + 1) * dt
    rows.push([t, 0, y, 0, 0, p, 0, 0, -9.81 * m, 0, 0, push, 0])
  }
  return record(cell, ["buoy.position", "buoy.momentum", "buoy.forces.weight", "buoy.forces.deck"], rows)
}

/** A crate that slides to rest: mass 12 kg, kinetic friction 0.35. */
export function slide(cell: string, speed = 3, dt = 0.002): Recording {
  const [m, mu] = [12, 0.35]
  let [x, p, t] = [0, m * speed, 0]
  const rows = [[t, x, 0, 0, p, 0, 0, 0, -9.81 * m, 0, 0, 9.81 * m, 0, -mu * m * 9.81, 0, 0]]
  for (let k = 0; k < 700; k++) {
    const friction = p > 0 ? -Math.min(mu * m * 9.81, p / dt) : 0
    p = friction === 0 ? 0 : p + friction * dt
    if (Math.abs(p) < 1e-12) p = 0
    x += (p / m) * dt
    t = (k + 1) * dt
    rows.push([t, x, 0, 0, p, 0, 0, 0, -9.81 * m, 0, 0, 9.81 * m, 0, friction, 0, 0])
  }
  const names = ["weight", "support", "friction"].map(f => `crate.forces.${f}`)
  return record(cell, ["crate.position", "crate.momentum", ...names], rows)
}

/** Floats on circles and figures of eight: many bodies at once, each with one force. */
export function crowd(cell: string, count = 50, rows = 2000): Recording {
  const names = Array.from({ length: count }, (_, k) => `float${k + 1}`)
  const data: number[][] = []
  for (let row = 0; row < rows; row++) {
    const t = row * 0.005
    const numbers = [t]
    for (let k = 0; k < count; k++) {
      const [cx, cy, r, w] = [(k % 10) * 1.2, Math.floor(k / 10) * 1.2, 0.4, 1 + k * 0.05]
      numbers.push(cx + r * Math.cos(w * t), cy + r * Math.sin(w * t), 0)
      numbers.push(-r * w * Math.sin(w * t), r * w * Math.cos(w * t), 0)
      numbers.push(-r * w * w * Math.cos(w * t), -r * w * w * Math.sin(w * t), 0)
    }
    data.push(numbers)
  }
  return record(
    cell,
    names.flatMap(n => [`${n}.position`, `${n}.momentum`, `${n}.forces.line`]),
    data,
  )
}

/** A charged dust grain circling across the page plane: the force has a part along the line of sight. */
/** A lamp on a cord of 2 m, let swing about: started level, a little too slow for a circle. Mass 1.5 kg, cord 4000 N/m. */
export function swing(cell: string): Recording {
  const [length, m, dt] = [2, 1.5, 0.002]
  const rows: number[][] = []
  let [x, y, z] = [0.9, -Math.sqrt(length ** 2 - 0.81), 0]
  let [px, py, pz] = [0, 0, m * 1.6]
  for (let k = 0; k < 3000; k++) {
    const r = Math.hypot(x, y, z)
    const pull = 4000 * (r - length)
    const [fx, fy, fz] = [(-pull * x) / r, (-pull * y) / r, (-pull * z) / r]
    rows.push([k * dt, x, y, z, px, py, pz, 0, -9.81 * m, 0, fx, fy, fz])
    px += fx * dt
    py += (fy - 9.81 * m) * dt
    pz += fz * dt
    x += (px / m) * dt
    y += (py / m) * dt
    z += (pz / m) * dt
  }
  return record(cell, ["lamp.position", "lamp.momentum", "lamp.forces.weight", "lamp.forces.cord"], rows)
}

export function helix(cell: string): Recording {
  const rows = Array.from({ length: 800 }, (_, k) => {
    const t = k * 0.01
    const [c, s] = [Math.cos(2 * t), Math.sin(2 * t)]
    return [t, t * 0.5, c, s, 0.5, -2 * s, 2 * c, 0, -4 * c, -4 * s]
  })
  return record(cell, ["bead.position", "bead.momentum", "bead.forces.wire"], rows)
}

/** Two buoys on a spring, many rows: what a student records who records every small step. */
export function long(cell: string, rows = 1_000_000): Recording {
  const width = 15
  const data = new Float64Array(rows * width)
  const [m, k, c, dt] = [1, 40, 0.004, 0.0001]
  let [x1, x2, p1, p2] = [0, 1.4, 0, 0]
  for (let row = 0; row < rows; row++) {
    const f = k * (x2 - x1 - 1) + c * (p2 - p1)
    p1 += f * dt
    p2 -= f * dt
    x1 += (p1 / m) * dt
    x2 += (p2 / m) * dt
    const at = row * width
    data[at] = (row + 1) * dt
    data.set([x1, 0, 0, p1, 0, 0], at + 1)
    data.set([x2, 0, 0, p2, 0, 0], at + 7)
    data[at + 13] = 0.5 * k * (x2 - x1 - 1) ** 2
    data[at + 14] = f
  }
  const names = ["left.position", "left.momentum", "right.position", "right.momentum"]
  const series: Series[] = names.map((name, n) => ({ name, kind: "vector", column: 1 + 3 * n }))
  series.push(
    { name: "springEnergy", kind: "scalar", column: 13 },
    { name: "tension", kind: "scalar", column: 14 },
  )
  return { cell, series, rows, width, data }
}

/** Two bodies on a spring with their forces, a set number of rows: what is dragged in the measurements. */
export function pair(cell: string, stiffness: number, rows = 10_000): Recording {
  const width = 19
  const data = new Float64Array(rows * width)
  const dt = 0.0005
  let [x1, y1, x2, y2, p1, q1, p2, q2] = [0, 0, 1.4, 0.3, 0, 0.6, 0, -0.6]
  for (let row = 0; row < rows; row++) {
    const [dx, dy] = [x2 - x1, y2 - y1]
    const far = Math.hypot(dx, dy)
    const f = stiffness * (far - 1)
    const [fx, fy] = [(f * dx) / far, (f * dy) / far]
    p1 += fx * dt
    q1 += fy * dt
    p2 -= fx * dt
    q2 -= fy * dt
    x1 += p1 * dt
    y1 += q1 * dt
    x2 += p2 * dt
    y2 += q2 * dt
    data.set(
      [(row + 1) * dt, x1, y1, 0, p1, q1, 0, fx, fy, 0, x2, y2, 0, p2, q2, 0, -fx, -fy, 0],
      row * width,
    )
  }
  const names = ["left", "right"].flatMap(b => [`${b}.position`, `${b}.momentum`, `${b}.forces.rope`])
  const series: Series[] = names.map((name, n) => ({ name, kind: "vector", column: 1 + 3 * n }))
  return { cell, series, rows, width, data }
}

/** A float that swings up under its rope until the rope is slack, and an arm on a strut of 1.2 m that turns about the wall. */
export function moored(cell: string, rows = 400): Recording {
  const data = Array.from({ length: rows }, (_, k) => {
    const t = k * 0.01
    const [x, y] = [0.9 * Math.sin(1.4 * t), -0.1 + 0.7 * Math.sin(0.8 * t) ** 2]
    const turn = 0.5 * Math.sin(2 * t)
    return [t, x, y, 0, -1.2 + 1.2 * Math.cos(turn), 0.4 + 1.2 * Math.sin(turn), 0]
  })
  return record(cell, ["float.position", "arm.position"], data)
}
