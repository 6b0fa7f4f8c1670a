import fc from "fast-check"
import { describe, expect, it } from "vitest"
import { unitsRun } from "../../src/cell/units-run/index.ts"
import { shippedPrograms } from "../equation/worksheets.ts"
import { problemsOf, programOf, unitsOf } from "./program.ts"

const given = `
const mass: Scalar<'kg'> = 0.4
const k: Scalar<'N/m'> = 20
let dt: Scalar<'s'> = 0.01
let t: Scalar<'s'> = 0
let r: Vec3<'m'> = vec3(0, 1, 0)
let p: Vec3<'kg m/s'> = vec3(1, 0, 0)
let F: Vec3<'N'> = vec3(0, -1, 0)
`
const codes = (text: string) => problemsOf(given + text).map(one => one.code)

describe("the units run raises no alarm where units fit or are not known", () => {
  it.each([
    "p = p + F * dt; r = r + p / mass * dt",
    "p = p + F * 0.01",
    "p = p + 0.001 * F",
    "F = 9.81 * vec3(0, -0.4, 0)",
    "const g = 9.81; F = vec3(0, -mass * g, 0)",
    "const m = 2; F = m * vec3(0, -9.81, 0)",
    "const c = 2; F = F - c * (p / mass)",
    "F = F - 4 * (p / mass)",
    "F = -0.5 * (p / mass)",
    "p = mass * vec3(3, -0.5, 0)",
    "const E: Scalar<'J'> = 0.5 * k * r.x * r.x + dot(p, p) / (2 * mass) + 1 / 2 * mass * dot(p / mass, p / mass)",
    "const omega: Scalar<'rad/s'> = Math.sqrt(k / mass); const x: Scalar<'m'> = r.x * Math.cos(omega * t + 1)",
    "if (t > 0.5 && r.y < 0 && r.y === 0 && magnitude(p) > 1e-9) t = 0",
    "const v = (4 / 3) * Math.PI * r.x * r.x * r.x; const w: Scalar<'m^3'> = v",
    "const half = 1 / 2; const E: Scalar<'J'> = half * k * r.x ** 2",
    "const s: Scalar<'kg^2'> = Math.pow(mass, 2)",
    "const deg: Scalar<'°'> = 30; const a = deg * Math.PI / 180; const b = Math.sin(a)",
    "const km: Scalar<'km'> = 3; const x: Scalar<'m'> = km * 1000; const y: Scalar<'km'> = r.x / 1000",
    "const { x, y } = r; const z: Scalar<'m'> = x + y",
    "const [a, b] = [r, p]; r = r + a; p = p + b",
    "const list: Vec3<'m'>[] = []; list.push(r); for (const one of list) r = r + one",
    "const s = 'x' + t; const u = `v`; const q = unknownName(r, p) + r; r = q",
    "class A { f() { return 1 } }; const a = new A(); t = a.f() + t",
    "function f(a: Vec3<'m'>): Vec3<'N'> { return -k * a }\n F = f(r)",
    "const f = (s: Scalar<'m'>) => k * s; F = f(r.y) * vec3(0, 1, 0)",
    "switch (1) { case 1: r = r + r; break; default: p = p + p }",
    "try { throw new Error('x') } catch (e) { t = t + dt }",
    "const x = Math.max(0, k * r.y); F = x * unit(r)",
    "const w = r?.x ?? 0; t = t || dt",
    "let best = Infinity; best = Math.min(best, r.x); let u = NaN; u = u + r.x",
    "const b = { position: r, momentum: p, mass }; b.momentum = b.momentum + F * dt; r = centreOfMass([b])",
    "F = springForce(r, vec3(0, 0, 0), { stiffness: k, restLength: 0.3, dampingCoefficient: 0.1, velocity: p / mass })",
    "const s0 = { time: 0, bodies: [{ mass, position: r, momentum: p }] }; const s1 = semiImplicitEuler(s0, s => s.bodies.map(b => -k * b.position), dt); r = s1.bodies[0].position; p = s1.bodies[0].momentum",
    "type Ball = { at: Vec3<'m'>; mass: Scalar<'kg'> }\n const b: Ball = { at: vec3(1, 2, 3), mass: 2 }; F = -k * b.at",
    "for (const b of [{ q: r }]) r = r + b.q; let i = 0; for (; i < 3; i++) t = t + i * dt",
    "const a: Scalar<'m/s^2'> = standardGravity; F = mass * a * vec3(0, -1, 0)",
  ])("%s", text => expect(problemsOf(given + text)).toEqual([]))
})

