import { math, rungeKutta4, type System, springForce, vec3 } from "../../../src/physics/index.ts"

/** Functions whose rounding the standard leaves to the engine. */
const names = [
  "acos",
  "acosh",
  "asin",
  "asinh",
  "atan",
  "atan2",
  "atanh",
  "cbrt",
  "cos",
  "cosh",
  "exp",
  "expm1",
  "hypot",
  "log",
  "log10",
  "log1p",
  "log2",
  "pow",
  "sin",
  "sinh",
  "tan",
  "tanh",
] as const

/** FNV-1a over the bits of numbers, NaN as one. */
function digest(values: Iterable<number>): string {
  const view = new DataView(new ArrayBuffer(8))
  let hash = 0x811c9dc5
  for (const value of values) {
    view.setFloat64(0, Number.isNaN(value) ? Number.NaN : value)
    for (let i = 0; i < 8; i++) hash = Math.imul(hash ^ view.getUint8(i), 0x01000193)
  }
  return (hash >>> 0).toString(16).padStart(8, "0")
}

type Functions = Pick<Math, (typeof names)[number]>

function* valuesOf(of: Functions, name: (typeof names)[number]): Generator<number> {
  let seed = 7
  const random = () => {
    seed = (Math.imul(seed, 1664525) + 1013904223) | 0
    return (seed >>> 0) / 4294967296
  }
  const scales = [1, 1, 3, 40, 1000, 1e-6, 1e10]
  for (let i = 0; i < 200_000; i++) {
    const x = (2 * random() - 1) * scales[i % scales.length]!
    const y = (2 * random() - 1) * scales[(i * 5) % scales.length]!
    yield name === "pow"
      ? of.pow(Math.abs(x), y)
      : name === "atan2" || name === "hypot"
        ? of[name](x, y)
        : of[name](x)
  }
}

function* motion(): Generator<number> {
  let now: System = {
    time: 0,
    bodies: [{ mass: 0.3, position: vec3(1, 0.2, 0), momentum: vec3(0, 0.4, 0.1) }],
  }
  const law = ({ time, bodies: [b] }: System) => [
    springForce(b!.position, vec3(math.sin(3 * time), 0, 0), { stiffness: 20, restLength: 0.7 }),
  ]
  for (let n = 0; n < 20_000; n++) {
    now = rungeKutta4(now, law, 0.001)
    const { position, momentum } = now.bodies[0]!
    yield* [position.x, position.y, position.z, momentum.x, momentum.y, momentum.z]
  }
}

/** One digest for each function of the library's Math, and for a motion of 20,000 steps. */
export function digests(): Record<string, string> {
  const all = Object.fromEntries(names.map(name => [name, digest(valuesOf(math, name))]))
  return { ...all, "a driven spring": digest(motion()) }
}

/** The same of the engine's own Math, which may differ. */
export function engineDigests(): Record<string, string> {
  return Object.fromEntries(names.map(name => [name, digest(valuesOf(Math, name))]))
}
