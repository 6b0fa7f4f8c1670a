import { type Corpus, fault, right, slip } from "./corpus.ts"

const update = (text: string) => ({ update: text })
const formula = (text: string) => ({ formula: text })

export const lampKey: Corpus = {
  worksheet: "lamp-key",
  right: [
    right("as the sheet has it", update("p = p + Fnet * dt\nr = r + (p / mass) * dt")),
    right("short forms", update("p += Fnet * dt\nr += p / mass * dt")),
    right("factors turned round", update("p = p + dt * Fnet\nr = r + dt / mass * p")),
    right(
      "methods instead of operators",
      update("p = p.add(Fnet.times(dt))\nr = r.add(p.over(mass).times(dt))"),
    ),
    right("explicit Euler, position first", update("r = r + (p / mass) * dt\np = p + Fnet * dt")),
    right(
      "explicit Euler with the old momentum kept",
      update("const pOld = p\np = pOld + Fnet * dt\nr = r + (pOld / mass) * dt"),
    ),
    right(
      "mean of old and new momentum",
      update("const before = p\np = p + Fnet * dt\nr = r + ((before + p) / (2 * mass)) * dt"),
    ),
    right(
      "velocity Verlet",
      update("const a = Fnet / mass\nr = r + (p / mass) * dt + 0.5 * a * dt * dt\np = p + Fnet * dt"),
    ),
    right(
      "by velocity",
      update("let v = p / mass\nv = v + (Fnet / mass) * dt\nr = r + v * dt\np = mass * v"),
    ),
    right(
      "impulse named first",
      update("const J: Vec3<'N s'> = Fnet * dt\np = p + J\nconst v: Vec3<'m/s'> = p / mass\nr = r + v * dt"),
    ),
    right(
      "a helper function",
      update(
        "function velocity(q: Vec3<'kg m/s'>) {\n  return q / mass\n}\np = p + Fnet * dt\nr = r + velocity(p) * dt",
      ),
    ),
    right(
      "an arrow function",
      update("const step = (q, rate) => q + rate * dt\np = step(p, Fnet)\nr = step(r, p / mass)"),
    ),
    right(
      "by components",
      update(
        "p = vec3(p.x + Fnet.x * dt, p.y + Fnet.y * dt, p.z + Fnet.z * dt)\nr = vec3(r.x + p.x / mass * dt, r.y + p.y / mass * dt, r.z)",
      ),
    ),
    right(
      "only the vertical component",
      update("p = vec3(0, p.y + Fnet.y * dt, 0)\nr = vec3(0, r.y + (p.y / mass) * dt, 0)"),
    ),
    right("with the library's sum", update("p = sum(p, Fnet * dt)\nr = sum(r, p * (dt / mass))")),
    right(
      "the weight written out again",
      update("const F = vec3(0, -9.81 * mass, 0)\np = p + F * dt\nr = r + p * dt / mass"),
    ),
    right(
      "two half steps",
      update("for (let i = 0; i < 2; i++) {\n  p = p + Fnet * (dt / 2)\n  r = r + (p / mass) * (dt / 2)\n}"),
    ),
    right("minus a minus", update("p = p - (-Fnet) * dt\nr = r - -(p / mass) * dt")),
    right(
      "with comments and semicolons",
      update("// momentum\np = p + Fnet * dt; // impulse\n/* position */ r = r + (p / mass) * dt;"),
    ),
    right(
      "midpoint",
      update("const half = p + Fnet * (dt / 2)\nr = r + (half / mass) * dt\np = p + Fnet * dt"),
    ),
    right(
      "g in its exact standard value",
      update("p = p + mass * vec3(0, -9.81, 0) * dt\nr = r + p * dt / mass"),
    ),
    right("formula with half g first", formula("yFormula = height - 9.81 / 2 * t * t")),
    right("formula with a power", formula("yFormula = height - 0.5 * 9.81 * t ** 2")),
    right("formula by the field", formula("yFormula = height + g.y * t * t / 2")),
    right("formula by mean velocity", formula("const v = 9.81 * t\nyFormula = height - v / 2 * t")),
    right("formula with Math.pow", formula("yFormula = height - 4.905 * Math.pow(t, 2)")),
    right("g of 9.80665", formula("yFormula = height - 0.5 * 9.80665 * t * t")),
    right(
      "a midpoint step",
      update("const pHalf = p + Fnet * (dt / 2)\nr = r + (pHalf / mass) * dt\np = p + Fnet * dt"),
    ),
    right(
      "components by hand",
      update(
        "const py = p.y + Fnet.y * dt\nconst y = r.y + (py * dt) / mass\np = vec3(0, py, 0)\nr = vec3(0, y, 0)",
      ),
    ),
    right(
      "a function for the step",
      update(
        "const stepped = (q: Vec3, F: Vec3) => q.add(F.times(dt))\np = stepped(p, Fnet)\nr = r.add(p.over(mass).times(dt))",
      ),
    ),
    right("formula with the field", formula("yFormula = height + (g.y * t ** 2) / 2")),
    right(
      "formula by the mean velocity",
      formula("const vEnd = 9.81 * t\nyFormula = height - (vEnd / 2) * t"),
    ),
  ],
  wrong: [
    slip("time-step-missing", "force alone, short form", update("p += Fnet\nr += (p / mass) * dt")),
    slip("time-step-missing", "velocity alone", update("p = Fnet * dt + p\nconst v = p / mass\nr = r + v")),
    slip("time-step-missing", "neither has it", update("p = p.add(Fnet)\nr = r.add(p.over(mass))")),
    slip("time-step-missing", "old momentum and no time step", update("r = r + p / mass\np = p + Fnet * dt")),
    slip(
      "time-step-twice",
      "squared in the position",
      update("p = p + Fnet * dt\nr = r + p / mass * dt * dt"),
    ),
    slip(
      "time-step-twice",
      "squared in the momentum",
      update("const J = Fnet * dt\np = p + J * dt\nr = r + (p / mass) * dt"),
    ),
    slip("momentum-overwritten", "impulse taken for momentum", update("p = dt * Fnet\nr += p / mass * dt")),
    slip(
      "momentum-overwritten",
      "through a name",
      update("const impulse = Fnet * dt\np = impulse\nr = r + (impulse / mass) * dt"),
    ),
    slip(
      "position-overwritten",
      "displacement taken for position",
      update("p = p + Fnet * dt\nr = dt * p / mass"),
    ),
    slip("mass-missing", "momentum for velocity", update("p = p + Fnet * dt\nr = r + p * dt")),
    slip("mass-missing", "by methods", update("p = p.add(Fnet.times(dt))\nr = r.add(p.times(dt))")),
    slip("mass-inverted", "times the mass", update("p = p + Fnet * dt\nconst v = mass * p\nr = r + v * dt")),
    slip("sign-turned", "impulse taken away", update("p -= Fnet * dt\nr += p / mass * dt")),
    slip("sign-turned", "moves backwards", update("p = p + Fnet * dt\nr = r - (p / mass) * dt")),
    slip(
      "sign-turned",
      "through a named impulse",
      update("const J = -Fnet * dt\np = p + J\nr = r + p * dt / mass"),
    ),
    slip("position-not-updated", "only momentum", update("p = p + Fnet * dt")),
    slip("momentum-not-updated", "only position", update("const v = p / mass\nr = r + v * dt")),
    slip("force-moves-position", "force for velocity", update("p = p + Fnet * dt\nr += dt * Fnet")),
    slip("term-missing", "formula without the height", formula("yFormula = -4.905 * t * t")),
    slip("term-missing", "formula without the fall", formula("yFormula = height * 1")),
    slip("factor-missing", "formula without the half", formula("yFormula = height - 9.81 * t ** 2")),
    slip("factor-missing", "formula without the square", formula("yFormula = height - 4.905 * t")),
    slip("factor-missing", "formula without g", formula("yFormula = height - t * t / 2")),
    slip("sign-turned", "formula upwards", formula("yFormula = 4.905 * t * t + height")),
    fault("a number for the time step", update("p = p + Fnet * 0.001\nr = r + (p / mass) * 0.001")),
    fault("half the impulse", update("p = p + Fnet * dt / 2\nr = r + (p / mass) * dt")),
    fault(
      "both updates done twice",
      update("p = p + Fnet * dt\nr = r + (p / mass) * dt\np = p + Fnet * dt\nr = r + (p / mass) * dt"),
    ),
    fault(
      "mean of the momentum without the half",
      update("const q = p\np = p + Fnet * dt\nr = r + ((q + p) / mass) * dt"),
    ),
    fault("weight added once more", update("p = p + (Fnet + Fg) * dt\nr = r + (p / mass) * dt")),
    fault("g of 10", update("p = p + mass * vec3(0, -10, 0) * dt\nr = r + (p / mass) * dt")),
    fault("g in the x direction", update("p = p + vec3(-9.81 * mass, 0, 0) * dt\nr = r + (p / mass) * dt")),
    fault(
      "momentum lost a little in each step",
      update("p = 0.999 * p + Fnet * dt\nr = r + (p / mass) * dt"),
    ),
    fault("velocity squared", update("p = p + Fnet * dt\nconst v = p / mass\nr = r + v * magnitude(v) * dt")),
    // r = h − ½ g m t² moves exactly as momentum taken for velocity does
    slip(
      "mass-missing",
      "position from the formula with the mass in it",
      update("p = p + Fnet * dt\nr = vec3(0, height - 0.5 * 9.81 * mass * t * t, 0)"),
    ),
    fault("constant velocity", update("p = Fnet * 1\nr = r + (p / mass) * dt")),
    fault("total time for the time step", update("p = p + Fnet * t\nr = r + (p / mass) * dt")),
    fault("total time in the position", update("p = p + Fnet * dt\nr = r + (p / mass) * t")),
    fault("sideways drift", update("p = p + (Fnet + vec3(0.05, 0, 0)) * dt\nr = r + (p / mass) * dt")),
    fault("stops when fast", update("if (magnitude(p) < 2) p = p + Fnet * dt\nr = r + (p / mass) * dt")),
    fault("a curve copied for one height", update("p = p + Fnet * dt\nr = vec3(0, 8 - 4.905 * t * t, 0)")),
    fault("a mass copied from the slider", update("p = p + Fnet * dt\nr = r + (p / 0.25) * dt")),
    fault("formula with the stepped momentum", formula("yFormula = height + p.y * t / 2 / mass / 2")),
    fault("formula with a cube", formula("yFormula = height - 0.5 * 9.81 * t * t * t")),
    fault("formula with the mass", formula("yFormula = height - 0.5 * mass * 9.81 * t * t")),
    fault("formula with a height of 8", formula("yFormula = 8 - 0.5 * 9.81 * t * t")),
    fault("formula with g of 10", formula("yFormula = height - 0.5 * 10 * t * t")),
    fault("formula twice the height", formula("yFormula = 2 * height - 0.5 * 9.81 * t * t")),
    slip(
      "time-step-missing",
      "momentum without time by methods",
      update("p = p.add(Fnet)\nr = r.add(p.times(dt / mass))"),
    ),
    slip("position-overwritten", "the place of one step", update("p += Fnet * dt\nr = (p / mass) * dt")),
    slip(
      "force-moves-position",
      "force times time for the place",
      update("p = p + Fnet * dt\nr = r + Fnet * dt"),
    ),
    slip(
      ["sign-turned"],
      "formula that rises",
      formula("const drop = 0.5 * 9.81 * t * t\nyFormula = height + drop"),
    ),
    fault("double the step for the place", update("p = p + Fnet * dt\nr = r + (p / mass) * 2 * dt")),
    fault("square of the step", update("p = p + Fnet * dt\nr = r + (p / mass) * dt + 0.5 * g * dt")),
    fault("the mass grows", update("p = p + Fnet * dt\nr = r + (p / (mass + t)) * dt")),
    fault("air that holds it back", update("p = p + Fnet * dt - 0.1 * p * dt\nr = r + (p / mass) * dt")),
    fault("formula with the speed of the end", formula("yFormula = height - 9.81 * t")),
    fault("formula with a quarter", formula("yFormula = height - 0.25 * 9.81 * t * t")),
  ],
}
