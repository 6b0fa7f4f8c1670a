import { existsSync, readFileSync } from "node:fs"
import { describe, expect, it } from "vitest"
import * as physics from "../../src/physics/index.ts"
import { type PhysicsError, physicsProblemCodes, vec3 } from "../../src/physics/index.ts"

/** What calling throws, as its code and value; fails if it throws nothing or an error of another kind. */
function refused(call: () => unknown): PhysicsError {
  try {
    call()
  } catch (error) {
    expect(error).toBeInstanceOf(physics.PhysicsError)
    return error as PhysicsError
  }
  throw new Error("nothing was thrown")
}

/** Calls past the type checker, as untyped text of a cell may. */
function call(name: string, ...given: unknown[]): unknown {
  const library: Record<string, unknown> = { ...physics }
  return (library[name] as (...given: unknown[]) => unknown)(...given)
}

const r = vec3(1, 2, 3)
const body = { mass: 1, position: r, momentum: r }
const system = { time: 0, bodies: [body] }
const law = () => [r]

/** A call of each function that is right; too many arguments are added to it below. */
const rightCalls: Record<string, readonly unknown[]> = {
  across: [r, r],
  adaptiveRungeKutta: [system, law, { duration: 0.1 }],
  advance: [system, law, { timeStep: 0.1, steps: 1 }],
  airDensity: [0],
  along: [r, r],
  angleBetween: [r, r],
  angularMomentum: [r, r, r],
  angularVelocityOf: [r, r, physics.orientation()],
  bookStep: [physics.openBooks([body]), [body], [body], { push: [r] }, { timeStep: 1 }],
  buoyantForce: [r, { fluidDensity: 1, displacedVolume: 1 }],
  centreOfMass: [[body]],
  component: [r, r],
  contactDamping: [{ restitution: 0.5, stiffness: 1, mass: 1 }],
  contactMass: [1, 1, 1],
  contactRestitution: [{ stiffness: 1, mass: 1, dampingCoefficient: 1 }],
  cross: [r, r],
  damperForce: [r, vec3(0, 0, 0), { dampingCoefficient: 1, velocity: r }],
  distance: [r, r],
  dot: [r, r],
  explicitEuler: [system, law, 0.1],
  frictionForce: [r, r, { normalForce: r, kineticFrictionCoefficient: 0.1, timeStep: 0.1 }],
  gravityEnergy: [r, vec3(0, 0, 0), { mass: 1, otherMass: 1 }],
  gravityForce: [r, vec3(0, 0, 0), { mass: 1, otherMass: 1 }],
  immersedVolume: [{ kind: "sphere", radius: 1 }, 1],
  impulse: [r, 1],
  kineticEnergy: [r, 1],
  kineticFriction: [r, r, { kineticFrictionCoefficient: 0.1 }],
  largestTimeStep: [{ stiffness: 1, mass: 1 }],
  linearDrag: [r, 1],
  magnitude: [r],
  momentOfInertia: [r, r],
  momentsOfInertia: [{ kind: "hoop", mass: 1, radius: 1 }],
  momentumOf: [1, r],
  openBooks: [[body], {}],
  orientation: [r, 1],
  pairForces: [[body], () => undefined],
  parallelAxis: [1, 1, 1],
  planeContactEnergy: [r, { point: r, normal: r }, { stiffness: 1 }],
  planeContactForce: [r, { point: r, normal: r }, { stiffness: 1 }],
  pointInSpace: [{ position: r, orientation: physics.orientation() }, r],
  quadraticDrag: [r, { fluidDensity: 1, dragCoefficient: 1, area: 1 }],
  reducedMass: [1, 1],
  ropeEnergy: [r, r, { length: 1, stiffness: 1 }],
  ropeForce: [r, r, { length: 1, stiffness: 1 }],
  rotate: [r, r, 1],
  rotationalEnergy: [r, r, physics.orientation()],
  rungeKutta4: [system, law, 0.1],
  semiImplicitEuler: [system, law, 0.1],
  sphereContactEnergy: [r, vec3(0, 0, 0), { stiffness: 1, radius: 1, otherRadius: 1 }],
  sphereContactForce: [r, vec3(0, 0, 0), { stiffness: 1, radius: 1, otherRadius: 1 }],
  springEnergy: [r, vec3(0, 0, 0), { stiffness: 1 }],
  springForce: [r, vec3(0, 0, 0), { stiffness: 1 }],
  stepRigidBody: [
    {
      mass: 1,
      momentsOfInertia: r,
      position: r,
      momentum: r,
      orientation: physics.orientation(),
      angularMomentum: r,
    },
    r,
    r,
    0.1,
  ],
  torque: [r, r, r],
  totalAngularMomentum: [[body], r],
  totalKineticEnergy: [[body]],
  totalMass: [[body]],
  totalMomentum: [[body]],
  unit: [r],
  updateAngle: [1, vec3(0, 0, 1), 1, 1],
  updateAngularMomentum: [r, r, 1],
  updateMomentum: [r, r, 1],
  updateOrientation: [physics.orientation(), r, 0.1],
  updatePosition: [r, r, 1, 1],
  vec3: [1, 2, 3],
  velocityOf: [r, 1],
  velocityOfPoint: [r, r, r],
  velocityVerlet: [system, law, 0.1],
  weight: [1, r],
  weightEnergy: [1, r, r],
}

