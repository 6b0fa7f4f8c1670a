import fc from "fast-check"
import katex from "katex"
import { describe, expect, it } from "vitest"
import { equationsOf } from "../../src/cell/equation/index.ts"
import { readTree } from "../../src/cell/tree/index.ts"
import { cellTexts } from "./worksheets.ts"

const given = `
const mass: Scalar<'kg'> = 0.4
let p: Vec3<'kg m/s'> = vec3(0, 0, 0), r: Vec3<'m'> = vec3(0, 0, 0), a = vec3(1, 2, 3), b = a, Fnet = 2 * a
`
/** the formula of one line, with names of the given lines known */
function one(line: string) {
  const found = equationsOf(given + line).filter(e => e.from >= given.length)
  expect(found, line).toHaveLength(1)
  katex.renderToString(found[0]!.tex, { strict: "error" })
  return found[0]!
}
const right = (line: string): string => one(`x = ${line}`).tex.replace(/^(x|\\vec\{x\}) = /, "")

describe("an assignment as an equation", () => {
  it.each([
    [
      "p = p + Fnet * dt",
      "\\vec{p}_{\\text{new}} = \\vec{p}_{\\text{old}} + \\vec{F}_{\\text{net}}\\,\\Delta t",
    ],
    [
      "p += Fnet * dt",
      "\\vec{p}_{\\text{new}} = \\vec{p}_{\\text{old}} + \\vec{F}_{\\text{net}}\\,\\Delta t",
    ],
    ["p2 = p1 + Fnet * dt", "\\vec{p}_{2} = p_{1} + \\vec{F}_{\\text{net}}\\,\\Delta t"],
    ["n++", "n_{\\text{new}} = n_{\\text{old}} + 1"],
    [
      "const g: Vec3<'N/kg'> = vec3(0, -9.81, 0)",
      "\\vec{g} = \\begin{pmatrix} 0 \\\\ -9.81 \\\\ 0 \\end{pmatrix}\\,\\mathrm{N}/\\mathrm{kg}",
    ],
    ["const k: Scalar<'N/m'> = 2e4", "k = 2\\times 10^{4}\\,\\mathrm{N}/\\mathrm{m}"],
    ["const slope: Scalar<'°'> = 15", "\\text{slope} = 15\\,\\mathrm{{}^\\circ}"],
    ["const share: Scalar<'1'> = 0.5", "\\text{share} = 0.5"],
    [
      "ball.momentum = p",
      "\\vec{\\text{momentum}}_{\\text{ball}} = \\vec{p}".replace("\\vec{\\text", "\\overrightarrow{\\text"),
    ],
    ["body[i].mass = 3", "\\text{mass}_{\\text{body},i} = 3"],
    ["const hit = r.y < 0", "\\text{hit} = \\left(r_{y} < 0\\right)"],
    ["if (r.y < 0) F = -k * r.y", "F = -k\\,r_{y}\\quad\\text{if } r_{y} < 0"],
    [
      "const height = (t: Scalar<'s'>) => h - g * t * t / 2",
      "\\text{height}\\left(t\\right) = h - \\frac{g\\,{t}^{2}}{2}",
    ],
  ])("%s", (line, tex) => expect(one(line).tex).toBe(tex))

  it.each([
    ["p / mass", "\\frac{\\vec{p}}{\\text{mass}}"],
    ["dot(a, b)", "\\vec{a} \\cdot \\vec{b}"],
    ["a.cross(b)", "\\vec{a} \\times \\vec{b}"],
    ["cross(a - b, p)", "\\left(\\vec{a} - \\vec{b}\\right) \\times \\vec{p}"],
    ["magnitude(r)", "\\left|\\vec{r}\\right|"],
    ["unit(r)", "\\hat{r}"],
    ["unit(a - b)", "\\frac{\\vec{a} - \\vec{b}}{\\left|\\vec{a} - \\vec{b}\\right|}"],
    ["Fnet.x", "F_{\\text{net},x}"],
    ["Math.sqrt(k / m)", "\\sqrt{\\frac{k}{m}}"],
    ["Math.sin(omega * t)", "\\sin\\left(\\omega\\,t\\right)"],
    ["Math.exp(-gamma * t)", "\\mathrm{e}^{-\\gamma\\,t}"],
    ["Math.pow(v, 3)", "{v}^{3}"],
    ["m - (c - d)", "m - \\left(c - d\\right)"],
    ["m - c - d", "m - c - d"],
    ["(m + c) * d", "\\left(m + c\\right)\\,d"],
    ["m * c + d", "m\\,c + d"],
    ["m / c / d", "\\frac{\\frac{m}{c}}{d}"],
    ["-m / c", "-\\frac{m}{c}"],
    ["2 * 3", "2\\cdot 3"],
    ["(m + c) ** 2", "{\\left(m + c\\right)}^{2}"],
    ["-k * (r - a)", "-k\\,\\left(\\vec{r} - \\vec{a}\\right)"],
    ["m + -c", "m + \\left(-c\\right)"],
    ["12345.6", "12\\,345.6"],
    ["mass * speed", "\\text{mass}\\cdot \\text{speed}"],
    ["weight(mass, g)", "\\text{mass}\\,g"],
    ["updatePosition(r, p, m, dt)", "\\vec{r} + \\frac{\\vec{p}}{m}\\,\\Delta t"],
    ["kineticEnergy(p, m)", "\\frac{{\\vec{p}}^{2}}{2\\,m}"],
    ["torque(a, Fnet, r)", "\\left(\\vec{a} - \\vec{r}\\right) \\times \\vec{F}_{\\text{net}}"],
    ["r.y < 0 ? 0 : k", "\\begin{cases} 0 & \\text{if } r_{y} < 0 \\\\ k & \\text{otherwise} \\end{cases}"],
    ["m >= 1 && m !== 3", "\\left(m \\ge 1 \\text{ and } m \\ne 3\\right)"],
    [
      "springForce(r, { restLength: 0.3, stiffness: k })",
      "\\overrightarrow{\\text{spring force}}\\left(\\vec{r},\\; \\text{rest length} = 0.3,\\; \\text{stiffness} = k\\right)",
    ],
  ])("%s on the right", (line, tex) => expect(right(line)).toBe(tex))

  it.each([
    ["F_floor", "F_{\\text{floor}}"],
    ["Fspring_left", "F_{\\text{spring left}}"],
    ["muKinetic", "\\mu_{\\text{kinetic}}"],
    ["mu_s", "\\mu_{\\text{s}}"],
    ["omega0", "\\omega_{0}"],
    ["theta", "\\theta"],
    ["vMax", "v_{\\text{max}}"],
    ["vmax", "v_{\\text{max}}"],
    ["vx", "v_{x}"],
    ["mass", "\\text{mass}"],
    ["restLength2", "\\text{rest length}_{2}"],
    ["Force", "\\text{Force}"],
    ["ω", "\\omega"],
    ["deltaX", "\\Delta x"],
    ["dtBead", "\\Delta t_{\\text{bead}}"],
    ["damping", "\\text{damping}"],
    ["m_1", "m_{1}"],
    ["$x_y", "\\text{\\$ x y}"],
  ])("sets the name %s", (name, tex) => {
    expect(right(name)).toBe(tex)
  })

  it("tells old from new in the lines that update, by where they stand in the turn", () => {
    const loop = (body: string) => equationsOf(`${given} while (t < 1) { ${body} }`).map(e => e.tex)
    expect(loop("p = p + Fnet * dt\n r = r + p / mass * dt").at(-1)).toContain("\\vec{p}_{\\text{new}}")
    expect(loop("r = r + p / mass * dt\n p = p + Fnet * dt").at(-2)).toContain("\\vec{p}_{\\text{old}}")
    expect(loop("p = p * 2\n r = r + p\n p = p * 2").at(-2)).toContain("+ \\vec{p}")
  })

  it("reads aloud", () => {
    expect(one("p = p + Fnet * dt").words).toBe(
      "vector p new equals vector p old plus vector capital F net times delta t",
    )
    expect(one("const m: Scalar<'kg'> = 0.4").words).toBe("m equals 0.4 kilograms")
    expect(one("const v: Scalar<'m/s^2'> = 1").words).toBe("v equals 1 metre per second squared")
    expect(one("E = (p.x + 1) / (2 * m)").words).toBe(
      "capital E equals open bracket x component of p plus 1 close bracket over open bracket 2 times m close bracket",
    )
  })

  it("gives places and lines in the text, takes names known as vectors, leaves out what is no mathematics", () => {
    const text = "const s = { a: 1 }\nlet q = 1\n\n  q = q + u // twice\nconst f = () => { return 1 }\n"
    const found = equationsOf(text, { vectors: ["u"] })
    expect(found.map(e => [text.slice(e.from, e.to), e.line])).toEqual([
      ["q = 1", 2],
      ["q = q + u", 4],
    ])
    expect(found[1]!.tex).toContain("\\vec{u}")
  })

  it("skips what does not parse and keeps the rest", () => {
    expect(equationsOf("x = a + ;\ny = 2").map(e => e.tex)).toEqual(["y = 2"])
    expect(equationsOf("x = = 3;\nif (a { b = 3 }\nz = 4").map(e => e.tex)).toContain("z = 4")
  })
})

