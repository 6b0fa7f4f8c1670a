import { type Corpus, fault, right, slip } from "./corpus.ts"

const field = (text: string) => ({ field: text })
const difference = (text: string) => ({ difference: text })
const mars = (text: string) => ({ step_mars: text })
// a field that falls off with 1/d and one with the whole arrow for its direction over d² are the same field
const inverse = ["direction-not-unit", "factor-missing"]
const oneField = ["force-missing", "only-last-force", "term-missing"]
const noForce = ["momentum-not-updated", "force-missing", "term-missing"]

export const tideAndMoon: Corpus = {
  worksheet: "tide-and-moon",
  right: [
    right("as the sheet has it", field("f = (-G * M / (magnitude(d) * magnitude(d))) * unit(d)")),
    right("the arrow over its cube", field("f = (-G * M * d) / magnitude(d) ** 3")),
    right(
      "distance and direction named",
      field("const r = magnitude(d)\nconst rHat = d / r\nf = (-(G * M) / r ** 2) * rHat"),
    ),
    right("the square as a dot product", field("f = (-G * M / dot(d, d)) * unit(d)")),
    right(
      "by components",
      field(
        "const s = d.x * d.x + d.y * d.y + d.z * d.z\nconst k = (-G * M) / (s * Math.sqrt(s))\nf = vec3(k * d.x, k * d.y, k * d.z)",
      ),
    ),
    right("with methods", field("f = d.unit().times(-G * M).over(d.magnitude() * d.magnitude())")),
    right(
      "an arrow back to the mass",
      field("const towards = unit(-d)\nconst size = (G * M) / magnitude(d) ** 2\nf = size * towards"),
    ),
    right(
      "by the angle",
      field(
        "const angle = Math.atan2(d.y, d.x)\nconst size = (G * M) / (d.x ** 2 + d.y ** 2)\nf = -size * vec3(Math.cos(angle), Math.sin(angle), 0)",
      ),
    ),
    right(
      "a helper function for the size",
      field("const size = (r: number) => (G * M) / (r * r)\nf = f - size(magnitude(d)) * unit(d)"),
    ),
    right(
      "with the library's attraction",
      field("f = gravityForce(d, vec3(0, 0, 0), { mass: 1, otherMass: M })"),
    ),
    right("a power", field("f = -G * M * Math.pow(magnitude(d), -2) * unit(d)")),
    right("in one line", difference("gTide = field(moon, place - moonAt) - field(moon, -moonAt)")),
    right(
      "centre written out",
      difference(
        "const centre = vec3(0, 0, 0)\nconst there = field(moon, centre - moonAt)\nconst here = field(moon, place - moonAt)\ngTide = here - there",
      ),
    ),
    // the field of the turned arrow is the turned field
    right(
      "a sum with the arrow to the Moon",
      difference("gTide = field(moon, place - moonAt) + field(moon, moonAt)"),
    ),
    right(
      "arrows to the Moon, both turned",
      difference("gTide = field(moon, moonAt) - field(moon, moonAt - place)"),
    ),
    right(
      "taken away afterwards",
      difference("gTide = field(moon, place.subtract(moonAt))\ngTide -= field(moon, moonAt.negated())"),
    ),
    right("short forms", mars("p += mars * field(sun, r) * dtMars\nr += (p / mars) * dtMars")),
    right(
      "position with the old momentum",
      mars("const F = mars * field(sun, r)\nr = r + (p / mars) * dtMars\np = p + F * dtMars"),
    ),
    right(
      "half a kick, a drift, half a kick",
      mars(
        "const h = dtMars / 2\np = p + mars * field(sun, r) * h\nr = r + (p / mars) * dtMars\np = p + mars * field(sun, r) * h",
      ),
    ),
    right(
      "with velocity and acceleration",
      mars("let v = p / mars\nconst a = field(sun, r)\nv = v + a * dtMars\nr = r + v * dtMars\np = mars * v"),
    ),
    right(
      "ten short steps in one",
      mars(
        "const h = dtMars / 10\nfor (let i = 0; i < 10; i++) {\n  p = p + mars * field(sun, r) * h\n  r = r + (p / mars) * h\n}",
      ),
    ),
    right(
      "the force written out",
      mars(
        "const size = (G * sun * mars) / dot(r, r)\nconst F = -size * unit(r)\np = p.add(F.times(dtMars))\nr = r.add(p.times(dtMars / mars))",
      ),
    ),
    right(
      "divided three times",
      field("f = (((-G * M) / magnitude(d)) / magnitude(d)) * (d / magnitude(d))"),
    ),
    right("turned at the end", field("const g0 = (G * M) / d.dot(d)\nf = unit(d).times(g0).negated()")),
    right(
      "the difference by components",
      difference(
        "const dx = place.x - moonDistance\nconst dy = place.y\nconst s = dx * dx + dy * dy\nconst q = (-G * moon) / (s * Math.sqrt(s))\ngTide = vec3(q * dx - (G * moon) / moonDistance ** 2, q * dy, 0)",
      ),
    ),
    right(
      "midpoint",
      mars(
        "const h = dtMars / 2\nconst pHalf = p + mars * field(sun, r) * h\nconst rHalf = r + (p / mars) * h\nr = r + (pHalf / mars) * dtMars\np = p + mars * field(sun, rHalf) * dtMars",
      ),
    ),
    right(
      "with the library's force",
      mars(
        "const F = gravityForce(r, vec3(0, 0, 0), { mass: mars, otherMass: sun })\np += F * dtMars\nr += (p * dtMars) / mars",
      ),
    ),
    right(
      "velocity Verlet",
      mars(
        "const a0 = field(sun, r)\nr = r + (p / mars) * dtMars + 0.5 * a0 * dtMars * dtMars\nconst a1 = field(sun, r)\np = p + (mars * (a0 + a1) * dtMars) / 2",
      ),
    ),
  ],
  wrong: [
    slip("sign-turned", "the field leads away", field("f = ((G * M) / magnitude(d) ** 2) * unit(d)")),
    slip(
      "sign-turned",
      "an arrow named the wrong way round",
      field("const towards = d / magnitude(d)\nf = (G * M * towards) / (magnitude(d) * magnitude(d))"),
    ),
    slip(inverse, "the whole arrow for its direction", field("f = (-G * M * d) / magnitude(d) ** 2")),
    slip(inverse, "inverse distance", field("const r = magnitude(d)\nf = (-G * M / r) * unit(d)")),
    slip(
      ["factor-lost", "force-missing"],
      "without the constant of gravitation",
      field("f = (-M / magnitude(d) ** 2) * unit(d)"),
    ),
    slip("mass-missing", "without the mass", field("const r = magnitude(d)\nf = (-G / (r * r)) * unit(d)")),
    fault("inverse cube", field("f = (-G * M / magnitude(d) ** 3) * unit(d)")),
    fault("half of it", field("f = ((-0.5 * G * M) / magnitude(d) ** 2) * unit(d)")),
    fault("twice the diameter for the distance", field("f = (-G * M / (2 * magnitude(d)) ** 2) * unit(d)")),
    fault(
      "brackets forgotten under the line",
      field("f = ((-G * M) / magnitude(d)) * magnitude(d) * unit(d)"),
    ),
    fault(
      "constant mistyped by a power of ten",
      field("f = (-6.6743e-10 * M / magnitude(d) ** 2) * unit(d)"),
    ),
    fault("constant from memory", field("f = (-6.8e-11 * M / magnitude(d) ** 2) * unit(d)")),
    fault("mass squared", field("f = ((-G * M * M) / magnitude(d) ** 2) * unit(d)")),
    fault("the Earth whatever attracts", field("f = (-G * earth / magnitude(d) ** 2) * unit(d)")),
    fault("always the mean distance", field("f = (-G * M / a ** 2) * unit(d)")),
    fault("always along the x axis", field("f = vec3((-G * M) / magnitude(d) ** 2, 0, 0)")),
    fault("x for the distance", field("f = (-G * M / d.x ** 2) * unit(d)")),
    fault("the strength at the ground", field("f = -9.81 * unit(d)")),
    fault("sideways", field("const e = unit(d)\nf = ((G * M) / magnitude(d) ** 2) * vec3(-e.y, e.x, 0)")),
    fault("like a spring", field("f = (-G * M * d) / a ** 3")),
    fault(
      "the angle in degrees",
      field(
        "const w = (Math.atan2(d.y, d.x) * 180) / Math.PI\nf = ((-G * M) / magnitude(d) ** 2) * vec3(Math.cos(w), Math.sin(w), 0)",
      ),
    ),
    fault("distance in kilometres", field("const r = magnitude(d) / 1000\nf = (-G * M / r ** 2) * unit(d)")),
    slip(oneField, "only the field at the place", difference("gTide = field(moon, place - moonAt)")),
    slip(oneField, "only the field at the centre", difference("gTide = -field(moon, -moonAt)")),
    slip(
      "sign-turned",
      "a sum of both fields",
      difference(
        "const here = field(moon, place - moonAt)\nconst there = field(moon, -moonAt)\ngTide = here + there",
      ),
    ),
    slip(
      "sign-turned",
      "the centre less the place",
      difference("gTide = field(moon, -moonAt) - field(moon, place - moonAt)"),
    ),
    slip(
      "sign-turned",
      "arrows to the Moon",
      difference("gTide = field(moon, moonAt - place) - field(moon, moonAt)"),
    ),
    slip(
      "sign-turned",
      "the Moon on the other side for the place",
      difference("gTide = field(moon, place + moonAt) - field(moon, -moonAt)"),
    ),
    fault(
      "the field of the Earth",
      difference("gTide = field(earth, place - moonAt) - field(earth, -moonAt)"),
    ),
    slip(
      "term-missing",
      "arrow from the centre of the Earth",
      difference("gTide = field(moon, place) - field(moon, -moonAt)"),
    ),
    fault(
      "half of the difference",
      difference("gTide = (field(moon, place - moonAt) - field(moon, -moonAt)) / 2"),
    ),
    fault(
      "sizes taken away from each other",
      difference(
        "const here = magnitude(field(moon, place - moonAt))\nconst there = magnitude(field(moon, -moonAt))\ngTide = (here - there) * up",
      ),
    ),
    fault(
      "the formula for the near side everywhere",
      difference("gTide = ((2 * G * moon * earthRadius) / moonDistance ** 3) * up"),
    ),
    fault(
      "distance of the Moon copied",
      difference("const at = vec3(3.844e8, 0, 0)\ngTide = field(moon, place - at) - field(moon, -at)"),
    ),
    slip(
      "time-step-missing",
      "an impulse without a time",
      mars("p = p + mars * field(sun, r)\nr = r + (p / mars) * dtMars"),
    ),
    slip(
      "time-step-missing",
      "a velocity without a time",
      mars("p += mars * field(sun, r) * dtMars\nr += p / mars"),
    ),
    slip(
      "mass-missing",
      "the field for the force",
      mars("p = p + field(sun, r) * dtMars\nr = r + (p / mars) * dtMars"),
    ),
    slip(
      "mass-missing",
      "momentum for velocity",
      mars("p = p + dtMars * mars * field(sun, r)\nr = r + p * dtMars"),
    ),
    slip(
      "mass-inverted",
      "times the mass of Mars",
      mars("p = p + mars * field(sun, r) * dtMars\nr = r + p * mars * dtMars"),
    ),
    slip(
      "sign-turned",
      "away from the Sun",
      mars("const J = mars * field(sun, r) * dtMars\np = p - J\nr = r + (p / mars) * dtMars"),
    ),
    slip(
      "sign-turned",
      "backwards",
      mars("p = p + mars * field(sun, r) * dtMars\nr = r - (p / mars) * dtMars"),
    ),
    slip(
      "momentum-overwritten",
      "only the impulse of one step",
      mars("p = mars * field(sun, r) * dtMars\nr = r + (p / mars) * dtMars"),
    ),
    slip(noForce, "on a straight line", mars("r = r + (p / mars) * dtMars")),
    fault("the time step of the Moon", mars("p = p + mars * field(sun, r) * dt\nr = r + (p / mars) * dt")),
    fault(
      "the time step of the Moon for the momentum",
      mars("p = p + mars * field(sun, r) * dt\nr = r + (p / mars) * dtMars"),
    ),
    fault("a step in days", mars("p = p + mars * field(sun, r) * stepDays\nr = r + (p / mars) * stepDays")),
    fault("attracted by itself", mars("p = p + mars * field(mars, r) * dtMars\nr = r + (p / mars) * dtMars")),
    fault(
      "attracted by the Earth",
      mars("p = p + mars * field(earth, r) * dtMars\nr = r + (p / mars) * dtMars"),
    ),
    // so heavy a Mars stays where it is
    slip(
      "position-not-updated",
      "mass of the Sun for that of Mars",
      mars("p = p + sun * field(mars, r) * dtMars\nr = r + (p / sun) * dtMars"),
    ),
    fault("where the Moon is", mars("p = p + mars * field(sun, rM) * dtMars\nr = r + (p / mars) * dtMars")),
    fault(
      "half the acceleration",
      mars("p = p + 0.5 * mars * field(sun, r) * dtMars\nr = r + (p / mars) * dtMars"),
    ),
    fault("the almanac copied", mars("r = almanac(t + dtMars)")),
    fault(
      "the almanac copied, momentum stepped",
      mars("p = p + mars * field(sun, r) * dtMars\nr = almanac(t + dtMars)"),
    ),
    slip(
      "sign-turned",
      "turned once too often",
      field("f = ((-G * M) / magnitude(d) ** 2) * unit(d)\nf = -f"),
    ),
    slip(
      ["direction-not-unit", "factor-missing"],
      "the whole arrow by methods",
      field("const s = dot(d, d)\nf = d.times((-G * M) / s)"),
    ),
    slip("time-step-missing", "no time at all", mars("p = p + mars * field(sun, r)\nr = r + p / mars")),
    slip(
      "position-overwritten",
      "place of one step",
      mars("p = p + mars * field(sun, r) * dtMars\nr = (p / mars) * dtMars"),
    ),
    slip("position-not-updated", "momentum only", mars("const F = mars * field(sun, r)\np += F * dtMars")),
    slip(
      "force-moves-position",
      "force for velocity",
      mars("const F = mars * field(sun, r)\np = p + F * dtMars\nr = r + F * dtMars"),
    ),
    fault("power of one and a half", field("f = ((-G * M) / magnitude(d) ** 1.5) * unit(d)")),
    fault(
      "constant of another system of units",
      field("f = ((-6.6743e-8 * M) / magnitude(d) ** 2) * unit(d)"),
    ),
    fault(
      "distance from the ground",
      field("const h = magnitude(d) - 6.371e6\nf = ((-G * M) / (h * h)) * unit(d)"),
    ),
    fault("both masses", field("f = ((-G * (earth + moon)) / magnitude(d) ** 2) * unit(d)")),
    fault(
      "the mean of both fields",
      difference("gTide = (field(moon, place - moonAt) + field(moon, -moonAt)) / 2"),
    ),
    fault(
      "against the opposite place",
      difference("gTide = field(moon, place - moonAt) - field(moon, -place - moonAt)"),
    ),
    fault(
      "pull of the Sun for the tide",
      difference(
        "const at = vec3(1.496e11, 0, 0)\nconst M = 1.988e30\ngTide = field(M, place - at) - field(M, -at)",
      ),
    ),
    fault("mass squared", mars("p = p + mars * mars * field(sun, r) * dtMars\nr = r + (p / mars) * dtMars")),
    fault(
      "a number for the time step",
      mars("p = p + mars * field(sun, r) * 21600\nr = r + (p / mars) * 21600"),
    ),
    fault(
      "the force of the start for ever",
      mars(
        "const F = mars * field(sun, vec3(aMars * (1 - eMars), 0, 0))\np = p + F * dtMars\nr = r + (p / mars) * dtMars",
      ),
    ),
    fault(
      "a circle drawn",
      mars(
        "const w = (2 * Math.PI * t) / (687 * day)\nr = aMars * vec3(Math.cos(w), Math.sin(w), 0)\np = mars * vMars * vec3(-Math.sin(w), Math.cos(w), 0)",
      ),
    ),
  ],
}
