import { afterAll, describe, expect, it } from "vitest"
import { closeRunner, readSheet, runSheet, textOf } from "../worksheets/sheet-run.ts"

/*
 * The later worksheets of the course against something outside the project, run with their author's answers through
 * the real way of the data.
 */

afterAll(closeRunner)

const g = 9.81
const last = (values: readonly number[]): number => values[values.length - 1]!
const relative = (found: number, expected: number): number => Math.abs(found / expected - 1)

describe("tumble: rigid motion and impact of a body that is pressed on a rough floor (textbook)", () => {
  it("in flight the centre falls freely and the angular momentum stays m l² ω / 2", async () => {
    const run = await runSheet("tumble")
    const t = last(run.column("flight", "t"))
    const y = last(run.column("flight", "centre.position.y"))
    expect(Math.abs(y - (1 - (g * t * t) / 2 - (g * t * 0.0004) / 2))).toBeLessThan(1e-11)
    for (const L of run.column("flight", "angularMomentum"))
      expect(relative(L, (0.2 * 0.4 ** 2 * 18.5) / 2)).toBeLessThan(1e-12)
  })

  it("each step changes the angular momentum by torque times time, exactly at any step", async () => {
    const run = await runSheet("tumble")
    const L = run.column("deck", "angularMomentum")
    const torque = run.column("deck", "torque")
    for (let i = 1; i < L.length; i++)
      expect(Math.abs(L[i]! - L[i - 1]! - torque[i]! * 0.0004)).toBeLessThan(1e-13)
    expect(Math.max(...torque.map(Math.abs))).toBeGreaterThan(1)
  })

  it("while an end slides, its impulse along the deck is μ times that across it (R. Cross, Am. J. Phys. 70 (2002) 1093)", async () => {
    const run = await runSheet("tumble", { set: { mu: 0.05 } })
    const sum = (k: string): number =>
      ["A", "B"].flatMap(end => run.column("deck", `${end}.forces.deck.${k}`)).reduce((a, b) => a + b, 0)
    expect(sum("y")).toBeGreaterThan(0)
    expect(relative(-sum("x") / sum("y"), 0.05)).toBeLessThan(1e-10)
  })

  it("comes back to the hand at the spin that the question asks for, and does so in the limit of short steps", async () => {
    for (const stepFactor of [1, 0.25]) {
      const run = await runSheet("tumble", { set: { spin: 19.2 }, stepFactor })
      expect(Math.abs(last(run.column("deck", "centre.position.x")))).toBeLessThan(0.02)
    }
  })
})

describe("tide-and-moon: Kepler, published elements, CODATA and IAU values", () => {
  const G = 6.6743e-11

  it("the Moon returns after 2π sqrt(a³/(G (M + m))) (Kepler's third law for two bodies)", async () => {
    const run = await runSheet("tide-and-moon", { stepFactor: 0.25 })
    const t = run.column("moon", "t")
    const turned = run.column("moon", "turned")
    const i = turned.findIndex(angle => angle >= 360)
    const share = (360 - turned[i - 1]!) / (turned[i]! - turned[i - 1]!)
    const month = t[i - 1]! + share * (t[i]! - t[i - 1]!)
    expect(relative(month, 2 * Math.PI * Math.sqrt(3.844e8 ** 3 / (G * (5.972e24 + 7.346e22))))).toBeLessThan(
      1e-4,
    )
    expect(relative(month, 27.3217 * 86400)).toBeLessThan(2e-3)
  })

  it("the tide under the Moon is G m (1/(d − R)² − 1/d²), and half of that inwards at right angles, nearly", async () => {
    const lift = (await runSheet("tide-and-moon")).column("tide", "lift")
    const [m, d, R] = [7.346e22, 3.844e8, 6.371e6]
    expect(relative(lift[0]!, G * m * (1 / (d - R) ** 2 - 1 / d ** 2))).toBeLessThan(1e-9)
    expect(relative(lift[36]!, G * m * (1 / d ** 2 - 1 / (d + R) ** 2))).toBeLessThan(1e-9)
    expect(relative(-lift[18]!, (G * m * R) / d ** 3)).toBeLessThan(1e-3)
  })

  it("Mars follows the elements of E. M. Standish (JPL), with a gap of first order in the step", async () => {
    const gap = async (stepDays: number): Promise<number[]> =>
      (await runSheet("tide-and-moon", { set: { stepDays } })).column("mars", "gap")
    const coarse = Math.max(...(await gap(1)))
    const fine = Math.max(...(await gap(0.5)))
    expect(fine).toBeLessThan(2.5)
    expect(coarse / fine).toBeGreaterThan(1.8)
    expect(coarse / fine).toBeLessThan(2.2)
    const back = await runSheet("tide-and-moon")
    expect(Math.abs(last(back.column("mars", "mars.position.x")) / 206655e6 - 1)).toBeLessThan(1e-4)
  })
})

