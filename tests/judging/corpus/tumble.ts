import { type Corpus, fault, right, slip } from "./corpus.ts"

const start = (text: string) => ({ start: text })
const angular = (text: string) => ({ angular: text })
const normal = (text: string) => ({ normal: text })
const grip = (text: string) => ({ grip: text })
const withMotion = ["friction-with-motion", "sign-turned"]

export const tumble: Corpus = {
  worksheet: "tumble",
  right: [
    right("as the sheet has it", start("v = vC + cross(omega, r - rStart)")),
    right("by method", start("v = omega.cross(r - rStart).add(vC)")),
    right("arm named", start("const arm = r - rStart\nconst turning = cross(omega, arm)\nv = turning + vC")),
    right("the other order with a minus", start("v = vC - cross(r - rStart, omega)")),
    right("by hand", start("const a = r - rStart\nv = vec3(speed - spin * a.y, spin * a.x, 0)")),
    right("added on", start("v += cross(omega, r - rStart)")),
    right("as the sheet has it, spin", angular("L = cross(rA - rC, pA) + cross(rB - rC, pB)")),
    right("half the stick each", angular("const arm = (rA - rB) / 2\nL = cross(arm, pA - pB)")),
    right("added up", angular("L = L + cross(rA - rC, pA)\nL = L + cross(rB - rC, pB)")),
    right(
      "by hand, spin",
      angular(
        "const Lz = (a: Vec3<'m'>, p: Vec3<'kg m/s'>) => a.x * p.y - a.y * p.x\nL = vec3(0, 0, Lz(rA - rC, pA) + Lz(rB - rC, pB))",
      ),
    ),
    right(
      "about the centre by subtraction",
      angular("L = cross(rA, pA) + cross(rB, pB) - cross(rC, pA + pB)"),
    ),
    right(
      "one line",
      normal("if (squeeze > 0) N = Math.max(0, deckStiffness * squeeze - deckDamping * p.y / ball)"),
    ),
    right(
      "by choice",
      normal(
        "if (squeeze > 0) {\n  N = deckStiffness * squeeze - deckDamping * (p.y / ball)\n  if (N < 0) N = 0\n}",
      ),
    ),
    right(
      "a conditional expression",
      normal(
        "const v = p / ball\nconst push = deckStiffness * squeeze - deckDamping * v.y\nN = r.y < 0 && push > 0 ? push : 0",
      ),
    ),
    right(
      "as the sheet has it, grip",
      grip("if (magnitude(along) > 0) friction = -Math.min(mu * N, magnitude(along) / dt) * unit(along)"),
    ),
    right(
      "by the sign",
      grip("friction = vec3(-Math.sign(p.x) * Math.min(mu * N, Math.abs(p.x) / dt), 0, 0)"),
    ),
    right(
      "the exact stop by choice",
      grip(
        "const q = magnitude(along)\nif (q > mu * N * dt) friction = -mu * N * (along / q)\nelse friction = -along / dt",
      ),
    ),
    right(
      "clipped",
      grip("const most = mu * N\nfriction = vec3(Math.max(-most, Math.min(most, -p.x / dt)), 0, 0)"),
    ),
    // written last, and measured once before anything was tuned on them

    right("with the library's own", start("v = velocityOfPoint(vC, omega, r - rStart)")),
    right(
      "by the angle",
      start(
        "const left = r.x < rStart.x\nconst u = (spin * stickLength) / 2\nv = vC + vec3(0, left ? -u : u, 0)",
      ),
    ),
    right("a sum", start("v = sum(vC, cross(omega, r), cross(rStart, omega))")),
    right("relative momentum", angular("const rel = pB - pA\nL = cross((rB - rA) / 2, rel)")),
    right(
      "two contacts of one law",
      normal(
        "const spring = deckStiffness * squeeze\nconst damper = (-deckDamping * p.y) / ball\nif (r.y < 0 && spring + damper > 0) N = spring + damper",
      ),
    ),
    right(
      "half of it and its size",
      normal(
        "const F = deckStiffness * squeeze - (deckDamping * p.y) / ball\nif (squeeze > 0) N = (F + Math.abs(F)) / 2",
      ),
    ),
    right(
      "stop or slide",
      grip(
        "const most = mu * N\nconst needed = magnitude(along) / dt\nif (needed > most) friction = most * -unit(along)\nelse friction = -along / dt",
      ),
    ),
    // halves what is left in each step, which vanishes with the step: right in the limit
    right(
      "half at the end",
      grip(
        "if (magnitude(along) > 0) friction = -Math.min(mu * N, (0.5 * magnitude(along)) / dt) * unit(along)",
      ),
    ),
  ],
  wrong: [
    slip("cross-product-turned", "the other order", start("v = vC + cross(r - rStart, omega)")),
    slip(
      "cross-product-turned",
      "the other order by method",
      start("const arm = r - rStart\nv = arm.cross(omega) + vC"),
    ),
    slip(["cross-product-turned", "sign-turned"], "taken away", start("v = vC - omega.cross(r - rStart)")),
    slip(
      ["cross-product-turned", "sign-turned"],
      "arm turned round",
      start("v = vC + cross(omega, rStart - r)"),
    ),
    slip(["term-missing", "force-missing"], "only the turning", start("v = cross(omega, r - rStart)")),
    slip(["term-missing", "force-missing"], "only the centre", start("v = speed * vec3(1, 0, 0)")),
    slip("term-missing", "place for arm", start("v = vC + cross(omega, r)")),
    slip("cross-product-turned", "momentum first", angular("L = cross(pA, rA - rC) + cross(pB, rB - rC)")),
    slip(
      ["second-body-forgotten", "term-missing"],
      "only A",
      angular("const arm = rA - rC\nL = cross(arm, pA)"),
    ),
    slip(
      ["sign-turned", "cross-product-turned"],
      "difference",
      angular("L = cross(rA - rC, pA) - cross(rB - rC, pB)"),
    ),
    slip(
      "floor-pulls",
      "no limit below",
      normal("if (squeeze > 0) N = deckStiffness * squeeze - (deckDamping * p.y) / ball"),
    ),
    slip(
      "floor-pulls",
      "no condition",
      normal("N = Math.max(0, deckStiffness * squeeze - (deckDamping * p.y) / ball)"),
    ),
    slip(
      "damper-sign-turned",
      "damper drives",
      normal("if (squeeze > 0) N = Math.max(0, deckStiffness * squeeze + (deckDamping * p.y) / ball)"),
    ),
    slip("force-missing", "only the spring", normal("if (r.y < 0) N = -deckStiffness * r.y")),
    slip(
      "mass-missing",
      "momentum for velocity",
      normal("if (squeeze > 0) N = Math.max(0, deckStiffness * squeeze - deckDamping * p.y)"),
    ),
    slip(
      withMotion,
      "forwards",
      grip("friction = Math.sign(p.x) * Math.min(mu * N, Math.abs(p.x) / dt) * vec3(1, 0, 0)"),
    ),
    slip(
      "friction-from-weight",
      "from the weight",
      grip(
        "if (magnitude(along) > 0) friction = -Math.min(mu * ball * 9.81, magnitude(along) / dt) * unit(along)",
      ),
    ),
    slip(
      "time-step-missing",
      "limit without the time step",
      grip("const q = magnitude(along)\nif (q > 0) friction = -Math.min(mu * N, q) * unit(along)"),
    ),
    slip(
      "factor-lost",
      "no coefficient",
      grip("if (magnitude(along) > 0) friction = -Math.min(N, magnitude(along) / dt) * unit(along)"),
    ),
    slip(
      "factor-lost",
      "no normal force",
      grip(
        "const size = Math.min(mu, magnitude(along) / dt)\nif (magnitude(along) > 0) friction = -unit(along) * size",
      ),
    ),
    slip(
      "friction-along-velocity",
      "against the whole momentum",
      grip(
        "if (magnitude(p) > 0) {\n  const size = Math.min(mu * N, magnitude(p) / dt)\n  friction = -size * unit(p)\n}",
      ),
    ),
    slip("term-missing", "arm for velocity", start("v = vC + (r - rStart)")),
    fault("spin times arm", start("v = vC + spin * (r - rStart)")),
    fault("half the spin", start("v = vC + 0.5 * cross(omega, r - rStart)")),
    fault("the whole stick for arm", start("v = vC + cross(omega, 2 * (r - rStart))")),
    fault("upwards for both", start("v = vC + vec3(0, (spin * stickLength) / 2, 0)")),
    fault("only the turning's size", start("v = vC + vec3(magnitude(cross(omega, r - rStart)), 0, 0)")),
    fault("about the start for ever", angular("L = cross(rA - rStart, pA) + cross(rB - rStart, pB)")),
    fault("about the origin", angular("L = cross(rA, pA) + cross(rB, pB)")),
    fault("velocity for momentum", angular("L = cross(rA - rC, pA / ball) + cross(rB - rC, pB / ball)")),
    fault("one body of both masses", angular("L = cross(rC, pA + pB)")),
    fault("by formula without the half", angular("L = ball * stickLength ** 2 * omega")),
    slip(
      ["sign-turned", "cross-product-turned"],
      "momentum exchanged",
      angular("L = cross(rA - rC, pB) + cross(rB - rC, pA)"),
    ),
    fault(
      "squeeze squared",
      normal("if (squeeze > 0) N = Math.max(0, deckStiffness * squeeze ** 2 - (deckDamping * p.y) / ball)"),
    ),
    fault(
      "half the stiffness",
      normal("if (squeeze > 0) N = Math.max(0, 0.5 * deckStiffness * squeeze - (deckDamping * p.y) / ball)"),
    ),
    fault("only the weight", normal("if (squeeze > 0) N = ball * 9.81")),
    fault(
      "damper with the size of the speed",
      normal(
        "if (squeeze > 0) N = Math.max(0, deckStiffness * squeeze + deckDamping * Math.abs(p.y / ball))",
      ),
    ),
    fault("momentum mirrored", normal("if (squeeze > 0 && p.y < 0) N = (-2 * p.y) / dt")),
    fault(
      "never lets go of the limit",
      grip("if (magnitude(along) > 0) friction = -0.5 * mu * N * unit(along)"),
    ),
    fault("always against the throw", grip("friction = vec3(-mu * N, 0, 0)")),
    fault(
      "limit of the whole momentum",
      grip("if (magnitude(along) > 0) friction = -Math.max(mu * N, magnitude(along) / dt) * unit(along)"),
    ),
    fault(
      "coefficient of the sheet",
      grip("if (magnitude(along) > 0) friction = -Math.min(0.5 * N, magnitude(along) / dt) * unit(along)"),
    ),
    fault("proportional to momentum", grip("friction = -mu * along")),
    // written last, and measured once before anything was tuned on them

    slip(
      "cross-product-turned",
      "by hand",
      start("const a = r - rStart\nv = vC + vec3(spin * a.y, -spin * a.x, 0)"),
    ),
    slip(
      ["term-missing", "force-missing"],
      "the centre stands",
      start("const a = r - rStart\nv = vec3(0, spin * a.x, 0)"),
    ),
    slip(["second-body-forgotten", "term-missing"], "only B", angular("L = (rB - rC).cross(pB)")),
    slip(
      "force-missing",
      "spring without damper",
      normal("const s = Math.max(0, squeeze)\nN = deckStiffness * s"),
    ),
    slip(
      "damper-sign-turned",
      "damper the wrong way",
      normal(
        "const v = p.y / ball\nif (squeeze > 0) {\n  N = deckStiffness * squeeze + deckDamping * v\n  if (N < 0) N = 0\n}",
      ),
    ),
    slip(
      "factor-lost",
      "no coefficient and by sign",
      grip("const most = N\nfriction = vec3(-Math.sign(p.x) * Math.min(most, Math.abs(p.x) / dt), 0, 0)"),
    ),
    fault("the spin as a speed", start("v = vC + spin * vec3(0, 1, 0)")),
    fault(
      "radius of the whole",
      start("const R = stickLength\nconst s = Math.sign(r.x - rStart.x)\nv = vC + vec3(0, s * spin * R, 0)"),
    ),
    fault("turns per second", start("v = vC + 2 * Math.PI * cross(omega, r - rStart)")),
    fault("old centre", angular("L = cross(rA - rB, pA) + cross(rB - rA, pB)")),
    fault(
      "size of the product",
      angular(
        "const s = magnitude(rA - rC) * magnitude(pA) + magnitude(rB - rC) * magnitude(pB)\nL = vec3(0, 0, s)",
      ),
    ),
    fault("dot for cross", angular("L = vec3(0, 0, dot(rA - rC, pA) + dot(rB - rC, pB))")),
    // 6 N/m beside 4000: moves as without the damper
    slip(
      "force-missing",
      "damper on the squeeze",
      normal("if (squeeze > 0) N = Math.max(0, deckStiffness * squeeze - deckDamping * squeeze)"),
    ),
    fault(
      "mass of both",
      normal("if (squeeze > 0) N = Math.max(0, deckStiffness * squeeze - (deckDamping * p.y) / (2 * ball))"),
    ),
    fault(
      "only on the way down",
      normal("if (squeeze > 0 && p.y < 0) N = deckStiffness * squeeze - (deckDamping * p.y) / ball"),
    ),
    fault(
      "speed for momentum",
      grip(
        "const v = along / ball\nif (magnitude(v) > 0) friction = -Math.min(mu * N, magnitude(v) / dt) * unit(v)",
      ),
    ),
  ],
}
