import { describe, expect, it } from "vitest"
import { unitsRun } from "../../src/cell/units-run/index.ts"
import { shippedPrograms } from "../equation/worksheets.ts"

const shipped = new Map(shippedPrograms().map(one => [one.name, one]))

/** A worksheet's program with one stretch of it changed, once, as a student might have it. */
function mistaken(name: string, right: string, wrong: string, occurrence = 0) {
  const { program, parameters } = shipped.get(name)!
  let at = -1
  for (let i = 0; i <= occurrence; i++) at = program.text.indexOf(right, at + 1)
  if (at < 0) throw new Error(`${name} has no “${right}”`)
  const shift = wrong.length - right.length
  const move = (offset: number): number => (offset > at ? offset + shift : offset)
  const text = program.text.slice(0, at) + wrong + program.text.slice(at + right.length)
  const changed = {
    ...program,
    text,
    cells: program.cells.map(cell => ({ ...cell, from: move(cell.from), to: move(cell.to) })),
    blanks: program.blanks.map(blank => ({ ...blank, from: move(blank.from), to: move(blank.to) })),
  }
  return unitsRun(changed, parameters).problems
}

// worksheet, what the answer has, what the mistake makes of it, the code, words of the message and of what to do
const mistakes: readonly (readonly [string, string, string, string, string, string])[] = [
  ["lamp-key", "p = p + Fnet * dt", "p = p + Fnet", "unlike-sum", "“p + Fnet” adds momentum (kg m/s) and a force (N).", "Is the time step missing? Multiply “Fnet” by dt."],
  ["lamp-key", "p = p + Fnet * dt", "p += Fnet", "unlike-sum", "“p += Fnet” adds momentum", "Multiply “Fnet” by dt."],
  ["lamp-key", "p = p + Fnet * dt", "p = Fnet + p", "unlike-sum", "adds a force (N) and momentum", "Multiply “Fnet” by dt."],
  ["lamp-key", "p = p + Fnet * dt", "p = p + Fnet * dt * dt", "unlike-sum", "kg m", "Is the time step there once too often?"],
  ["lamp-key", "p = p + Fnet * dt", "p = p + Fnet / dt", "unlike-sum", "adds momentum", "Check what each side stands for"],
  ["lamp-key", "p = p + Fnet * dt", "p = Fnet", "wrong-unit", "p is declared as momentum (kg m/s); “Fnet” is a force (N).", "Multiply “Fnet” by dt."],
  ["lamp-key", "p = p + Fnet * dt", "p = p + g * dt", "unlike-sum", "and a velocity (m/s)", "Is the mass missing? Multiply “g * dt” by mass."],
  ["lamp-key", "(p / mass) * dt", "p * dt", "unlike-sum", "adds a length (m)", "Is the mass missing? Divide “p * dt” by mass"],
  ["lamp-key", "(p / mass) * dt", "p / mass", "unlike-sum", "and a velocity (m/s)", "Is the time step missing? Multiply “p / mass” by dt."],
  ["lamp-key", "(p / mass) * dt", "p", "unlike-sum", "and momentum (kg m/s)", "Are the mass and the time step missing? Divide “p” by mass"],
  ["lamp-key", "(p / mass) * dt", "(p * mass) * dt", "unlike-sum", "adds a length (m)", "Only like quantities add."],
  ["lamp-key", "9.81 * t * t", "9.81 * t^2", "caret-no-power", "The sign ^ makes no power here", "t ** 2"],
  ["lamp-key", "mass * g", "g", "wrong-unit", "Fg is declared as a force (N); “g” is a field strength (N/kg).", "Is the mass missing? Multiply “g” by mass."],
  ["lamp-key", "t < tEnd", "t < height", "unlike-comparison", "compares time (s) with a length (m).", "Only like quantities can be compared."],
  ["lamp-key", "r.y > 0", "r.y > t", "unlike-comparison", "compares a length (m) with time (s).", "Only like quantities can be compared."],
  ["lamp-key", "gap: r.y - yFormula", "gap: r.y - t", "unlike-sum", "subtracts a length (m) minus time (s).", "Only like quantities add."],
  ["fender", "stiffness * squeeze * away", "stiffness * away", "wrong-unit", "Ffender is declared as a force (N); “stiffness * away” is a stiffness (N/m).", "squeeze"],
  ["fender", "stiffness * squeeze * away", "stiffness * squeeze", "number-for-vector", "Ffender is declared as a vector; “stiffness * squeeze” is a number.", "Multiply the number by a direction"],
  ["fender", "stiffness * squeeze + damping * rate", "stiffness * squeeze + damping * squeeze", "unlike-sum", "adds a force (N)", "Only like quantities add."],
  ["fender", "stiffness * squeeze + damping * rate", "stiffness * squeeze + damping", "unlike-sum", "and a damping coefficient", "rate"],
  ["fender", "freeLength - r.x", "freeLength - p.x", "unlike-sum", "subtracts a length (m) minus momentum (kg m/s).", "Only like quantities add."],
  ["fender", "-p.x / mass", "-p.x", "wrong-unit", "rate is declared as a speed (m/s); “-p.x” is momentum (kg m/s).", "Is the mass missing? Divide “-p.x” by mass: momentum over mass is velocity."],
  ["fender", "(p.x * p.x) / (2 * mass)", "p.x / (2 * mass)", "wrong-unit", "energy is declared as energy or torque (J)", "Make the right side energy or torque"],
  ["slipway", "Math.min(mu * N, magnitude(p) / dt)", "Math.min(mu * N, magnitude(p))", "unlike-parts", "Math.min gets a force (N) and momentum (kg m/s).", "All its values must be of one kind."],
  ["slipway", "-size * unit(p)", "-size * p", "wrong-unit", "Ffriction is declared as a force", "unit(p)"],
  ["slipway", "(slope * Math.PI) / 180", "slope", "other-unit", "Math.sin takes an angle in radians; “alpha” is an angle or ratio in °.", "multiply by Math.PI / 180"],
  ["slipway", "mass * speed * vec3(1, 0, 0)", "speed * vec3(1, 0, 0)", "wrong-unit", "p is declared as momentum (kg m/s); “speed * vec3(1, 0, 0)” is a velocity (m/s).", "Is the mass missing? Multiply “speed * vec3(1, 0, 0)” by mass."],
  ["slipway", "const Fnormal: Vec3<'N'> = N *", "const Fnormal: Vec3<'N'> = mass *", "wrong-unit", "Fnormal is declared as a force (N)", "Is g missing?"],
  ["slipway", "(Fg + Fnormal + Ffriction) * dt", "Fg * dt + Fnormal + Ffriction", "unlike-sum", "", "Is the time step missing? Multiply “Fnormal” by dt."],
  ["two-floats", "stiffness * stretch * unit(d)", "stiffness * stretch * d", "wrong-unit", "FonA is declared as a force (N)", "Is a length where a direction belongs? Use unit(d) in place of d."],
  ["two-floats", "long - restLength", "long - stiffness", "unlike-sum", "subtracts a length (m) minus a stiffness (N/m).", "Only like quantities add."],
  ["tumble", "vC + cross(omega, r - rStart)", "vC + omega", "unlike-sum", "an angular velocity (rad/s)", "Is a vector product missing? Write cross(omega, arm)"],
  ["tumble", "vC + cross(omega, r - rStart)", "omega", "wrong-unit", "“omega” is an angular velocity (rad/s)", "Write cross(omega, arm)"],
  ["tumble", "cross(rA - rC, pA) + cross(rB - rC, pB)", "pA", "wrong-unit", "L is declared as angular momentum", "Write cross(arm, pA)"],
  ["tumble", "cross(armA, deckA)", "deckA", "wrong-unit", "", "Write cross(arm, deckA)"],
  ["tumble", "-size * unit(along)", "-size * cross(r, unit(along))", "wrong-unit", "", "Make the right side a force"],
  ["tide-and-moon", "moon * field(earth, d)", "field(earth, d)", "wrong-unit", "FonMoon is declared as a force (N)", "Is the mass missing? Multiply “field(earth, d)” by the mass of the body."],
  ["tide-and-moon", "(p / mars) * dtMars", "p * dtMars", "unlike-sum", "adds a length (m)", "Is the mass missing? Divide “p * dtMars” by the mass of the body"],
] // biome-ignore format: one mistake a row

describe("typical mistakes of units in the answers of shipped worksheets", () => {
  it.each(mistakes)("%s: “%s” as “%s”", (name, right, wrong, code, words, todo) => {
    const [first] = mistaken(name, right, wrong)
    expect(first, "a problem").toBeDefined()
    expect(first!.code).toBe(code)
    expect(first!.text).toContain(words)
    expect(first!.todo).toContain(todo)
    expect(first!.where!.cell).toBeDefined()
  })

  it("leaves ^ between two counts alone", () => {
    expect(mistaken("lamp-key", "n = n + 1", "n = n + (n ^ n) + 1")).toEqual([])
  })

  it("says in which blank and line the mistake stands", () => {
    const [first] = mistaken("lamp-key", "p = p + Fnet * dt", "p = p + Fnet")
    expect(first!.where).toMatchObject({ cell: "fall", blank: "update" })
    expect(first!.excerpt).toBe("p = p + Fnet")
  })
})