const takeAnything = ["asVec3", "isVec3", "sum", "PhysicsError", "Vec3"]
const functionNames = Object.entries(physics)
  .filter(([name, value]) => typeof value === "function" && !takeAnything.includes(name))
  .map(([name]) => name)

describe("each function of the library", () => {
  it("is held to these rules", () => expect(Object.keys(rightCalls).sort()).toEqual(functionNames.sort()))

  it.each(functionNames)(
    "%s takes a right call, refuses one argument too many, and no argument at all",
    name => {
      const right = rightCalls[name]!
      expect(() => call(name, ...right)).not.toThrow()
      expect(refused(() => call(name, ...right, 1)).code).toBe("wrong-argument-count")
      const withoutNeed = ["orientation"]
      if (!withoutNeed.includes(name)) {
        const codes = ["missing-option", "wrong-argument-count", "unknown-choice", "not-a-number"]
        expect(codes).toContain(refused(() => call(name)).code)
      }
    },
  )

  it.each(functionNames)("%s never lets NaN, a text or nothing pass for a vector or a number", name => {
    const right = rightCalls[name]!
    right.forEach((argument, i) => {
      const spoilt =
        typeof argument === "number"
          ? [Number.NaN, "2", r]
          : physics.isVec3(argument)
            ? [5, "up", { x: 1, y: Number.NaN, z: 0 }, { x: 1, y: 2 }]
            : []
      for (const value of spoilt) {
        const given = right.map((other, j) => (i === j ? value : other))
        const error = refused(() => call(name, ...given))
        expect(["not-finite", "not-a-number", "not-a-vector"]).toContain(error.code)
        expect(error.value).toEqual(value)
      }
    })
  })

  it.each(functionNames)("%s refuses a quantity under a name that it does not know", name => {
    const right = rightCalls[name]!
    const last = right.length - 1
    const options = right[last]
    const isOptions =
      typeof options === "object" && options !== null && Object.getPrototypeOf(options) === Object.prototype
    const takesOptions =
      isOptions && !physics.isVec3(options) && !("kind" in options) && !("xAxis" in options)
    if (!takesOptions) return
    const given = right.map((other, j) => (j === last ? { ...options, stifness: 3 } : other))
    expect(refused(() => call(name, ...given)).code).toBe("unknown-option")
  })
})