describe("measured: an invented film with a stated error", () => {
  const film = readSheet("measured").sheet.data[0]!

  it("shows in its table what the program compares with", async () => {
    const run = await runSheet("measured")
    const x = run.column("film", "film.position.x")
    const y = run.column("film", "film.position.y")
    expect(film.rows).toHaveLength(80)
    expect(film.rows.map(row => [row[1], row[2]])).toEqual(x.map((value, i) => [value, y[i]]))
  })

  it("scatters by the stated 2 mm about free flight before the contact (uniform acceleration, textbook)", () => {
    const misses = film.rows
      .filter(([t]) => t! < 0.385)
      .flatMap(([t, x, y]) => [x! - 2.4 * t!, y! - 0.75 + (g * t! * t!) / 2])
    const rms = Math.sqrt(misses.reduce((sum, miss) => sum + miss * miss, 0) / misses.length)
    expect(rms).toBeGreaterThan(0.0015)
    expect(rms).toBeLessThan(0.0025)
  })

  it("is fitted best by the numbers that the questions ask for, down to the stated error", async () => {
    const rms = async (stiffness: number, mu: number): Promise<number> =>
      last((await runSheet("measured", { set: { stiffness, mu } })).column("quality", "rms"))
    const best = await rms(650, 0.28)
    expect(best).toBeGreaterThan(1.7)
    expect(best).toBeLessThan(2.3)
    for (const [k, mu] of [
      [617, 0.28],
      [683, 0.28],
      [650, 0.263],
      [650, 0.297],
    ] as const)
      expect(await rms(k, mu)).toBeGreaterThan(1.4 * best)
  })
})

