import type { Problem } from "../problem.ts"

/** What a run recorded, as far as it is looked at here. */
export interface Motion {
  readonly series: readonly {
    readonly name: string
    readonly kind: "vector" | "scalar"
    readonly column: number
  }[]
  readonly rows: number
  readonly width: number
  readonly data: ArrayLike<number>
}

/** Swings in a row that must agree before it is said. */
const leastSwings = 12
/** Less growth than this a swing is a thing of friction or rounding, not of the time step. */
const leastGrowth = 1.02

export interface Overshoot {
  readonly name: string
  /** when it begins, s */
  readonly from: number
  /** each swing is this many times the one before */
  readonly growth: number
  /** the angle ω Δt of the oscillation that the steps cannot follow */
  readonly angle: number
  /** the longest step that could, s */
  readonly longest: number
}

/**
 * A motion that jumps to the other side at every step, farther each time: the mark of a time step too long for a stiff
 * spring. For momentum-first stepping (semi-implicit Euler, velocity Verlet) of an oscillator the step's matrix has determinant
 * 1 and trace 2 − (ω Δt)² [1], so eigenvalues −ρ and −1/ρ with ρ the growth a swing give (ω Δt)² = 2 + ρ + 1/ρ, and the
 * motion is bounded while ω Δt < 2.
 *
 * [1] E. Hairer, C. Lubich, G. Wanner, Geometric Numerical Integration, 2nd ed. (2006), sec. I.1 (common practice for the limit).
 *
 * @returns null where no recorded quantity does that up to the end of the recording
 */
export function overshootOf({ series, rows, width, data }: Motion): Overshoot | null {
  if (rows < leastSwings + 3) return null
  for (const one of series) {
    const axes = one.kind === "vector" ? ["x", "y", "z"] : [""]
    for (const [i, axis] of axes.entries()) {
      const column = one.column + i
      const at = (row: number): number => data[row * width + column]!
      let row = rows - 1
      while (row >= 2) {
        const before = at(row - 1) - at(row - 2)
        const swing = at(row) - at(row - 1)
        const ratio = -swing / before
        if (!(ratio >= leastGrowth) || ratio > 1e6) break
        row--
      }
      const swings = rows - 1 - row
      if (swings < leastSwings) continue
      const first = rows - 1 - Math.floor(swings / 2)
      const total = Math.abs((at(rows - 1) - at(rows - 2)) / (at(first) - at(first - 1)))
      const growth = total ** (1 / (rows - 1 - first))
      const angle = Math.sqrt(2 + growth + 1 / growth)
      const step = data[(rows - 1) * width]! - data[(rows - 2) * width]!
      return {
        name: axis === "" ? one.name : `${one.name}.${axis}`,
        from: data[row * width]!,
        growth,
        angle,
        longest: (step * 2) / angle,
      }
    }
  }
  return null
}

/** The words for it; the place stays that of the failure. */
export function timeStepProblem({ name, from, growth, angle, longest }: Overshoot): Problem {
  return {
    code: "time-step-too-long",
    text: `From t = ${short(from)} s on, ${name} jumps to the other side at every step, ${short(growth)} times as far each time. Real springs do not do that; a time step too long for a stiff spring does: here ω Δt is about ${short(angle)}, and it must stay below 2.`,
    todo: `Take a shorter time step, well below ${short(longest)} s, or a softer spring.`,
  }
}

const short = (x: number): string => String(Number(x.toPrecision(2)))