describe("cells of the worksheets", () => {
  const texts = cellTexts()
  it.each(texts.map(one => [one.name, one.text]))("%s: every equation is TeX that can be set", (_, text) => {
    const all = equationsOf(text)
    expect(all.length).toBeGreaterThan(5)
    for (const e of all) {
      katex.renderToString(e.tex, { strict: "error" })
      expect(e.words).not.toMatch(/[\\{}$_^]/)
    }
  })

  it("survive any cut and any edit: no throw, and no TeX that cannot be set", () => {
    const whole = texts.map(one => one.text).join("\n")
    const snippet = fc.constantFrom(
      "(",
      ")",
      "{",
      "}",
      "'",
      "`${",
      "/*",
      "=",
      "+",
      "\ud800",
      "é",
      "=>",
      "[",
      "?",
      ".",
      "$_",
      "\\",
      "%",
      "#x",
    )
    fc.assert(
      fc.property(fc.nat(whole.length), fc.nat(600), snippet, fc.nat(600), (start, length, insert, at) => {
        const cut = whole.slice(start, start + length)
        const text = cut.slice(0, at) + insert + cut.slice(at)
        for (const e of equationsOf(text)) katex.renderToString(e.tex, { strict: "ignore" })
      }),
      { numRuns: 120, seed: 6 },
    )
    for (const deep of [
      "(".repeat(10_000),
      `x = ${"(".repeat(5000)}1${")".repeat(5000)}`,
      `x = ${"-".repeat(3000)}1`,
      `x = ${"1+".repeat(3000)}1`,
      "{".repeat(5000),
    ])
      expect(() => equationsOf(deep)).not.toThrow()
    expect(readTree("x".repeat(2_000_000)).body).toEqual([])
  })
})
