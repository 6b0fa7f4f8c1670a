import { type Corpus, fault, right, slip } from "./corpus.ts"

/** The normal force as the sheet has it, for answers that differ in the friction. */
const normal = "if (squeeze > 0) N = Math.max(0, stiffness * squeeze - (damping * p.y) / mass)\n"
/** Friction as the sheet has it, for answers that differ in the normal force. */
const rubbed = "\nif (magnitude(along) > 0) friction = -Math.min(mu * N, magnitude(along) / dt) * unit(along)"
const mat = (text: string) => ({ mat: text })
const push = (text: string) => mat(text + rubbed)
const rub = (text: string) => mat(normal + text)
const residual = (text: string) => ({ residual: text })
const rms = (text: string) => ({ rms: text })
const twoSlips = ["damper-sign-turned + magnitude-for-vector", "sign-turned + magnitude-for-vector"]
const withMotion = ["friction-with-motion", "sign-turned"]

export const measured: Corpus = {
  worksheet: "measured",
  right: [
    right(
      "as the sheet has it",
      mat(
        "if (squeeze > 0) {\n  const rate = -p.y / mass\n  N = Math.max(0, stiffness * squeeze + damping * rate)\n}\nif (magnitude(along) > 0) {\n  const size = Math.min(mu * N, magnitude(along) / dt)\n  friction = -size * unit(along)\n}",
      ),
    ),
    right(
      "by height and velocity",
      push(
        "const vy = p.y / mass\nif (r.y < 0) {\n  N = -stiffness * r.y - damping * vy\n  if (N < 0) N = 0\n}",
      ),
    ),
    right(
      "a conditional expression",
      push("N = squeeze > 0 ? Math.max(stiffness * squeeze - damping * (p.y / mass), 0) : 0"),
    ),
    right(
      "spring and damper apart",
      push(
        "let Fspring = 0\nlet Fdamper = 0\nif (squeeze > 0) {\n  Fspring = stiffness * squeeze\n  Fdamper = (-damping * p.y) / mass\n}\nN = Fspring + Fdamper > 0 ? Fspring + Fdamper : 0",
      ),
    ),
    right(
      "pulls taken away afterwards",
      push("if (squeeze > 0) N = stiffness * squeeze - (damping * p.y) / mass\nif (!(N >= 0)) N = 0"),
    ),
    right(
      "squeeze clipped first",
      push(
        "const s = Math.max(0, squeeze)\nconst touching = s > 0 ? 1 : 0\nN = Math.max(0, stiffness * s - (touching * damping * p.y) / mass)",
      ),
    ),
    right(
      "a helper function",
      push(
        "const contact = (s: number, u: number) => (s <= 0 ? 0 : Math.max(0, stiffness * s - damping * u))\nN = contact(squeeze, p.y / mass)",
      ),
    ),
    right(
      "damping by the vector",
      push(
        "const up = vec3(0, 1, 0)\nif (squeeze > 0) N = Math.max(0, stiffness * squeeze - dot((damping * p) / mass, up))",
      ),
    ),
    right(
      "friction by component",
      rub("friction = vec3(-Math.sign(p.x) * Math.min(mu * N, Math.abs(p.x) / dt), 0, 0)"),
    ),
    right(
      "friction by choice",
      rub(
        "if (Math.abs(p.x) > mu * N * dt) friction = vec3(p.x > 0 ? -mu * N : mu * N, 0, 0)\nelse friction = -along / dt",
      ),
    ),
    right(
      "friction as a share of the momentum",
      rub("const q = magnitude(along)\nif (q > 0) friction = along * -(Math.min(mu * N * dt, q) / (q * dt))"),
    ),
    right(
      "friction with methods",
      rub(
        "if (along.magnitude() > 0) friction = along.unit().times(-Math.min(mu * N, along.magnitude() / dt))",
      ),
    ),
    right(
      "friction by velocity",
      rub(
        "const v = along / mass\nconst speed = magnitude(v)\nif (speed > 0) friction = (-Math.min(mu * N, (mass * speed) / dt) * v) / speed",
      ),
    ),
    // the puck never comes to rest along the mat within the film, so the limit is never reached at these frictions
    right(
      "friction only while it presses",
      rub(
        "if (N > 0 && p.x !== 0) {\n  const most = mu * N\n  const enough = Math.abs(p.x) / dt\n  friction = vec3(-Math.sign(p.x) * (most < enough ? most : enough), 0, 0)\n}",
      ),
    ),
    right(
      "everything in the contact",
      mat(
        "if (squeeze > 0) {\n  const v = p / mass\n  N = Math.max(0, stiffness * squeeze - damping * v.y)\n  const most = Math.min(mu * N, magnitude(along) / dt)\n  if (v.x > 0) friction = vec3(-most, 0, 0)\n  if (v.x < 0) friction = vec3(most, 0, 0)\n}",
      ),
    ),
    right("residual by components", residual("miss = vec3(x - r.x, y - r.y, 0)")),
    right("residual with a method", residual("miss = seen.subtract(r)")),
    right("mean named first", rms("const mean = sumOfSquares / 160\nrms = Math.sqrt(mean)")),
    right(
      "counted from the film",
      rms("const count = xFilm.length + yFilm.length\nrms = (sumOfSquares / count) ** 0.5"),
    ),
    right("root taken apart", rms("rms = Math.sqrt(sumOfSquares) / Math.sqrt(2 * xFilm.length)")),
    right(
      "half of the sum with its size",
      push(
        "const raw = stiffness * squeeze - damping * (p.y / mass)\nif (squeeze >= 0) N = (raw + Math.abs(raw)) / 2",
      ),
    ),
    right(
      "two conditions",
      push(
        "if (squeeze > 0 && stiffness * squeeze > (damping * p.y) / mass) N = stiffness * squeeze - (damping * p.y) / mass",
      ),
    ),
    right(
      "clipped on both sides",
      rub("const most = mu * N\nfriction = vec3(Math.max(-most, Math.min(most, -p.x / dt)), 0, 0)"),
    ),
    right(
      "by an impulse",
      rub(
        "const J = Math.min(mu * N * dt, Math.abs(p.x))\nif (p.x > 0) friction = vec3(-J / dt, 0, 0)\nelse if (p.x < 0) friction = vec3(J / dt, 0, 0)",
      ),
    ),
    right("residual added up", { residual: "miss = miss + seen\nmiss = miss - r" }),
    right("root mean square by a helper", {
      rms: "const meanOf = (total: number, count: number) => total / count\nrms = Math.sqrt(meanOf(sumOfSquares, 2 * yFilm.length))",
    }),
  ],
  wrong: [
    slip(
      "floor-pulls",
      "no smallest value",
      push("if (squeeze > 0) N = stiffness * squeeze - (damping * p.y) / mass"),
    ),
    slip(
      "floor-pulls",
      "no contact asked for",
      push("N = Math.max(0, stiffness * squeeze - (damping * p.y) / mass)"),
    ),
    slip(
      "floor-pulls",
      "neither of the two",
      push("const vy = p.y / mass\nN = stiffness * squeeze - damping * vy"),
    ),
    slip(
      "floor-pulls",
      "pulled back on the way out, in two lines",
      push("if (r.y < 0) {\n  N = -stiffness * r.y\n  N = N - (damping * p.y) / mass\n}"),
    ),
    slip(
      ["damper-sign-turned", "sign-turned"],
      "the damper drives",
      push("if (squeeze > 0) N = Math.max(0, stiffness * squeeze + (damping * p.y) / mass)"),
    ),
    slip(["force-missing", "term-missing"], "no damper", push("if (squeeze > 0) N = stiffness * squeeze")),
    slip(
      ["force-missing", "term-missing", "only-last-force"],
      "only the damper",
      push("if (r.y < 0) N = Math.max(0, (-damping * p.y) / mass)"),
    ),
    slip(
      ["mass-missing", "momentum-for-velocity"],
      "momentum for velocity in the damper",
      push("if (squeeze > 0) N = Math.max(0, stiffness * squeeze - damping * p.y)"),
    ),
    slip(
      ["spring-sign-turned", "sign-turned"],
      "height for squeeze",
      push("if (squeeze > 0) N = Math.max(0, stiffness * r.y - (damping * p.y) / mass)"),
    ),
    slip(
      "comparison-turned",
      "contact in the air",
      push("if (squeeze < 0) N = Math.max(0, stiffness * squeeze - (damping * p.y) / mass)"),
    ),
    // above the mat is where it is not squeezed
    slip(
      "comparison-turned",
      "contact above the mat",
      push("if (r.y > 0) N = Math.max(0, -stiffness * r.y - (damping * p.y) / mass)"),
    ),
    fault(
      "the squeeze squared",
      push("if (squeeze > 0) N = Math.max(0, stiffness * squeeze * squeeze - (damping * p.y) / mass)"),
    ),
    fault(
      "half the stiffness",
      push("if (squeeze > 0) N = Math.max(0, (stiffness / 2) * squeeze - (damping * p.y) / mass)"),
    ),
    fault(
      "the weight held as well",
      push("if (squeeze > 0) N = mass * 9.81 + Math.max(0, stiffness * squeeze - (damping * p.y) / mass)"),
    ),
    fault("the weight only", push("if (squeeze > 0) N = mass * 9.81")),
    // the size of the momentum with the sign of its component turned: two slips at once
    slip(
      twoSlips,
      "the whole momentum in the damper",
      push("if (squeeze > 0) N = Math.max(0, stiffness * squeeze + (damping * magnitude(p)) / mass)"),
    ),
    fault(
      "pushes on the way in only",
      push("if (squeeze > 0 && p.y < 0) N = stiffness * squeeze - (damping * p.y) / mass"),
    ),
    fault(
      "stiffness copied from the slider",
      push("if (squeeze > 0) N = Math.max(0, 400 * squeeze - (damping * p.y) / mass)"),
    ),
    fault(
      "damping mistyped",
      push("if (squeeze > 0) N = Math.max(0, stiffness * squeeze - (0.3 * p.y) / mass)"),
    ),
    fault(
      "a bounce by turning the momentum",
      push("if (squeeze > 0 && p.y < 0) p = vec3(p.x, -0.7 * p.y, 0)"),
    ),
    fault(
      "a limit from above",
      push(
        "if (squeeze > 0) N = Math.min(mass * 9.81 * 3, Math.max(0, stiffness * squeeze - (damping * p.y) / mass))",
      ),
    ),
    slip(
      withMotion,
      "friction forwards",
      rub("if (magnitude(along) > 0) friction = Math.min(mu * N, magnitude(along) / dt) * unit(along)"),
    ),
    slip(
      withMotion,
      "friction forwards by the sign",
      rub("const size = mu * N\nfriction = vec3(Math.sign(p.x) * size, 0, 0)"),
    ),
    slip(
      "friction-along-velocity",
      "against the whole momentum",
      rub("if (magnitude(p) > 0) friction = -Math.min(mu * N, magnitude(p) / dt) * unit(p)"),
    ),
    slip(
      "friction-from-weight",
      "from the weight",
      rub(
        "if (magnitude(along) > 0) friction = -Math.min(mu * mass * 9.81, magnitude(along) / dt) * unit(along)",
      ),
    ),
    slip(
      "friction-from-weight",
      "from the weight by components",
      rub("friction = vec3(-mu * mass * magnitude(g) * Math.sign(p.x), 0, 0)"),
    ),
    slip(
      ["direction-not-unit", "magnitude-for-vector"],
      "the momentum for its direction",
      rub("friction = -Math.min(mu * N, magnitude(along) / dt) * along"),
    ),
    slip(
      ["factor-lost", "force-missing", "friction-without-contact"],
      "no normal force",
      rub("if (magnitude(along) > 0) friction = -Math.min(mu, magnitude(along) / dt) * unit(along)"),
    ),
    slip(
      "factor-lost",
      "no coefficient",
      rub("if (magnitude(along) > 0) friction = -Math.min(N, magnitude(along) / dt) * unit(along)"),
    ),
    slip(
      "time-step-missing",
      "limit without the time step",
      rub("if (magnitude(along) > 0) friction = -Math.min(mu * N, magnitude(along)) * unit(along)"),
    ),
    slip("force-missing", "forgotten", rub("friction = vec3(0, 0, 0)")),
    fault(
      "half of it",
      rub(
        "if (magnitude(along) > 0) friction = -Math.min((mu * N) / 2, magnitude(along) / dt) * unit(along)",
      ),
    ),
    fault(
      "over the coefficient",
      rub(
        "if (mu > 0 && magnitude(along) > 0) friction = -Math.min(N / mu, magnitude(along) / dt) * unit(along)",
      ),
    ),
    fault(
      "friction of the spring alone",
      rub("if (squeeze > 0) friction = vec3(-mu * stiffness * squeeze, 0, 0)"),
    ),
    fault("against the velocity up and down", rub("friction = vec3(0, -mu * N * Math.sign(p.y), 0)")),
    // the limit is never reached, so that this is the whole arrow for its direction
    slip("direction-not-unit", "in proportion to the momentum", rub("friction = -mu * N * along")),
    fault(
      "coefficient copied from the fit",
      rub("if (magnitude(along) > 0) friction = -Math.min(0.28 * N, magnitude(along) / dt) * unit(along)"),
    ),
    fault("brakes to a stop at the contact", rub("if (N > 0) friction = -along / dt")),
    fault("also in the air", rub("friction = -(mu * (N + mass * 9.81)) * unit(along)")),
    slip("sign-turned", "model less film", residual("miss = r - seen")),
    slip(
      "sign-turned",
      "model less film by components",
      residual("const dx = r.x - x\nconst dy = r.y - y\nmiss = vec3(dx, dy, 0)"),
    ),
    slip("term-missing", "the film itself", residual("miss = vec3(x, y, 0)")),
    fault("only along x", residual("miss = vec3(x - r.x, 0, 0)")),
    fault("sizes only", residual("miss = vec3(Math.abs(x - r.x), Math.abs(y - r.y), 0)")),
    fault("x and y exchanged", residual("miss = vec3(y - r.y, x - r.x, 0)")),
    fault("the sum for the difference", residual("miss = (seen + r) / 2")),
    slip(
      ["factor-missing", "factor-lost"],
      "mean over the pictures",
      rms("rms = Math.sqrt(sumOfSquares / 80)"),
    ),
    fault("no root", rms("rms = sumOfSquares / 160")),
    fault("the root of the sum", rms("rms = Math.sqrt(sumOfSquares)")),
    fault("in millimetres twice", rms("rms = 1000 * Math.sqrt(sumOfSquares / 160)")),
    fault("mean outside the root", rms("rms = Math.sqrt(sumOfSquares) / 160")),
    slip(
      "floor-pulls",
      "pulls in methods",
      push("const v = p.over(mass)\nif (r.y < 0) N = -stiffness * r.y - damping * v.y"),
    ),
    slip(
      ["damper-sign-turned", "sign-turned"],
      "damper turned by a name",
      push("const vy = p.y / mass\nif (squeeze > 0) N = Math.max(0, stiffness * squeeze + damping * vy)"),
    ),
    slip(
      ["mass-missing"],
      "damper by the momentum",
      push("const rate = -p.y\nif (squeeze > 0) N = Math.max(0, stiffness * squeeze + damping * rate)"),
    ),
    slip(
      "friction-from-weight",
      "weight for the push",
      rub(
        "const size = Math.min(mu * 1.4715, Math.abs(p.x) / dt)\nfriction = vec3(-Math.sign(p.x) * size, 0, 0)",
      ),
    ),
    slip(
      ["friction-with-motion", "sign-turned"],
      "with the motion by methods",
      rub("if (along.magnitude() > 0) friction = along.unit().times(mu * N)"),
    ),
    slip("sign-turned", "residual turned as a whole", { residual: "miss = -(seen - r)" }),
    fault(
      "depth for the whole height",
      push("if (squeeze > 0) N = Math.max(0, stiffness * (0.75 - r.y) - (damping * p.y) / mass)"),
    ),
    slip(
      twoSlips,
      "damped by the speed",
      push("if (squeeze > 0) N = Math.max(0, stiffness * squeeze + damping * magnitude(p / mass))"),
    ),
    fault(
      "over the mass",
      push("if (squeeze > 0) N = Math.max(0, stiffness * squeeze - (damping * p.y) / mass) / mass"),
    ),
    fault(
      "a threshold too deep",
      push("if (squeeze > 0.01) N = Math.max(0, stiffness * squeeze - (damping * p.y) / mass)"),
    ),
    fault(
      "spring and damper multiplied",
      push("if (squeeze > 0) N = Math.max(0, stiffness * squeeze * (1 - (damping * p.y) / mass))"),
    ),
    fault(
      "friction squared",
      rub("if (magnitude(along) > 0) friction = -Math.min(mu * mu * N, magnitude(along) / dt) * unit(along)"),
    ),
    fault(
      "friction with the spring on the way in only",
      rub(
        "if (p.y < 0 && magnitude(along) > 0) friction = -Math.min(mu * N, magnitude(along) / dt) * unit(along)",
      ),
    ),
    fault("friction along y and x", rub("friction = vec3(-mu * N, -mu * N, 0)")),
    fault("residual doubled", { residual: "miss = 2 * (seen - r)" }),
    fault("residual of velocities", { residual: "miss = seen - p / mass" }),
    fault("mean of sizes", { rms: "rms = sumOfSquares / 80 / 2" }),
    fault("three coordinates", { rms: "rms = Math.sqrt(sumOfSquares / (3 * 80))" }),
  ],
}