describe("the units run finds", () => {
  it.each([
    ["a sum in a branch that is not taken", "if (r.y < -100) { p = p + F }", "unlike-sum"],
    ["a sum in the other branch", "if (r.y > -100) { t = t + dt } else { p = p + F }", "unlike-sum"],
    ["a sum in a choice that is not made", "const q = r.y > 0 ? r : r + p", "unlike-sum"],
    ["a sum after &&", "const q = r.y < 0 && r.x + t > 0", "unlike-sum"],
    ["a sum in a loop that is never entered", "while (r.y > 100) { p = p + F }", "unlike-sum"],
    ["a sum in a loop that never ends", "while (true) { p = p + F }", "unlike-sum"],
    ["a sum in a function that is called", "function f() { return p + F }\n f()", "unlike-sum"],
    ["a sum in a function that is never called", "function f(a: Vec3<'m'>) { return a + F }", "unlike-sum"],
    ["a sum in an arrow function in a list method", ";[r].map(one => one + p)", "unlike-sum"],
    ["a wrong result", "function f(): Vec3<'N'> { return p }\n f()", "wrong-unit"],
    ["a wrong argument of a function of the program", "function f(a: Scalar<'m'>) {}\n f(t)", "wrong-unit"],
    ["a wrong field", "const b: { at: Vec3<'m'> } = { at: p }", "wrong-unit"],
    ["a wrong field, later", "const b: { at: Vec3<'m'> } = { at: r }; b.at = p", "wrong-unit"],
    ["a wrong item", "const list: Vec3<'m'>[] = []; list.push(p)", "wrong-unit"],
    ["a spring given a force", "springForce(F, r, { stiffness: k })", "wrong-quantity"],
    ["a wrong option", "springForce(r, r, { stiffness: mass })", "wrong-quantity"],
    [
      "a force law that gives momenta",
      "advance({ time: 0, bodies: [{ mass, position: r, momentum: p }] }, s => [s.bodies[0].momentum], { timeStep: dt, steps: 3 })",
      "wrong-quantity",
    ],
    ["the sine of a length", "Math.sin(r.x)", "wrong-quantity"],
    ["the exponential of a time", "Math.exp(-t)", "wrong-quantity"],
    ["the sine of degrees", "const d: Scalar<'°'> = 3; Math.sin(d)", "other-unit"],
    ["metres and kilometres", "const far: Scalar<'km'> = 3; r.x + far", "other-unit"],
    ["a comparison with kilometres", "const far: Scalar<'km'> = 3; r.x > far", "other-unit"],
    ["unlike components", "vec3(r.x, p.y, 0)", "unlike-parts"],
    ["an unlike sum of vectors", "sum(F, p)", "unlike-parts"],
    ["an unlike method", "p.add(F)", "unlike-parts"],
    ["an exponent with a unit", "2 ** t", "exponent-with-unit"],
    ["a unit that is none", "const x: Scalar<'Kg'> = 3", "unknown-unit"],
    ["a unit with two readings", "const x: Scalar<'m/s/s'> = 3", "ambiguous-unit"],
    ["a unit in a type", "type B = { v: Vec3<'m**2'> }", "unreadable-unit"],
    ["a vector for a number", "t = r", "number-for-vector"],
    [
      "a stiffness of a wrong dimension from an unannotated name",
      "const c = k * mass; F = F + c * r",
      "unlike-sum",
    ],
    ["a constant of the library", "t = t + standardGravity", "unlike-sum"],
  ])("%s", (_, text, code) => expect(codes(text)).toContain(code))

  it.each([
    ["springForce(F, r, { stiffness: k })", "Give it a length."],
    ["Math.sin(r.x)", "Give it an angle, or a pure number."],
    ["updateMomentum(p, F, mass)", "Give it time."],
    ["F = p", "Make the right side a force, or correct the unit in the declaration."],
  ])("and guesses no cause where none is clear: %s", (text, todo) =>
    expect(problemsOf(given + text)).toMatchObject([{ todo }]),
  )

  it("each fault once, at its place, however often the line runs", () => {
    const found = problemsOf(`${given}while (t < 1) {\n  p = p + F\n  t = t + dt\n}`)
    expect(found).toMatchObject([{ code: "unlike-sum", at: "p + F", line: 10 }])
  })

  it("what parameters have units for", () => {
    const found = problemsOf("let x: Scalar<'m'> = speed", [{ name: "speed", unit: "m/s", value: 3 }])
    expect(found).toMatchObject([{ code: "wrong-unit", at: "speed" }])
    expect(problemsOf("let x: Scalar<'m'> = odd", [{ name: "odd", unit: "nonsense", value: 3 }])).toEqual([])
  })
})

describe("a branch that is only tried", () => {
  it("leaves no trace in variables, lists and objects", () => {
    const tried = `
let a: Scalar<'m'> = 1
const list = [1], box = { v: 1 }
if (a > 2) { a = 5; list.push(7); list[0] = 9; box.v = 3; box.w = 4; while (true) { a = a + 1 } }
record(a, { n: list.length === 1 && list[0] === 1 && box.v === 1 && box.w === undefined && a === 1 ? q : 0 })`
    expect(unitsOf(tried, [{ name: "q", unit: "kg", value: 1 }]).n).toBe("kg")
  })
})

