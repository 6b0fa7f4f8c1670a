import { type Corpus, fault, right, slip } from "./corpus.ts"

/** A soft mat for the landing, for answers that differ in the brake. */
const mat = "if (r.y < 0) Flanding = vec3(0, Math.max(0, -20000 * r.y - (600 * p.y) / mass), 0)\n"
/** A deck that takes up what falls within the step. */
const deck = "if (r.y <= 0) Flanding = vec3(0, Math.max(0, mass * 9.81 - p.y / dt), 0)\n"
/** Friction that suits the mat. */
const rubbed = "\nif (p.x > 0) Fbrake = vec3(-Math.min(0.225 * Flanding.y, p.x / dt), 0, 0)"
const forces = (text: string) => ({ forces: text })
const update = (text: string) => ({ update: text })

export const makeYourOwn: Corpus = {
  worksheet: "make-your-own",
  right: [
    right(
      "a deck that takes up what falls, and sand",
      forces(
        "if (r.y < 0) {\n  const falling = -(p.y + Fg.y * dt)\n  const N = Math.min(40 * mass * 9.81, falling / dt)\n  Flanding = vec3(0, N, 0)\n  Fbrake = vec3(-Math.min(0.225 * N, p.x / dt), 0, 0)\n}",
      ),
    ),
    right("a soft mat and sand", forces(mat + rubbed)),
    right(
      "a stiff mat on which it bounces",
      forces(
        "const s = -r.y\nif (s > 0) {\n  const N = Math.max(0, 60000 * s - (200 * p.y) / mass)\n  Flanding = N * vec3(0, 1, 0)\n  const along = vec3(p.x, 0, 0)\n  if (magnitude(along) > 0) Fbrake = -Math.min(0.2248 * N, magnitude(along) / dt) * unit(along)\n}",
      ),
    ),
    right(
      "a mat by helper functions",
      forces(
        "const press = (s: number, v: number) => (s > 0 ? Math.max(0, 30000 * s - 300 * v) : 0)\nconst rub = (q: number, most: number) => -Math.sign(q) * Math.min(most, Math.abs(q) / dt)\nconst N = press(-r.y, p.y / mass)\nFlanding = vec3(0, N, 0)\nFbrake = vec3(rub(p.x, 0.2248 * N), 0, 0)",
      ),
    ),
    right(
      "a slow mat with methods",
      forces(
        "const up = vec3(0, 1, 0)\nif (r.y < 0) {\n  Flanding = up.times(Math.max(0, -15000 * r.y - 500 * p.over(mass).y))\n  Fbrake = vec3(Math.max(-0.2249 * Flanding.magnitude(), -p.x / dt), 0, 0)\n}",
      ),
    ),
    right(
      "an even brake",
      forces(`${mat}if (r.y < 0) Fbrake = vec3(-Math.min(3.79 * mass, p.x / dt), 0, 0)`),
    ),
    right(
      "a brake that knows the way left",
      forces(
        `${mat}const v = p.x / mass\nconst left = 2 - r.x\nif (r.y < 0 && v > 0) {\n  const size = left > 0 && v > 0.01 ? (mass * v * v) / (2 * left) : p.x / dt\n  Fbrake = vec3(-Math.min(size, p.x / dt), 0, 0)\n}`,
      ),
    ),
    right(
      "a net with a damper",
      forces(`${mat}if (r.x > 1) Fbrake = vec3(-180 * (r.x - 2) - (60 * p.x) / mass, 0, 0)`),
    ),
    right(
      "a stiffer net",
      forces(
        `${mat}const stretch = r.x - 2\nif (r.x > 1) {\n  Fbrake = -500 * stretch * vec3(1, 0, 0)\n  Fbrake = Fbrake - (100 * p.x) / mass * vec3(1, 0, 0)\n}`,
      ),
    ),
    right(
      "thick mud and a last grip",
      forces(
        `${mat}const v = p.x / mass\nif (r.y < 0) Fbrake = vec3(v < 0.05 ? -p.x / dt : -12.4 * v, 0, 0)`,
      ),
    ),
    right(
      "caught by a spring in the air",
      forces(
        "const v = p / mass\nFlanding = vec3(0, mass * 9.81 - 125 * r.y - 50 * v.y, 0)\nFbrake = vec3(-125 * (r.x - 2) - 50 * v.x, 0, 0)",
      ),
    ),
    right(
      "smooth deck, then rough",
      forces(
        `${deck}if (r.y <= 0 && r.x > 1.5) Fbrake = vec3(-Math.min(0.912 * mass * 9.81, p.x / dt), 0, 0)`,
      ),
    ),
    right(
      "friction from the weight",
      forces(`${deck}if (r.y <= 0) Fbrake = vec3(-Math.min(0.3864 * mass * 9.81, p.x / dt), 0, 0)`),
    ),
    right(
      "friction and drag",
      forces(
        `${deck}const v = p.x / mass\nif (r.y <= 0) Fbrake = vec3(-Math.min(3.215 * v * v + 8, p.x / dt), 0, 0)`,
      ),
    ),
    right(
      "a carpet that gets thicker",
      forces(`${deck}if (r.y <= 0 && r.x > 1) Fbrake = vec3(-Math.min(45 * (r.x - 1), p.x / dt), 0, 0)`),
    ),
    right("a net force first", update("const Fnet = Fg + Flanding + Fbrake\np = p + Fnet * dt")),
    right("one force after the other", update("p += Fg * dt\np += Fbrake * dt\np += Flanding * dt")),
    right("a sum with a method", update("p = p.add(sum(Fbrake, Flanding, Fg).times(dt))")),
    right(
      "by components",
      update(
        "const px = p.x + (Flanding.x + Fbrake.x + Fg.x) * dt\nconst py = p.y + (Fg.y + Flanding.y + Fbrake.y) * dt\np = vec3(px, py, 0)",
      ),
    ),
    right("an impulse named", update("const J = dt * (Flanding + Fbrake + mass * g)\np = J + p")),
    right(
      "a brake by the clock",
      forces(`${deck}if (t > 0.6) Fbrake = vec3(-Math.min(114.2, Math.max(0, p.x / dt)), 0, 0)`),
    ),
    right(
      "deck by an if, net on the deck",
      forces(
        "if (r.y <= 0 && p.y < 0) Flanding = vec3(0, -p.y / dt, 0) - Fg\nelse if (r.y <= 0) Flanding = -Fg\nif (r.y <= 0) Fbrake = vec3(-500 * (r.x - 2) - (100 * p.x) / mass, 0, 0)",
      ),
    ),
    right(
      "the way left and a helper",
      forces(
        `${mat}const needed = (v: number, way: number) => (way > 0.002 ? (mass * v * v) / (2 * way) : p.x / dt)\nif (r.y < 0 && p.x > 0) Fbrake = vec3(-Math.min(needed(p.x / mass, 2 - r.x), p.x / dt), 0, 0)`,
      ),
    ),
    right("update with a loop over forces", update("for (const F of [Fg, Flanding, Fbrake]) p = p + F * dt")),
    right(
      "impulses one by one",
      update("const J1 = Fg * dt\nconst J2 = Flanding * dt\nconst J3 = Fbrake * dt\np = p + J1 + J2 + J3"),
    ),
  ],
  wrong: [
    slip(
      ["force-missing", "only-last-force", "term-missing"],
      "without the weight",
      update("p = p + (Flanding + Fbrake) * dt"),
    ),
    slip(["force-missing", "term-missing"], "without the landing", update("p = p + (Fg + Fbrake) * dt")),
    slip(
      ["force-missing", "term-missing"],
      "without the brake",
      update("const Fnet = Fg + Flanding\np += Fnet * dt"),
    ),
    slip(
      ["force-missing", "only-last-force", "term-missing"],
      "only the brake",
      update("p = p + Fbrake * dt"),
    ),
    slip("time-step-missing", "no time step", update("p = p + (Fg + Flanding + Fbrake)")),
    slip("time-step-missing", "no time step, by short forms", update("p += Fg\np += Flanding\np += Fbrake")),
    slip(
      "time-step-twice",
      "time step twice",
      update("const J = (Fg + Flanding + Fbrake) * dt\np = p + J * dt"),
    ),
    slip("sign-turned", "impulse taken away", update("p -= (Fg + Flanding + Fbrake) * dt")),
    slip("sign-turned", "brake taken away", update("p = p + (Fg + Flanding - Fbrake) * dt")),
    slip(
      "sign-turned",
      "landing taken away",
      update("const Fnet = Fg - Flanding + Fbrake\np = p + Fnet * dt"),
    ),
    slip("momentum-overwritten", "only this step's impulse", update("p = dt * (Fg + Flanding + Fbrake)")),
    fault("half the impulse", update("p = p + ((Fg + Flanding + Fbrake) * dt) / 2")),
    fault("the mean of the forces", update("p = p + ((Fg + Flanding + Fbrake) / 3) * dt")),
    fault("weight twice", update("p = p + (Fg + Flanding + Fbrake + mass * g) * dt")),
    fault("divided by the mass", update("p = p + ((Fg + Flanding + Fbrake) / mass) * dt")),
    fault("a number for the time step", update("p = p + (Fg + Flanding + Fbrake) * 0.02")),
    fault("time for the time step", update("p = p + (Fg + Flanding + Fbrake) * t")),
    fault("set to zero by hand at the mark", forces(`${mat}if (r.x > 1.99) p = vec3(0, 0, 0)`)),
    fault("set on the deck by hand", {
      forces:
        "if (r.y < 0) p = vec3(p.x, 0, 0)\nif (r.y < 0) Fbrake = vec3(-Math.min(3.79 * mass, p.x / dt), 0, 0)",
    }),
    fault("moved to the mark by hand", {
      update: "p = p + (Fg + Flanding + Fbrake) * dt\nif (r.x > 1.9) r = vec3(2, 0, 0)",
    }),
    fault("momentum lost a little in each step", update("p = 0.99 * p + (Fg + Flanding + Fbrake) * dt")),
    fault("a brake that is not recorded", {
      forces: mat,
      update:
        "const sand = vec3(p.x > 0 ? -Math.min(0.225 * Flanding.y, p.x / dt) : 0, 0, 0)\np = p + (Fg + Flanding + sand) * dt",
    }),
    fault("no forces at all", forces("Flanding = vec3(0, 0, 0)\nFbrake = vec3(0, 0, 0)")),
    fault("a deck without a brake", forces(mat)),
    fault(
      "a brake without a deck",
      forces("if (r.x > 0.8) Fbrake = vec3(-Math.min(3.79 * mass, p.x / dt), 0, 0)"),
    ),
    fault(
      "a mat far too soft",
      forces("if (r.y < 0) Flanding = vec3(0, Math.max(0, -2000 * r.y - (100 * p.y) / mass), 0)" + rubbed),
    ),
    fault(
      "a mat that sinks a little too deep",
      forces("if (r.y < 0) Flanding = vec3(0, Math.max(0, -10000 * r.y - (40 * p.y) / mass), 0)" + rubbed),
    ),
    fault("a spring without a damper", forces("if (r.y < 0) Flanding = vec3(0, -30000 * r.y, 0)" + rubbed)),
    fault(
      "the deck pulls the parcel down",
      forces("if (r.y < 0) Flanding = vec3(0, 20000 * r.y, 0)" + rubbed),
    ),
    // just what the deck of the sheet does when it forgets the momentum of the fall
    slip(
      "term-missing",
      "the deck holds the weight only",
      forces("if (r.y < 0) Flanding = vec3(0, mass * 9.81, 0)" + rubbed),
    ),
    fault(
      "friction that trembles",
      forces(`${mat}if (r.y < 0) Fbrake = vec3(-Math.sign(p.x) * 3.79 * mass, 0, 0)`),
    ),
    fault(
      "friction with the motion",
      forces(`${mat}if (r.y < 0) Fbrake = vec3(Math.min(0.225 * Flanding.y, p.x / dt), 0, 0)`),
    ),
    fault("friction that pushes back", forces(`${mat}if (r.y < 0) Fbrake = vec3(-3.79 * mass, 0, 0)`)),
    fault(
      "too little friction",
      forces(`${mat}if (r.y < 0) Fbrake = vec3(-Math.min(0.2 * Flanding.y, p.x / dt), 0, 0)`),
    ),
    fault(
      "too much friction",
      forces(`${mat}if (r.y < 0) Fbrake = vec3(-Math.min(0.26 * Flanding.y, p.x / dt), 0, 0)`),
    ),
    fault(
      "friction from the weight with the mat's coefficient",
      forces(`${mat}if (r.y < 0) Fbrake = vec3(-Math.min(0.225 * mass * 9.81, p.x / dt), 0, 0)`),
    ),
    fault("mud that lets it creep", forces(`${mat}if (r.y < 0) Fbrake = vec3((-12.68 * p.x) / mass, 0, 0)`)),
    fault(
      "a net that swings",
      forces(`${mat}if (r.x > 1) Fbrake = vec3(-180 * (r.x - 2) - (1 * p.x) / mass, 0, 0)`),
    ),
    fault("stops short of the mark", forces(`${mat}if (r.x > 1.85) Fbrake = vec3(-p.x / dt, 0, 0)`)),
    fault(
      "a wall that throws it back",
      forces(`${mat}if (r.x > 1.8) Fbrake = vec3(-4000 * (r.x - 1.8), 0, 0)`),
    ),
    slip(
      ["force-missing", "term-missing"],
      "brake forgotten in the sum",
      update("p = p.add(sum(Fg, Flanding).times(dt))"),
    ),
    slip("sign-turned", "weight taken away", update("p = p + (Flanding + Fbrake - Fg) * dt")),
    slip(
      "time-step-missing",
      "no time in a named impulse",
      update("const Fnet = Fg + Flanding + Fbrake\np = p + Fnet"),
    ),
    slip(
      "momentum-overwritten",
      "impulse for momentum",
      update("const Fnet = Fg + Flanding + Fbrake\np = Fnet * dt"),
    ),
    fault("brake counted twice", update("p = p + (Fg + Flanding + 2 * Fbrake) * dt")),
    fault("only while falling", update("if (r.y > 0) p = p + (Fg + Flanding + Fbrake) * dt")),
    fault(
      "momentum rounded",
      update("p = p + (Fg + Flanding + Fbrake) * dt\np = vec3(Math.round(p.x), Math.round(p.y), 0)"),
    ),
    fault(
      "stopped by hand when slow",
      update("p = p + (Fg + Flanding + Fbrake) * dt\nif (magnitude(p) < 0.5) p = vec3(0, 0, 0)"),
    ),
    fault(
      "a trampoline",
      forces(
        "if (r.y < 0) Flanding = vec3(0, -40000 * r.y, 0)\nif (r.x > 1) Fbrake = vec3(-180 * (r.x - 2) - (60 * p.x) / mass, 0, 0)",
      ),
    ),
    fault(
      "a net at the wrong place",
      forces(`${mat}if (r.x > 1) Fbrake = vec3(-500 * (r.x - 2.2) - (100 * p.x) / mass, 0, 0)`),
    ),
    fault("quicksand", forces("if (r.y < 0) Flanding = vec3(0, (-30 * p.y) / mass, 0)" + rubbed)),
    fault(
      "friction of half the coefficient",
      forces(`${mat}if (p.x > 0) Fbrake = vec3(-Math.min(0.1125 * Flanding.y, p.x / dt), 0, 0)`),
    ),
    fault("brake without an end", forces(`${deck}if (r.y <= 0) Fbrake = vec3(-0.3864 * mass * 9.81, 0, 0)`)),
    fault(
      "deck that lets it float",
      forces("if (r.y < 0.1) Flanding = vec3(0, 2 * mass * 9.81, 0)" + rubbed),
    ),
  ],
}
