import { type Corpus, fault, right, slip } from "./corpus.ts"

const drag = (text: string) => ({ drag: text })
const stokes = (text: string) => ({ stokes: text })

export const heavingLine: Corpus = {
  worksheet: "heaving-line",
  right: [
    right("as the sheet has it", drag("F = -0.5 * rho * C * A * magnitude(v) * v")),
    right(
      "square of the speed and a direction",
      drag("F = -0.5 * rho * C * A * magnitude(v) ** 2 * unit(v)"),
    ),
    right(
      "size first",
      drag("const s = magnitude(v)\nconst size = (rho * C * A * s * s) / 2\nF = size * -unit(v)"),
    ),
    right(
      "by components",
      drag(
        "const s = Math.sqrt(v.x * v.x + v.y * v.y)\nconst c = 0.5 * rho * C * A\nF = vec3(-c * s * v.x, -c * s * v.y, 0)",
      ),
    ),
    right("methods", drag("F = v.times(-0.5 * rho * C * A * v.magnitude())")),
    right("root of the dot product", drag("const b = (rho * A * C) / 2\nF = -b * Math.sqrt(dot(v, v)) * v")),
    right(
      "by the angle of the path",
      drag(
        "const path = Math.atan2(v.y, v.x)\nconst D = 0.5 * rho * C * A * magnitude(v) ** 2\nF = vec3(-D * Math.cos(path), -D * Math.sin(path), 0)",
      ),
    ),
    right("taken from nothing", drag("F = F - 0.5 * rho * C * A * magnitude(v) * v")),
    right(
      "a helper function",
      drag(
        "const pressure = (s: number) => (rho * s ** 2) / 2\nF = -pressure(magnitude(v)) * C * A * unit(v)",
      ),
    ),
    right("returned at once", drag("return -0.5 * rho * C * A * v.magnitude() * v")),
    right(
      "the area anew",
      drag("const radius = diameter / 2\nF = -(1 / 2) * rho * C * Math.PI * radius ** 2 * magnitude(v) * v"),
    ),
    right("against the reversed velocity", drag("const w = -v\nF = 0.5 * rho * C * A * magnitude(w) * w")),
    right(
      "only when it moves",
      drag(
        "const s = magnitude(v)\nif (s > 0) {\n  const e = v / s\n  F = -(0.5 * rho * C * A * s * s) * e\n}",
      ),
    ),
    right("numbers for the constants", drag("F = -0.5 * 1.225 * 0.47 * 0.01131 * magnitude(v) * v")),
    right(
      "from the library",
      drag("F = quadraticDrag(v, { fluidDensity: rho, dragCoefficient: C, area: A })"),
    ),
    right("as the sheet has it, in oil", stokes("Foil = -6 * Math.PI * eta * R * (p / beadMass)")),
    right("velocity named", stokes("const v = p / beadMass\nFoil = -(6 * Math.PI * R * eta) * v")),
    right("only along the fall", stokes("Foil = vec3(0, (-6 * Math.PI * eta * R * p.y) / beadMass, 0)")),
    right("methods in oil", stokes("Foil = p.over(beadMass).times(-6 * Math.PI * eta * R)")),
    right("by the diameter", stokes("const d = 2 * R\nFoil -= (3 * Math.PI * eta * d * p) / beadMass")),
    right(
      "with the momentum half a step on",
      stokes(
        "const half = p + (Fg + Fbuoyant) * (dtBead / 2)\nFoil = -6 * Math.PI * eta * R * (half / beadMass)",
      ),
    ),
    right(
      "with the momentum to come",
      stokes(
        "const b = 6 * Math.PI * eta * R\nconst pNew = (p + (Fg + Fbuoyant) * dtBead) / (1 + (b / beadMass) * dtBead)\nFoil = -b * pNew / beadMass",
      ),
    ),
    // written last, and measured once before anything was tuned on them

    right(
      "air speed with no wind",
      drag("const wind = vec3(0, 0, 0)\nconst rel = v - wind\nF = -0.5 * rho * C * A * magnitude(rel) * rel"),
    ),
    right(
      "each component by its own line",
      drag(
        "const s2 = v.x ** 2 + v.y ** 2 + v.z ** 2\nconst s = s2 ** 0.5\nconst D = 0.5 * rho * C * A * s2\nconst Dx = (D * v.x) / s\nconst Dy = (D * v.y) / s\nF = vec3(-Dx, -Dy, 0)",
      ),
    ),
    right(
      "a loop over nothing else",
      drag(
        "let area = 0\nfor (const side of [1, -1]) area += A / 2 + 0 * side\nF = v * (magnitude(v) * rho * C * area * -0.5)",
      ),
    ),
    right(
      "added in two halves",
      drag("const half = -0.25 * rho * C * A * magnitude(v) * v\nF = half\nF += half"),
    ),
    right(
      "drag of the oil from its size",
      stokes(
        "const speed = magnitude(p) / beadMass\nif (speed > 0) Foil = 6 * Math.PI * eta * R * speed * -unit(p)",
      ),
    ),
    right("from the library in oil", stokes("Foil = linearDrag(p / beadMass, 6 * Math.PI * eta * R)")),
  ],
  wrong: [
    slip("sign-turned", "with the motion", drag("F = 0.5 * rho * C * A * magnitude(v) * v")),
    slip("sign-turned", "minus twice", drag("const back = -v\nF = -0.5 * rho * C * A * magnitude(v) * back")),
    slip(
      "sign-turned",
      "components with the motion",
      drag("const k = (rho * C * A) / 2\nconst s = magnitude(v)\nF = vec3(k * s * v.x, k * s * v.y, 0)"),
    ),
    slip("factor-missing", "without the half", drag("F = -rho * C * A * magnitude(v) * v")),
    slip(
      "factor-missing",
      "without the half, size first",
      drag("const D = rho * A * C * magnitude(v) ** 2\nF = -D * unit(v)"),
    ),
    slip("factor-lost", "no density", drag("F = -C * A * 0.5 * magnitude(v) * v")),
    slip("factor-lost", "no area", drag("const s = v.magnitude()\nF = v.times(-0.5 * rho * C * s)")),
    slip("factor-lost", "no drag coefficient", drag("F = -(rho * A * magnitude(v) ** 2 * unit(v)) / 2")),
    slip("factor-lost", "proportional to the velocity", drag("F = -0.5 * rho * C * A * v")),
    slip("force-missing", "nothing", drag("F = vec3(0, 0, 0)")),
    slip("force-missing", "nothing times the velocity", drag("F = 0 * v")),
    slip(
      "magnitude-for-vector",
      "always backwards along x",
      drag("const s = magnitude(v)\nF = vec3(-0.5 * rho * C * A * s * s, 0, 0)"),
    ),
    slip("mass-missing", "momentum for velocity", stokes("Foil = -6 * Math.PI * eta * R * p")),
    slip("mass-missing", "by methods", stokes("Foil = p.times(-6 * Math.PI * eta * R)")),
    slip(
      "mass-inverted",
      "times the mass",
      stokes("const v = p * beadMass\nFoil = -6 * Math.PI * eta * R * v"),
    ),
    slip("sign-turned", "oil drives", stokes("Foil = (6 * Math.PI * eta * R * p) / beadMass")),
    slip("factor-lost", "no radius", stokes("const v = p / beadMass\nFoil = -6 * Math.PI * eta * v")),
    slip("factor-missing", "without the six", stokes("Foil = -Math.PI * eta * R * (p / beadMass)")),
    fault(
      "square of each component",
      drag("const c = 0.5 * rho * C * A\nF = vec3(-c * v.x ** 2, -c * v.y ** 2, 0)"),
    ),
    fault(
      "square of each component with its sign",
      drag("const c = 0.5 * rho * C * A\nF = vec3(-c * v.x * Math.abs(v.x), -c * v.y * Math.abs(v.y), 0)"),
    ),
    fault("diameter for radius", drag("F = -0.5 * rho * C * Math.PI * diameter ** 2 * magnitude(v) * v")),
    fault("cube of the speed", drag("F = -0.5 * rho * C * A * magnitude(v) ** 2 * v")),
    fault("divided by the mass", drag("F = (-0.5 * rho * C * A * magnitude(v) * v) / mass")),
    fault("times the mass", drag("F = -0.5 * rho * C * A * magnitude(v) * v * mass")),
    slip("force-missing", "times the time step", drag("F = -0.5 * rho * C * A * magnitude(v) * v * dt")),
    fault("speed of the throw for ever", drag("F = -0.5 * rho * C * A * speed ** 2 * unit(v)")),
    fault("speed of the throw times velocity", drag("F = -0.5 * rho * C * A * speed * v")),
    fault("against the throw, not the motion", drag("F = -0.5 * rho * C * A * magnitude(v) ** 2 * aim")),
    fault(
      "momentum of the first cell",
      drag("const w = p / mass\nF = -0.5 * rho * C * A * magnitude(w) * w"),
    ),
    fault("only downwards", drag("F = vec3(0, -0.5 * rho * C * A * magnitude(v) ** 2, 0)")),
    fault("weight once more", drag("F = -0.5 * rho * C * A * magnitude(v) * v + mass * g")),
    fault("a rounder coefficient", drag("F = -0.5 * rho * 0.5 * A * magnitude(v) * v")),
    fault("fits one bag", drag("F = -0.0130232 * mass * magnitude(v) * v")),
    fault(
      "the vertical part always down",
      drag("const c = 0.5 * rho * C * A * magnitude(v)\nF = vec3(-c * v.x, -c * Math.abs(v.y), 0)"),
    ),
    fault("diameter in the law of Stokes", stokes("Foil = -6 * Math.PI * eta * 2 * R * (p / beadMass)")),
    fault("mass of the oil", stokes("Foil = -6 * Math.PI * eta * R * (p / oilMass)")),
    fault("mass of the bag", stokes("Foil = -6 * Math.PI * eta * R * (p / mass)")),
    fault(
      "quadratic in the oil",
      stokes("const v = p / beadMass\nFoil = -0.5 * 960 * 0.47 * Math.PI * R ** 2 * magnitude(v) * v"),
    ),
    fault("balance from the start", stokes("Foil = -(Fg + Fbuoyant)")),
    fault("radius squared", stokes("Foil = -6 * Math.PI * eta * R ** 2 * (p / beadMass)")),
    fault("buoyancy again", stokes("Foil = -6 * Math.PI * eta * R * (p / beadMass) + Fbuoyant")),
    fault("the drag of the air", stokes("Foil = drag(p / beadMass)")),
    // written last, and measured once before anything was tuned on them

    slip(
      "sign-turned",
      "the way of the motion",
      drag("const e = unit(v)\nF = 0.5 * rho * C * A * magnitude(v) ** 2 * e"),
    ),
    slip(
      "factor-lost",
      "one speed too few",
      drag("const s = magnitude(v)\nconst D = 0.5 * rho * C * A * s\nF = -D * unit(v)"),
    ),
    slip("factor-missing", "no half and methods", drag("F = v.times(v.magnitude()).times(-rho * C * A)")),
    slip("mass-missing", "momentum components", stokes("Foil = vec3(0, -6 * Math.PI * eta * R * p.y, 0)")),
    slip(
      "sign-turned",
      "subtracted twice",
      stokes("const b = 6 * Math.PI * eta * R\nFoil = -b * (-p / beadMass)"),
    ),
    slip("factor-lost", "no viscosity", stokes("const k = 6 * Math.PI * R\nFoil = -k * p / beadMass")),
    fault("circumference for area", drag("F = -0.5 * rho * C * Math.PI * diameter * magnitude(v) * v")),
    // twice the cross-section: moves exactly as without the half
    slip(
      "factor-missing",
      "surface of the sphere",
      drag("F = -0.5 * rho * C * Math.PI * diameter ** 2 * magnitude(v) * v / 2"),
    ),
    fault("only while it rises", drag("if (v.y > 0) F = -0.5 * rho * C * A * magnitude(v) * v")),
    fault("vertical speed squared", drag("F = -0.5 * rho * C * A * v.y ** 2 * unit(v)")),
    fault("a headwind", drag("const rel = v + vec3(3, 0, 0)\nF = -0.5 * rho * C * A * magnitude(rel) * rel")),
    fault("capped", drag("F = -Math.min(0.5 * rho * C * A * magnitude(v) ** 2, 0.5) * unit(v)")),
    fault("four for six", stokes("Foil = -4 * Math.PI * eta * R * (p / beadMass)")),
    // next to no drag, within a thousandth of that of a mass on the wrong side
    slip(
      ["mass-inverted", "force-missing"],
      "volume for radius",
      stokes("Foil = -6 * Math.PI * eta * volume * (p / beadMass)"),
    ),
    fault("last value of the flight", stokes("Foil = -6 * Math.PI * eta * R * vec3(0, -0.04, 0)")),
  ],
}