describe("a message of the physics library", () => {
  const cases: readonly [string, () => unknown, string, unknown][] = [
    ["vec3 with two components", () => call("vec3", 3, 4), "wrong-argument-count", 2],
    ["a number for a field", () => call("weight", 2, -9.81), "not-a-vector", -9.81],
    ["a vector for a mass", () => call("weight", r, r), "not-a-number", r],
    ["a negative mass", () => call("momentumOf", -2, r), "not-positive", -2],
    ["a time step of zero", () => call("updateMomentum", r, r, 0), "not-positive", 0],
    ["NaN in a vector", () => call("vec3", 1, Number.NaN, 0), "not-finite", Number.NaN],
    ["a text for a component", () => call("vec3", "1", 0, 0), "not-a-number", "1"],
    ["the unit of zero", () => physics.unit(vec3(0, 0, 0)), "zero-length", vec3(0, 0, 0)],
    ["a vector as a number", () => Math.sqrt(r as unknown as number), "vector-as-number", r],
    ["a vector added to a text", () => `${1}` + (r as unknown as string), "vector-as-number", r],
    ["a misspelt quantity", () => call("springForce", r, r, { stifness: 2 }), "unknown-option", 2],
    ["no stiffness", () => call("springForce", r, r, {}), "missing-option", undefined],
    ["a negative stiffness", () => call("springForce", r, r, { stiffness: -2 }), "out-of-range", -2],
    [
      "an unknown shape",
      () => call("momentsOfInertia", { kind: "disk" }),
      "unknown-choice",
      { kind: "disk" },
    ],
    ["one body for a list", () => call("totalMass", body), "not-a-list", body],
    ["forces in place of a law", () => call("rungeKutta4", system, [r], 0.1), "not-a-force-law", [r]],
    [
      "a tolerance out of reach",
      () => call("adaptiveRungeKutta", system, law, { duration: 1, maxSteps: 2, relativeTolerance: 1e-15 }),
      "too-many-steps",
      undefined,
    ],
  ]

  it.each(cases)(
    "for %s has a code, words for what was wrong and what to do, and the value",
    (_, wrong, code, value) => {
      const error = refused(wrong)
      expect(error.code).toBe(code)
      expect(error.text).toMatch(/^[A-Za-z].*[.]$/)
      expect(error.todo).toMatch(/^[A-Z].*[.?]$/)
      expect(error.message).toBe(`${error.text} ${error.todo}`)
      expect(error.text + error.todo).not.toMatch(/!|undefined|\[object/)
      if (value !== undefined) expect(error.value).toEqual(value)
    },
  )

  it("is produced above for every code, and every code has a page with the four parts", () => {
    expect([...new Set(cases.map(([, , code]) => code))].sort()).toEqual([...physicsProblemCodes].sort())
    for (const code of physicsProblemCodes) {
      const page = new URL(`../../public/problems/${code}.md`, import.meta.url)
      expect(existsSync(page), code).toBe(true)
      const text = readFileSync(page, "utf8")
      for (const part of [/^# /, /^## Smallest example$/m, /^## What to do$/m, /^## What it is not$/m]) {
        expect(text, code).toMatch(part)
      }
    }
  })

  it("names the nearest known word for a misspelt one", () => {
    expect(refused(() => call("springForce", r, r, { stifness: 2 })).todo).toBe('Did you mean "stiffness"?')
    expect(refused(() => call("momentsOfInertia", { kind: "disk" })).todo).toBe('Did you mean "disc"?')
  })
})

describe("a value in a message can be read", () => {
  it("a number with six figures; a symbol of the formula stays as the formula has it", () =>
    expect(refused(() => call("magnitude", 99.89843940670177)).message).toContain(
      "v must be a vector, and 99.8984 was given.",
    ))
  it("a vector likewise", () =>
    expect(refused(() => call("weight", vec3(1 / 3, 0, -2 / 3), r)).message).toContain(
      "(0.333333, 0, -0.666667)",
    ))
})
