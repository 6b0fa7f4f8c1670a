import { type Corpus, fault, right, slip } from "./corpus.ts"

const push = (text: string) => ({ push: text })
const damped = (text: string) => ({ damped: text })
const oneWay = (text: string) => ({ one_way: text })
const spring = ["spring-sign-turned", "sign-turned"]

export const fender: Corpus = {
  worksheet: "fender",
  right: [
    right("as the sheet has it", push("if (squeeze > 0) {\n  Ffender = stiffness * squeeze * away\n}")),
    right("without braces", push("if (squeeze > 0) Ffender = away * (stiffness * squeeze)")),
    right(
      "not smaller instead of larger",
      push("if (!(squeeze <= 0)) {\n  Ffender = squeeze * stiffness * away\n}"),
    ),
    right(
      "a conditional expression",
      push("Ffender = squeeze > 0 ? stiffness * squeeze * away : vec3(0, 0, 0)"),
    ),
    right("the larger of zero and the push", push("Ffender = Math.max(0, stiffness * squeeze) * away")),
    right("squeeze clipped first", push("const s = Math.max(squeeze, 0)\nFfender = stiffness * s * away")),
    right(
      "by position",
      push("if (r.x < freeLength) {\n  Ffender = stiffness * (freeLength - r.x) * away\n}"),
    ),
    right("by component", push("if (squeeze > 0) Ffender = vec3(stiffness * squeeze, 0, 0)")),
    right("with methods", push("if (squeeze > 0) Ffender = away.times(stiffness).times(squeeze)")),
    right("minus k x", push("const x = r.x - freeLength\nif (x < 0) Ffender = -stiffness * x * away")),
    right(
      "a helper function",
      push("const hooke = s => stiffness * s\nif (squeeze > 0) Ffender = hooke(squeeze) * away"),
    ),
    right("added to what is there", push("if (squeeze > 0) Ffender = Ffender + stiffness * squeeze * away")),
    right(
      "early zero",
      push("Ffender = stiffness * squeeze * away\nif (squeeze < 0) Ffender = vec3(0, 0, 0)"),
    ),
    right(
      "contact named",
      push(
        "const touching = squeeze > 0\nif (touching) {\n  const F = stiffness * squeeze\n  Ffender = F * away\n}",
      ),
    ),
    right("damper in another order", damped("push = damping * rate + stiffness * squeeze")),
    right(
      "damper in two lines",
      damped("const Fspring = stiffness * squeeze\nconst Fdamper = damping * rate\npush = Fspring + Fdamper"),
    ),
    right("damper added up", damped("push = stiffness * squeeze\npush += damping * rate")),
    right("damper by velocity", damped("const v = p.x / mass\npush = stiffness * squeeze - damping * v")),
    right("damper by vectors", damped("push = dot(stiffness * squeeze * away - damping * p / mass, away)")),
    right("never less than zero", oneWay("push = Math.max(0, push)")),
    right("a conditional expression", oneWay("push = push > 0 ? push : 0")),
    right("kept above zero", oneWay("if (!(push > 0)) push = 0")),
    right("half of the sum with its size", oneWay("push = (push + Math.abs(push)) / 2")),
    right("not at most zero", oneWay("if (push <= 0) {\n  push = 0\n}")),
    right(
      "switch by a factor",
      push("const on = squeeze > 0 ? 1 : 0\nFfender = on * stiffness * squeeze * away"),
    ),
    right(
      "energy's slope written out",
      push("const free = r.x >= freeLength\nif (!free) Ffender = vec3(stiffness * (freeLength - r.x), 0, 0)"),
    ),
    right("damper by parts", damped("push += stiffness * squeeze\npush -= -damping * rate")),
    right(
      "a helper",
      damped(
        "const line = (k: number, x: number) => k * x\npush = line(stiffness, squeeze) + line(damping, rate)",
      ),
    ),
    right(
      "clipped by a helper",
      oneWay(
        "const atLeast = (x: number, least: number) => (x < least ? least : x)\npush = atLeast(push, 0)",
      ),
    ),
  ],
  wrong: [
    slip(spring, "pulls in", push("if (squeeze > 0) Ffender = -stiffness * squeeze * away")),
    slip(
      spring,
      "the difference turned round",
      push("if (squeeze > 0) {\n  Ffender = stiffness * (r.x - freeLength) * away\n}"),
    ),
    slip(
      spring,
      "the direction turned round",
      push("const towards = -away\nif (squeeze > 0) Ffender = stiffness * squeeze * towards"),
    ),
    slip(
      "spring-without-rest-length",
      "distance for squeeze",
      push("if (squeeze > 0) Ffender = stiffness * r.x * away"),
    ),
    slip(
      "spring-without-rest-length",
      "distance everywhere",
      push("if (r.x > 0) {\n  Ffender = away * r.x * stiffness\n}"),
    ),
    slip("floor-pulls", "no condition", push("Ffender = stiffness * squeeze * away")),
    slip(
      "floor-pulls",
      "always in contact",
      push("const x = r.x\nFfender = vec3(stiffness * (freeLength - x), 0, 0)"),
    ),
    slip(
      ["floor-pulls", "comparison-turned"],
      "the condition turned round",
      push("if (squeeze < 0) {\n  Ffender = stiffness * squeeze * away\n}"),
    ),
    slip(
      ["floor-pulls", "comparison-turned"],
      "acts outside only",
      push("if (r.x > freeLength) Ffender = squeeze * stiffness * away"),
    ),
    slip("damper-sign-turned", "damper drives", damped("push = stiffness * squeeze - damping * rate")),
    slip(
      "damper-sign-turned",
      "damper by the velocity",
      damped("push = stiffness * squeeze + damping * p.x / mass"),
    ),
    slip(
      "spring-sign-turned",
      "spring turned, damper right",
      damped("push = damping * rate - stiffness * squeeze"),
    ),
    slip(["only-last-force", "force-missing"], "only the damper", damped("push = rate * damping")),
    slip(
      ["only-last-force", "force-missing"],
      "overwritten",
      damped("push = stiffness * squeeze\npush = damping * rate"),
    ),
    slip("force-missing", "only the spring", damped("push = squeeze * stiffness")),
    slip("sign-turned", "both turned round", damped("push = -stiffness * squeeze - damping * rate")),
    slip(
      "spring-without-rest-length",
      "distance for squeeze with damper",
      damped("const s = r.x\npush = stiffness * s + damping * rate"),
    ),
    slip("floor-pulls", "nothing done", oneWay("push = push")),
    slip("comparison-turned", "the condition turned round", oneWay("if (push > 0) push = 0")),
    fault(
      "stiffness squared",
      push("if (squeeze > 0) Ffender = stiffness * stiffness * squeeze * away / 1000"),
    ),
    fault("squeeze squared", push("if (squeeze > 0) Ffender = stiffness * squeeze * squeeze * away")),
    fault("half the stiffness", push("if (squeeze > 0) Ffender = 0.5 * stiffness * squeeze * away")),
    fault("energy for force", push("if (squeeze > 0) Ffender = 0.5 * stiffness * squeeze * squeeze * away")),
    fault("mass times", push("if (squeeze > 0) Ffender = mass * squeeze * away")),
    fault("a constant push", push("if (squeeze > 0) Ffender = 1000 * away")),
    fault("up instead of away", push("if (squeeze > 0) Ffender = stiffness * squeeze * vec3(0, 1, 0)")),
    fault("slanted", push("if (squeeze > 0) Ffender = stiffness * squeeze * vec3(1, 0.2, 0)")),
    fault(
      "stiffness copied from the slider with a slip",
      push("if (squeeze > 0) Ffender = 2000 * squeeze * away"),
    ),
    fault("momentum mirrored", push("if (squeeze > 0) {\n  p = -p\n}")),
    fault("momentum mirrored for its size", push("if (squeeze > 0) p = magnitude(p) * away")),
    fault(
      "damped without being asked",
      push("if (squeeze > 0) Ffender = (stiffness * squeeze - 800 * p.x / mass) * away"),
    ),
    fault("too late", push("if (squeeze > 0.05) Ffender = stiffness * squeeze * away")),
    fault(
      "gives way when pressed hard",
      push("if (squeeze > 0) Ffender = stiffness * Math.min(squeeze, 0.08) * away"),
    ),
    fault(
      "pushes only on the way in",
      push("if (squeeze > 0 && p.x < 0) Ffender = stiffness * squeeze * away"),
    ),
    fault("per mass", push("if (squeeze > 0) Ffender = (stiffness / mass) * squeeze * away")),
    fault(
      "with gravity",
      push("if (squeeze > 0) Ffender = stiffness * squeeze * away + vec3(0, -9.81 * 10, 0)"),
    ),
    fault("twice the damper", damped("push = stiffness * squeeze + 2 * damping * rate")),
    fault("damper on the momentum", damped("push = stiffness * squeeze - damping * p.x")),
    fault("damper on the size of the rate", damped("push = stiffness * squeeze + damping * Math.abs(rate)")),
    fault("product for sum", damped("push = stiffness * squeeze * damping * rate / 1000")),
    fault("damper times the squeeze", damped("push = stiffness * squeeze + damping * rate * squeeze")),
    fault("stiffness and damping exchanged", damped("push = damping * squeeze + stiffness * rate")),
    fault("critical damping", damped("push = stiffness * squeeze + 2 * Math.sqrt(stiffness * mass) * rate")),
    fault("the larger of both", damped("push = Math.max(stiffness * squeeze, damping * rate)")),
    fault("rate squared", damped("push = stiffness * squeeze + damping * rate * rate")),
    // moves exactly as the condition turned round does
    slip("comparison-turned", "never pushes", oneWay("push = Math.min(0, push)")),
    fault("folded up", oneWay("push = Math.abs(push)")),
    fault("never less than some push", oneWay("push = Math.max(200, push)")),
    fault("no push on the way out", oneWay("if (rate < 0) push = 0")),
    fault("sign for size", oneWay("push = Math.sign(push) * 500")),
    fault(
      "a curve copied for one boat",
      push("if (squeeze > 0) Ffender = 20000 * (2000 / mass) * squeeze * away"),
    ),
    slip(
      ["spring-sign-turned", "sign-turned"],
      "draws the boat in",
      push("const F = -stiffness * squeeze\nif (squeeze > 0) Ffender = F * away"),
    ),
    slip("floor-pulls", "always on", push("const s = freeLength - r.x\nFfender = away.times(stiffness * s)")),
    slip(
      ["damper-sign-turned", "sign-turned"],
      "damper drives",
      damped("push = stiffness * squeeze - damping * rate"),
    ),
    slip(
      ["term-missing", "force-missing", "only-last-force"],
      "damper alone",
      damped("push = damping * rate"),
    ),
    fault(
      "stiffness over squeeze",
      push("if (squeeze > 0) Ffender = (stiffness / (1 + squeeze)) * 0.05 * away"),
    ),
    fault("full force at once", push("if (squeeze > 0) Ffender = stiffness * 0.1 * away")),
    fault(
      "pushes only on the way in",
      push("if (squeeze > 0 && p.x < 0) Ffender = stiffness * squeeze * away"),
    ),
    fault("damping squared", damped("push = stiffness * squeeze + damping * rate * Math.abs(rate)")),
    fault("spring and damper averaged", damped("push = (stiffness * squeeze + damping * rate) / 2")),
    slip("comparison-turned", "pull only", oneWay("if (push > 0) push = 0")),
    fault("the size of the push", oneWay("push = Math.abs(push)")),
  ],
}
