import { type Corpus, fault, right, slip } from "./corpus.ts"

const friction = (text: string) => ({ friction: text })
const hold = (text: string) => ({ hold: text })
const withMotion = ["friction-with-motion", "sign-turned"]

export const slipway: Corpus = {
  worksheet: "slipway",
  right: [
    right(
      "as the sheet has it",
      friction(
        "if (magnitude(p) > 0) {\n  const size = Math.min(mu * N, magnitude(p) / dt)\n  Ffriction = -size * unit(p)\n}",
      ),
    ),
    right(
      "other names",
      friction(
        "const q = magnitude(p)\nif (q > 0) {\n  const most = mu * N\n  const enough = q / dt\n  Ffriction = -Math.min(most, enough) * unit(p)\n}",
      ),
    ),
    right(
      "a choice for the limit",
      friction(
        "if (magnitude(p) > 0) {\n  let size = mu * N\n  if (size * dt > magnitude(p)) size = magnitude(p) / dt\n  Ffriction = -unit(p) * size\n}",
      ),
    ),
    right(
      "the exact stop as a vector",
      friction("if (magnitude(p) > mu * N * dt) Ffriction = -mu * N * unit(p)\nelse Ffriction = -p / dt"),
    ),
    right(
      "scaled momentum",
      friction(
        "const most = mu * N * dt\nconst size = magnitude(p)\nif (size > 0) Ffriction = -(Math.min(most, size) / size / dt) * p",
      ),
    ),
    right(
      "by the sign of the component",
      friction("Ffriction = vec3(-Math.sign(p.x) * Math.min(mu * N, Math.abs(p.x) / dt), 0, 0)"),
    ),
    right(
      "by velocity",
      friction(
        "const v = p / mass\nif (magnitude(v) > 0) {\n  const size = Math.min(mu * N, mass * magnitude(v) / dt)\n  Ffriction = -size * unit(v)\n}",
      ),
    ),
    right(
      "methods",
      friction("if (p.magnitude() > 0) Ffriction = p.unit().times(-Math.min(mu * N, p.magnitude() / dt))"),
    ),
    right(
      "a conditional expression",
      friction(
        "Ffriction = magnitude(p) > 0 ? -Math.min(mu * N, magnitude(p) / dt) * unit(p) : vec3(0, 0, 0)",
      ),
    ),
    right(
      "a helper function",
      friction(
        "function opposing(q, most) {\n  const size = magnitude(q)\n  return size > 0 ? -(Math.min(most, size / dt) / size) * q : vec3(0, 0, 0)\n}\nFfriction = opposing(p, mu * N)",
      ),
    ),
    right(
      "friction from the weight on the level",
      friction("if (magnitude(p) > 0) Ffriction = -Math.min(mu * mass * g, magnitude(p) / dt) * unit(p)"),
    ),
    right(
      "normal force from its vector",
      friction(
        "if (magnitude(p) > 0) Ffriction = -Math.min(mu * magnitude(Fnormal), magnitude(p) / dt) * unit(p)",
      ),
    ),
    right(
      "the stop by hand",
      friction(
        "if (p.x > mu * N * dt) Ffriction = -mu * N * vec3(1, 0, 0)\nelse Ffriction = vec3(-p.x / dt, 0, 0)",
      ),
    ),
    right(
      "not equal for larger",
      friction("if (magnitude(p) !== 0) {\n  Ffriction = Math.min(mu * N, magnitude(p) / dt) * -unit(p)\n}"),
    ),
    right(
      "as the sheet has it, on the slope",
      hold("const size = Math.min(mu * Nslope, Math.abs(free) / dt)\nalong = -size * Math.sign(free)"),
    ),
    right("clipped on both sides", hold("along = Math.max(-mu * Nslope, Math.min(mu * Nslope, -free / dt))")),
    right(
      "by choice",
      hold(
        "const most = mu * Nslope\nif (free > most * dt) along = -most\nelse if (free < -most * dt) along = most\nelse along = -free / dt",
      ),
    ),
    right(
      "needed and possible",
      hold(
        "const needed = -free / dt\nconst possible = mu * Nslope\nalong = Math.abs(needed) <= possible ? needed : possible * Math.sign(needed)",
      ),
    ),
    right(
      "normal force written out",
      hold(
        "const most = mu * mass * g * Math.cos(alpha)\nalong = -Math.sign(free) * Math.min(most, Math.abs(free / dt))",
      ),
    ),
    right(
      "impulse first",
      hold(
        "const J = Math.min(mu * Nslope * dt, Math.abs(free))\nif (free > 0) along = -J / dt\nif (free < 0) along = J / dt",
      ),
    ),
    right(
      "magnitude of the normal force",
      hold(
        "const size = Math.min(mu * magnitude(Fnormal), Math.abs(free) / dt)\nalong = free > 0 ? -size : size",
      ),
    ),
    right(
      "free momentum found again",
      hold(
        "const q = p.x - mass * g * Math.sin(alpha) * dt\nalong = -Math.sign(q) * Math.min(mu * Nslope, Math.abs(q) / dt)",
      ),
    ),
    // creeps by g sin α Δt while it should hold, which vanishes with the step: right in the limit
    right(
      "against the momentum itself",
      hold("along = -Math.sign(p.x) * Math.min(mu * Nslope, Math.abs(p.x) / dt)"),
    ),
    right(
      "from the impulse that is left",
      friction("const J = Math.min(mu * N * dt, magnitude(p))\nif (J > 0) Ffriction = -(J / dt) * unit(p)"),
    ),
    right(
      "a helper for the limit",
      friction(
        "const atMost = (x: number, most: number) => (x > most ? most : x)\nif (p.x > 0) Ffriction = vec3(-atMost(p.x / dt, mu * N), 0, 0)",
      ),
    ),
    right(
      "with the normal vector's size",
      friction(
        "const most = mu * dot(Fnormal, vec3(0, 1, 0))\nconst q = magnitude(p)\nif (q > 0) Ffriction = p.unit().times(-Math.min(most, q / dt))",
      ),
    ),
    right(
      "against what would be left",
      hold("const needed = free / dt\nalong = -Math.sign(needed) * Math.min(Math.abs(needed), mu * Nslope)"),
    ),
    right(
      "three cases",
      hold(
        "const most = mu * Nslope * dt\nif (Math.abs(free) <= most) along = -free / dt\nelse along = free > 0 ? -most / dt : most / dt",
      ),
    ),
  ],
  wrong: [
    slip(
      withMotion,
      "forwards",
      friction("if (magnitude(p) > 0) Ffriction = Math.min(mu * N, magnitude(p) / dt) * unit(p)"),
    ),
    slip(
      withMotion,
      "forwards without the limit",
      friction("if (magnitude(p) > 0) {\n  Ffriction = mu * N * unit(p)\n}"),
    ),
    slip(withMotion, "forwards by the sign", friction("Ffriction = vec3(Math.sign(p.x) * mu * N, 0, 0)")),
    slip(
      "time-step-missing",
      "limit without the time step",
      friction("const size = magnitude(p)\nif (size > 0) Ffriction = -Math.min(mu * N, size) * unit(p)"),
    ),
    slip(
      "time-step-missing",
      "in units of one second",
      friction(
        "if (magnitude(p) > 0) {\n  const most = mu * N\n  if (magnitude(p) > most) Ffriction = -most * unit(p)\n  else Ffriction = -p\n}",
      ),
    ),
    slip(
      ["direction-not-unit", "magnitude-for-vector"],
      "momentum for direction",
      friction("if (magnitude(p) > 0) Ffriction = -Math.min(mu * N, magnitude(p) / dt) * p"),
    ),
    slip(
      ["factor-lost", "mass-missing", "force-missing"],
      "no normal force",
      friction("if (magnitude(p) > 0) Ffriction = -Math.min(mu, magnitude(p) / dt) * unit(p)"),
    ),
    slip(
      ["comparison-turned", "momentum-not-updated"],
      "never true",
      friction("if (magnitude(p) < 0) Ffriction = -Math.min(mu * N, magnitude(p) / dt) * unit(p)"),
    ),
    slip(
      withMotion,
      "up the slope on the way up",
      hold("along = Math.sign(free) * Math.min(mu * Nslope, Math.abs(free) / dt)"),
    ),
    slip(
      "time-step-missing",
      "limit without the time step on the slope",
      hold("along = -Math.sign(free) * Math.min(mu * Nslope, Math.abs(free))"),
    ),
    slip(
      "factor-lost",
      "no normal force on the slope",
      hold("const size = Math.min(mu, Math.abs(free) / dt)\nalong = free > 0 ? -size : size"),
    ),
    fault("never lets go of the limit", friction("if (magnitude(p) > 0) Ffriction = -mu * N * unit(p)")),
    fault(
      "stops a little early",
      friction("if (magnitude(p) > 5) Ffriction = -mu * N * unit(p)\nelse p = vec3(0, 0, 0)"),
    ),
    fault(
      "the larger for the smaller",
      friction("if (magnitude(p) > 0) Ffriction = -Math.max(mu * N, magnitude(p) / dt) * unit(p)"),
    ),
    fault("always the full stop", friction("Ffriction = -p / dt")),
    // the whole momentum for its direction, and no normal force: two slips at once
    slip("direction-not-unit + factor-lost", "proportional to momentum", friction("Ffriction = -mu * p")),
    fault("drag", friction("const v = p / mass\nFfriction = -mu * mass * v * 2")),
    fault(
      "normal force of half the weight",
      friction("if (magnitude(p) > 0) Ffriction = -Math.min(mu * N / 2, magnitude(p) / dt) * unit(p)"),
    ),
    fault(
      "mass twice",
      friction(
        "if (magnitude(p) > 0) Ffriction = -Math.min(mu * N * mass / 20, magnitude(p) / dt) * unit(p)",
      ),
    ),
    fault(
      "downwards",
      friction("if (magnitude(p) > 0) Ffriction = vec3(0, -Math.min(mu * N, magnitude(p) / dt), 0)"),
    ),
    fault(
      "coefficient copied",
      friction("if (magnitude(p) > 0) Ffriction = -Math.min(0.3 * N, magnitude(p) / dt) * unit(p)"),
    ),
    fault(
      "right for one crate only",
      friction("if (magnitude(p) > 0) Ffriction = -Math.min(0.35 * 40 * 9.81, magnitude(p) / dt) * unit(p)"),
    ),
    fault(
      "over mu",
      friction("if (magnitude(p) > 0) Ffriction = -Math.min(N / mu, magnitude(p) / dt) * unit(p)"),
    ),
    fault(
      "g of 10",
      friction("if (magnitude(p) > 0) Ffriction = -Math.min(mu * mass * 10, magnitude(p) / dt) * unit(p)"),
    ),
    fault(
      "stop at a clock time",
      friction("if (t < 0.7) Ffriction = -mu * N * vec3(1, 0, 0)\nelse p = vec3(0, 0, 0)"),
    ),
    fault(
      "half at the end",
      friction("if (magnitude(p) > 0) Ffriction = -Math.min(mu * N, 0.5 * magnitude(p) / dt) * unit(p)"),
    ),
    fault(
      "twice the limit",
      friction("if (magnitude(p) > 0) Ffriction = -Math.min(mu * N, 2 * magnitude(p) / dt) * unit(p)"),
    ),
    fault(
      "velocity for momentum in the limit",
      friction(
        "const v = p / mass\nif (magnitude(v) > 0) Ffriction = -Math.min(mu * N, magnitude(v) / dt) * unit(v)",
      ),
    ),
    fault("stops when slow enough to see", friction("if (magnitude(p) > 4) Ffriction = -mu * N * unit(p)")),
    fault("against the x axis whatever happens", friction("Ffriction = vec3(-mu * N, 0, 0)")),
    fault("always downhill", hold("along = -mu * Nslope")),
    fault(
      "against the velocity, never holds",
      hold("if (p.x > 0) along = -mu * Nslope\nelse if (p.x < 0) along = mu * Nslope"),
    ),
    fault("holds only", hold("along = -free / dt")),
    fault(
      "weight for normal force",
      hold("along = -Math.sign(free) * Math.min(mu * mass * g, Math.abs(free) / dt)"),
    ),
    fault(
      "sine for cosine",
      hold("along = -Math.sign(free) * Math.min(mu * mass * g * Math.sin(alpha), Math.abs(free) / dt)"),
    ),
    slip(
      "factor-lost",
      "without the coefficient",
      hold("along = -Math.sign(free) * Math.min(Nslope, Math.abs(free) / dt)"),
    ),
    fault(
      "tangent with it",
      hold("along = -Math.sign(free) * Math.min(mu * Nslope * Math.tan(alpha), Math.abs(free) / dt)"),
    ),
    fault("only on the way up", hold("if (p.x > 0) along = -Math.min(mu * Nslope, Math.abs(free) / dt)")),
    fault("balances the weight always", hold("along = -Fg.x")),
    fault(
      "weight added once more",
      hold("along = -Math.sign(free) * Math.min(mu * Nslope, Math.abs(free) / dt) + Fg.x"),
    ),
    fault("half of it", hold("along = -0.5 * Math.sign(free) * Math.min(mu * Nslope, Math.abs(free) / dt)")),
    fault(
      "the angle in degrees",
      hold("along = -Math.sign(free) * Math.min(mu * mass * g * Math.cos(slope), Math.abs(free) / dt)"),
    ),
    fault(
      "the largest for the smallest",
      hold("along = -Math.sign(free) * Math.max(mu * Nslope, Math.abs(free) / dt)"),
    ),
    fault(
      "right for one slope only",
      hold("along = -Math.sign(free) * Math.min(mu * mass * g * 0.9659, Math.abs(free) / dt)"),
    ),
    fault("by the speed", hold("along = -mu * Nslope * p.x / mass")),
    slip(
      ["friction-with-motion", "sign-turned"],
      "pushes on",
      friction("const size = Math.min(mu * N, magnitude(p) / dt)\nif (size > 0) Ffriction = size * unit(p)"),
    ),
    slip(
      "time-step-missing",
      "momentum for force at the end",
      friction("if (magnitude(p) > 0) Ffriction = -unit(p) * Math.min(mu * N, magnitude(p))"),
    ),
    slip(
      ["friction-with-motion", "sign-turned"],
      "uphill on the way up",
      hold("const size = Math.min(mu * Nslope, Math.abs(free) / dt)\nalong = free > 0 ? size : -size"),
    ),
    fault(
      "a third of the limit",
      friction("if (magnitude(p) > 0) Ffriction = -Math.min((mu * N) / 3, magnitude(p) / dt) * unit(p)"),
    ),
    fault(
      "coefficient under a root",
      friction("if (magnitude(p) > 0) Ffriction = -Math.min(Math.sqrt(mu) * N, magnitude(p) / dt) * unit(p)"),
    ),
    fault(
      "friction fades with the speed",
      friction(
        "if (magnitude(p) > 0) Ffriction = (-Math.min(mu * N, magnitude(p) / dt) * p) / (mass * speed)",
      ),
    ),
    fault(
      "on the slope with the level's normal force",
      hold("along = -Math.sign(free) * Math.min(mu * mass * g, Math.abs(free) / dt)"),
    ),
    fault("holds only at rest", hold("if (Math.abs(p.x) < 1) along = -free / dt\nelse along = -mu * Nslope")),
    fault(
      "slope taken twice",
      hold("along = -Math.sign(free) * Math.min(mu * Nslope * cosine, Math.abs(free) / dt)"),
    ),
  ],
}
