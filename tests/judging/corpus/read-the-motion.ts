import { type Corpus, fault, right, rightlyAnswered, slip, wronglyAnswered } from "./corpus.ts"

const force = (text: string) => ({ force: text })
const oneForce = ["force-missing", "only-last-force"]

export const readTheMotion: Corpus = {
  worksheet: "read-the-motion",
  right: [
    right(
      "as the sheet has it",
      force("const c = (mass * 9.81) / terminal ** 2\nF = mass * g - c * magnitude(v) * v"),
    ),
    right(
      "both forces named",
      force(
        "const Fg = mass * g\nconst Fdrag = -((mass * 9.81) / terminal ** 2) * magnitude(v) * v\nF = Fg + Fdrag",
      ),
    ),
    right(
      "drag first",
      force("const k = (mass * magnitude(g)) / (terminal * terminal)\nF = -k * magnitude(v) * v + mass * g"),
    ),
    right("the mass taken out", force("F = mass * (g - (9.81 / terminal ** 2) * magnitude(v) * v)")),
    right(
      "as a part of the end speed",
      force("const part = magnitude(v) / terminal\nF = mass * g - mass * 9.81 * part * (v / terminal)"),
    ),
    right(
      "the share of the weight",
      force(
        "const s = dot(v, v) / terminal ** 2\nF = mass * g\nif (magnitude(v) > 0) F = F - s * mass * 9.81 * unit(v)",
      ),
    ),
    right(
      "by component",
      force("const vy = v.y\nconst w = mass * 9.81\nF = vec3(0, -w + (w * vy * vy) / terminal ** 2, 0)"),
    ),
    right(
      "by component with its size",
      force("F = vec3(0, -mass * 9.81 * (1 + (v.y * Math.abs(v.y)) / terminal ** 2), 0)"),
    ),
    right(
      "with methods",
      force(
        "const c = (mass * 9.81) / terminal ** 2\nF = g.times(mass).subtract(v.times(c * v.magnitude()))",
      ),
    ),
    right("added up", force("F = mass * g\nF -= ((mass * 9.81) / (terminal * terminal)) * magnitude(v) * v")),
    right(
      "added up the other way",
      force("F = F + mass * g\nF = F - (mass / terminal ** 2) * 9.81 * magnitude(v) * v"),
    ),
    right(
      "a helper function",
      force(
        "const drag = (u: Vec3) => -((mass * 9.81) / terminal ** 2) * magnitude(u) * u\nF = mass * g + drag(v)",
      ),
    ),
    right(
      "from the momentum",
      force("const c = 9.81 / (mass * terminal ** 2)\nF = mass * g - c * magnitude(p) * p"),
    ),
    right(
      "with a length",
      force("const length = terminal ** 2 / 9.81\nF = mass * g - (mass / length) * magnitude(v) * v"),
    ),
    right(
      "weight by hand",
      force(
        "const weight = vec3(0, -9.81 * mass, 0)\nF = weight + weight.magnitude() * (magnitude(v) / terminal ** 2) * -v",
      ),
    ),
    right("a sum of two", force("F = sum(mass * g, (-(mass * 9.81) / terminal ** 2) * magnitude(v) * v)")),
    rightlyAnswered("a deceleration with a unit", { deceleration: "2.45 m/s^2" }),
    rightlyAnswered("a deceleration with a comma", { deceleration: "2,45" }),
    rightlyAnswered("a deceleration in cm", { deceleration: "245 cm/s^2" }),
    rightlyAnswered("a deceleration from the first two spaces, rounded", { deceleration: "2.5" }),
    right("one minus the square", force("const s = magnitude(v) / terminal\nF = mass * g * (1 - s * s)")),
    right(
      "with the library's drag",
      force(
        "const k = (mass * 9.81) / (terminal * terminal)\nlet drag = vec3(0, 0, 0)\nif (dot(v, v) > 0) drag = -k * dot(v, v) * unit(v)\nF = drag + mass * g",
      ),
    ),
    right(
      "by the net acceleration",
      force("const a = g - (9.81 * magnitude(v) * v) / terminal ** 2\nF = mass * a"),
    ),
    right(
      "the coefficient by a function",
      force(
        "function coefficient(m: number, u: number) {\n  return (m * 9.81) / (u * u)\n}\nF = mass * g\nF += -coefficient(mass, terminal) * magnitude(v) * v",
      ),
    ),
    rightlyAnswered("deceleration in fine units", { deceleration: "2450 mm/s^2" }),
    rightlyAnswered("deceleration with another sign for the power", { deceleration: "2.44 m/s²" }),
  ],
  wrong: [
    slip(
      "sign-turned",
      "drag along the motion",
      force("const c = (mass * 9.81) / terminal ** 2\nF = mass * g + c * magnitude(v) * v"),
    ),
    slip(
      "sign-turned",
      "weight upwards",
      force("F = -mass * g - ((mass * 9.81) / terminal ** 2) * magnitude(v) * v"),
    ),
    slip(
      "sign-turned",
      "both turned",
      force("const Fdrag = ((mass * 9.81) / terminal ** 2) * magnitude(v) * v\nF = -(mass * g) + Fdrag"),
    ),
    slip(oneForce, "only the weight", force("F = mass * g")),
    slip(oneForce, "only the drag", force("F = -((mass * 9.81) / terminal ** 2) * magnitude(v) * v")),
    slip(
      oneForce,
      "drag overwrites weight",
      force("F = mass * g\nF = -((mass * 9.81) / terminal ** 2) * magnitude(v) * v"),
    ),
    slip(
      "mass-missing",
      "field for weight",
      force("const c = (mass * 9.81) / terminal ** 2\nF = g - c * magnitude(v) * v"),
    ),
    slip(
      "mass-missing",
      "drag without the mass",
      force("const c = 9.81 / terminal ** 2\nF = mass * g - c * magnitude(v) * v"),
    ),
    slip("mass-missing", "no mass at all", force("F = g - (9.81 / terminal ** 2) * magnitude(v) * v")),
    slip(
      ["factor-lost", "magnitude-for-vector"],
      "linear in the square of the end speed",
      force("F = mass * g - ((mass * 9.81) / terminal ** 2) * v"),
    ),
    slip(
      ["factor-missing", "mass-missing"],
      "without the strength of the field",
      force("F = mass * g - (mass / terminal ** 2) * magnitude(v) * v"),
    ),
    fault("linear drag", force("F = mass * g - ((mass * 9.81) / terminal) * v")),
    fault("linear drag, the mass taken out", force("F = mass * (g - (9.81 * v) / terminal)")),
    fault("cubic drag", force("F = mass * g - ((mass * 9.81) / terminal ** 3) * dot(v, v) * v")),
    fault("a smaller field without drag", force("F = 0.6 * mass * g")),
    fault("constant drag", force("F = mass * g\nif (magnitude(v) > 0) F = F - 0.5 * mass * 9.81 * unit(v)")),
    fault(
      "mass copied from the slider",
      force("F = mass * g - ((0.06 * 9.81) / terminal ** 2) * magnitude(v) * v"),
    ),
    fault(
      "end speed copied from the photograph",
      force("F = mass * g - ((mass * 9.81) / 36) * magnitude(v) * v"),
    ),
    fault("mass and end speed copied", force("F = 0.06 * g - ((0.06 * 9.81) / 36) * magnitude(v) * v")),
    fault("the end speed not squared", force("F = mass * g - ((mass * 9.81) / terminal) * magnitude(v) * v")),
    fault(
      "twice the end speed for its square",
      force("F = mass * g - ((mass * 9.81) / (2 * terminal)) * magnitude(v) * v"),
    ),
    fault(
      "half of it as in the usual formula",
      force("F = mass * g - 0.5 * ((mass * 9.81) / terminal ** 2) * magnitude(v) * v"),
    ),
    fault(
      "speed squared twice",
      force("const s = magnitude(v)\nF = mass * g - ((mass * 9.81) / terminal ** 2) * s * s * v"),
    ),
    fault(
      "the end speed reached too sharply",
      force("F = magnitude(v) < terminal ? mass * g : vec3(0, 0, 0)"),
    ),
    fault("falling towards the end speed", force("F = mass * (vec3(0, -terminal, 0) - v)")),
    fault("g of 10 in the drag", force("F = mass * g - ((mass * 10) / terminal ** 2) * magnitude(v) * v")),
    fault("sideways drag", force("F = mass * g + vec3(((mass * 9.81) / terminal ** 2) * dot(v, v), 0, 0)")),
    fault("drag from the depth", force("F = mass * g - ((mass * 9.81) / terminal ** 2) * magnitude(r) * r")),
    fault("drag by the clock", force("F = mass * g * (1 - Math.min(1, t / 1.2))")),
    fault("mass squared", force("F = mass * g - ((mass * mass * 9.81) / terminal ** 2) * magnitude(v) * v")),
    fault(
      "the photograph copied",
      force("const i = Math.min(7, Math.floor(t / 0.2))\nr = vec3(0, -photo[i], 0)\nF = mass * g"),
    ),
    wronglyAnswered("the first picture by linear drag", { crate: "B" }),
    wronglyAnswered("the second picture by linear drag", { cap: "B" }),
    wronglyAnswered("not divided by the square of the time", { deceleration: "0.49" }),
    wronglyAnswered("the difference itself", { deceleration: 0.098 }),
    slip(
      "sign-turned",
      "drag drives",
      force(
        "const k = (mass * 9.81) / terminal ** 2\nconst Fdrag = k * magnitude(v) * v\nF = mass * g + Fdrag",
      ),
    ),
    slip(
      "sign-turned",
      "weight up",
      force(
        "const Fg = vec3(0, 9.81 * mass, 0)\nF = Fg - ((mass * 9.81) / terminal ** 2) * magnitude(v) * v",
      ),
    ),
    slip(
      ["force-missing", "only-last-force", "term-missing"],
      "free fall",
      force("F = vec3(0, -9.81 * mass, 0)"),
    ),
    slip(
      "mass-missing",
      "drag of one kilogram",
      force("F = mass * g - (9.81 / (terminal * terminal)) * magnitude(v) * v"),
    ),
    slip(
      "factor-lost",
      "not divided by anything",
      force("const k = mass * 9.81\nF = mass * g - (k / terminal ** 2) * v"),
    ),
    fault("linear by parts", force("const share = magnitude(v) / terminal\nF = mass * g * (1 - share)")),
    fault("fourth power", force("const s = magnitude(v) / terminal\nF = mass * g * (1 - s ** 4)")),
    fault("square root", force("const s = magnitude(v) / terminal\nF = mass * g * (1 - Math.sqrt(s))")),
    fault(
      "end speed too low by a tenth",
      force("F = mass * g - ((mass * 9.81) / (0.9 * terminal) ** 2) * magnitude(v) * v"),
    ),
    fault(
      "velocity of the end for the velocity",
      force("F = mass * g - ((mass * 9.81) / terminal ** 2) * terminal * v * 1.1"),
    ),
    fault("only while slower than half", force("F = magnitude(v) < terminal / 2 ? mass * g : mass * g / 4")),
    fault("drag also sets the momentum", force("p = 0.9995 * p\nF = mass * g")),
    fault("a formula for the speed", force("p = mass * vec3(0, -6 * Math.tanh((9.81 * t) / 6), 0)")),
    fault(
      "moon's strength",
      force("F = (mass * g) / 6 - ((mass * 9.81) / 6 / terminal ** 2) * magnitude(v) * v"),
    ),
    wronglyAnswered("a picture with equal spaces pushes", { spacing: "along" }),
    wronglyAnswered("deceleration with the wrong quantity", { deceleration: "2.45 m/s" }),
    wronglyAnswered("no deceleration", { deceleration: "" }),
  ],
}