describe("find-the-fault: mended programs", () => {
  it("the bell swings with the period of a large amplitude, 2π sqrt(l/g) / agm(1, cos 0.3) (exact pendulum, textbook)", async () => {
    const run = await runSheet("find-the-fault")
    const t = run.column("bell", "t")
    const x = run.column("bell", "bell.position.x")
    const downward: number[] = []
    for (let i = 1; i < x.length; i++)
      if (x[i - 1]! > 0 && x[i]! <= 0)
        downward.push(t[i - 1]! + ((t[i]! - t[i - 1]!) * x[i - 1]!) / (x[i - 1]! - x[i]!))
    expect(downward).toHaveLength(2)
    const agm = (a: number, b: number): number =>
      Math.abs(a - b) < 1e-15 ? a : agm((a + b) / 2, Math.sqrt(a * b))
    const exact = (2 * Math.PI * Math.sqrt(2 / g)) / agm(1, Math.cos(0.3))
    expect(relative(downward[1]! - downward[0]!, exact)).toBeLessThan(3e-3)
  })

  it("the trolleys part with the velocities of an elastic impact (textbook)", async () => {
    const run = await runSheet("find-the-fault")
    expect(relative(last(run.column("trolleys", "A.momentum.x")) / 20, (0.8 * (20 - 30)) / 50)).toBeLessThan(
      0.01,
    )
    expect(relative(last(run.column("trolleys", "B.momentum.x")) / 30, (0.8 * 2 * 20) / 50)).toBeLessThan(
      0.01,
    )
  })

  it("the load swings about the place where the rope carries it, m g / k below, with period 2π / sqrt(k/m − (c/2m)²)", async () => {
    const run = await runSheet("find-the-fault")
    const t = run.column("hoist", "t")
    const y = run.column("hoist", "load.position.y").map(value => value + (50 * g) / 2000)
    const rising: number[] = []
    for (let i = 1; i < y.length; i++)
      if (y[i - 1]! < 0 && y[i]! >= 0)
        rising.push(t[i - 1]! + ((t[i]! - t[i - 1]!) * y[i - 1]!) / (y[i - 1]! - y[i]!))
    const period = (rising[rising.length - 1]! - rising[0]!) / (rising.length - 1)
    expect(relative(period, (2 * Math.PI) / Math.sqrt(2000 / 50 - 0.4 ** 2))).toBeLessThan(1e-3)
  })

  it("as given, each program breaks the book that the sheet says", async () => {
    const run = await runSheet("find-the-fault", { answers: {} })
    expect(Math.max(...run.column("hoist", "energy"))).toBeGreaterThan(1000)
    expect(Math.abs(last(run.column("trolleys", "total")) - 16)).toBeGreaterThan(100)
    expect(Math.max(...run.column("bell", "sum"))).toBeGreaterThan(50)
  })
})

describe("make-your-own: the sample answer", () => {
  it("uses up the forward momentum with the impulse that the first question asks for (momentum principle)", async () => {
    const run = await runSheet("make-your-own")
    const impulse = run.column("landing", "parcel.forces.brake.x").reduce((sum, F) => sum + F * 0.002, 0)
    expect(Math.abs(impulse + 15)).toBeLessThan(1e-12)
    expect(last(run.column("landing", "parcel.momentum.x"))).toBe(0)
    expect(Math.abs(last(run.column("landing", "parcel.position.x")) - 2)).toBeLessThan(0.05)
  })
})

describe("read-the-motion: the pictures are what the closed forms give", () => {
  const rows = [...textOf("read-the-motion").matchAll(/^\| flash .*\n.*\n((?:\| \d \|.*\n)+)/gm)].map(match =>
    match[1]!
      .trim()
      .split("\n")
      .map(row => Number(row.split("|")[2])),
  )

  it("first picture: x = v t − μ g t²/2 with 3 m/s and 0.25 (uniform deceleration, textbook), to 1 mm", () => {
    expect(rows[0]).toHaveLength(7)
    const misses = rows[0]!.map((x, i) => Math.abs(x - (0.6 * i - (0.25 * g * (0.2 * i) ** 2) / 2)))
    expect(Math.max(...misses)).toBeLessThan(6e-4)
  })

  it("second picture and the stepped cap: v∞²/g ln cosh(g t/v∞) (Timmerman and van der Weele 1999)", async () => {
    const depth = (t: number): number => (36 / g) * Math.log(Math.cosh((g * t) / 6))
    expect(rows[1]).toHaveLength(9)
    expect(Math.max(...rows[1]!.map((y, i) => Math.abs(y - depth(0.2 * i))))).toBeLessThan(6e-4)
    const run = await runSheet("read-the-motion")
    const t = run.column("cap", "t")
    const y = run.column("cap", "cap.position.y")
    for (let i = 0; i < t.length; i += 50) expect(Math.abs(y[i]! + depth(t[i]!))).toBeLessThan(6e-3)
    expect(relative(last(run.column("cap", "speed")), 6 * Math.tanh((g * 1.6) / 6))).toBeLessThan(1e-3)
  })
})