describe("units of what lines set", () => {
  const lineUnits = (text: string) => {
    const { lines } = unitsRun(programOf(text), [])
    return Object.entries(lines).map(([at, unit]) => `${/^[\w.]+/.exec(text.slice(Number(at)))?.[0]} ${unit}`)
  }
  it("are known where a declaration or the law gives them, at the name on the left", () =>
    expect(
      lineUnits(
        `${given}const v = p / mass\nr = r + v * dt\np += F * dt\nfunction f(x: Scalar<'m'>) { const push = k * x; return push }\nconst w = f(r.x)`,
      ).slice(7),
    ).toEqual(["v m/s", "r m", "p kg m/s", "x m", "push N", "w N"]))
  it("are left out where a bare number or something unknown is set", () =>
    expect(lineUnits("const n = 3\nlet a = n + 1\nconst s = unknownName(a)")).toEqual([]))
})

describe("units of what is recorded", () => {
  it("come from annotations as they were written, else in the customary form", () => {
    const units = unitsOf(`${given}
let A: Scalar<'m^2'> = 1
record(t, { ball: { position: r, momentum: p, forces: { spring: -k * r } }, E: k * r.x * r.x, torque: r.cross(F), A, n: 3, share: mass / mass })`)
    expect(units).toEqual({
      t: "s",
      "ball.position": "m",
      "ball.momentum": "kg m/s",
      "ball.forces.spring": "N",
      E: "J",
      torque: "N m",
      A: "m²",
      share: "1",
    })
  })
})

describe("units of what two cells record under one name", () => {
  const cells = ["one", "two", "three"].map(name => ({ name, from: 0, to: 0 }))
  const texts = [
    "const keep = (t, q) => record(t, { mean: q })\nlet a: Scalar<'m'> = 1\nkeep(0, a)",
    "let b: Scalar<'kg'> = 2\nrecord(0, { mean: b })",
    "let c: Scalar<'s'> = 3\nkeep(0, c)",
  ]
  it("are each cell's own, also where a function of an earlier cell records", () => {
    let text = ""
    const places = cells.map(({ name }, i) => {
      const from = text.length
      text += `${texts[i]}\n`
      return { name, from, to: text.length - 1 }
    })
    const { unitsByCell, units } = unitsRun({ ...programOf(text), cells: places }, [])
    expect(unitsByCell).toEqual({
      one: { t: "s", mean: "m" },
      two: { t: "s", mean: "kg" },
      three: { t: "s", mean: "s" },
    })
    expect(units.mean).toBe("m")
  })
})

describe("the units run on text that is no program", () => {
  const whole = shippedPrograms()
    .map(one => one.program.text)
    .join("\n")
  it("answers any cut and any edit, within its bound", () => {
    const snippet = fc.constantFrom(
      "(",
      ")",
      "{",
      "}",
      "'",
      "`$" + "{",
      "=",
      "+",
      "*",
      "=>",
      "[",
      "?",
      ".",
      "while(true)",
      "f()",
      "\ud800",
    )
    fc.assert(
      fc.property(fc.nat(whole.length), fc.nat(900), snippet, fc.nat(900), (start, length, insert, at) => {
        const cut = whole.slice(start, start + length)
        expect(
          unitsRun(programOf(cut.slice(0, at) + insert + cut.slice(at)), [], { steps: 5000 }).problems.length,
        ).toBeLessThanOrEqual(20)
      }),
      { numRuns: 80, seed: 3 },
    )
  })
  it.each([
    "while (true) {}",
    "for (;;) { for (;;) { for (;;) {} } }",
    "const f = () => f(); f()",
    "function f(n) { f(n + 1); f(n + 2) } f(0)",
    "let a = []; while (true) a.push(a)",
    "let a = { b: 1 }; a.b = a; record(0, { a })",
    `const a = {}; ${Array.from({ length: 60 }, (_, i) => `a.f${i} = a`).join("; ")}; record(0, { a }); springForce(a, a, a)`,
    `type T = { ${Array.from({ length: 60 }, (_, i) => `f${i}: T`).join("; ")} }\nconst a = {}; ${Array.from({ length: 60 }, (_, i) => `a.f${i} = a`).join("; ")}; const b: T = a`,
    "[1].map(f => [1].map(g => [1].map(h => h)))",
    "const a = [[]]; a[0] = a; sum(...a); springForce(a, a, { stiffness: a })",
    "record(record, record); Math.sin(Math); vec3(vec3, Math.PI, [])",
    "__proto__ = 1; const o = { __proto__: null, constructor: 3 }; o.constructor(); o['__proto__']()",
    "constructor(1); toString(); Math.constructor('x')(); hasOwnProperty.call(1)",
    `x = ${"(".repeat(4000)}1${")".repeat(4000)}`,
    `x = ${"1+".repeat(4000)}1`,
    "\ufeff\r\nlet a = 1\r\n",
  ])("ends on %s", text => expect(() => unitsRun(programOf(text), [])).not.toThrow())
})
