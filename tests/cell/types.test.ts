import { describe, expect, it } from "vitest"
import { problemsOf, program } from "./types-tools.ts"

/** What is wrong in one text: code, place, and words that the message must hold. */
type Case = readonly [text: string, code: string, place: string, ...words: string[]]

const start = "let r = vec3(0, height, 0)\nlet p = vec3(0, 0, 0)\nconst m = 2\nconst dt = 0.01\n"

const cases: Readonly<Record<string, readonly Case[]>> = {
  "operators on vectors": [
    [
      `${start}p = p + m`,
      "number-and-vector",
      "5:7",
      "A vector and a number cannot be added",
      "p is a vector and m is a number",
    ],
    [`${start}p = m - p`, "number-and-vector", "5:7", "cannot be subtracted"],
    [`${start}p += m * dt`, "number-and-vector", "5:3", "A vector and a number cannot be added"],
    [`${start}const w = r * p`, "vector-times-vector", "5:13", "dot(a, b)", "r * p"],
    [`${start}const w = r / p`, "vector-over-vector", "5:13", "r / p"],
    [`${start}const w = m / p`, "number-over-vector", "5:13", "m / p"],
    [`${start}const w = p ** 2`, "vector-power", "5:11", "raised to a power"],
    [`${start}if (r < m) p = p * 2`, "vector-as-number", "5:5", "magnitude(v)"],
    [`${start}const w = p + [1, 2, 3]`, "vector-and-other", "5:13", "a list of numbers", "vec3(x, y, z)"],
    [`${start}const w = (r + p * dt / m) - 2 * m * dt`, "number-and-vector", "5:28", "subtracted"],
    [
      `${start}const w = [1, 2] * 3`,
      "wrong-operand",
      "5:18",
      "A list of numbers and a number cannot be multiplied",
    ],
    [`${start}const w = magnitude + 1`, "wrong-operand", "5:21", "function", "brackets"],
    [`${start}const w = -[1]`, "wrong-operand", "5:11", "opposite"],
    [`${start}p++`, "vector-as-number", "5:1", "counted"],
    [`${start}const w = p % 2`, "vector-as-number", "5:11"],
  ],
  "values for functions of the library": [
    [
      `${start}const F = springForce(r, m, { stiffness: 20, restLength: 1 })`,
      "not-a-vector",
      "5:26",
      "springForce takes a vector",
      "m is a number",
    ],
    [`${start}const F = weight(p, r)`, "not-a-number", "5:18", "a number for mass", "p is a vector"],
    [`${start}const F = springForce(r, p, { restLength: 1 })`, "missing-option", "5:29", "stiffness"],
    [
      `${start}const F = springForce(r, p, { stiffness: 20, restlength: 1 })`,
      "unknown-option",
      "5:46",
      "restLength",
    ],
    [
      `${start}const F = springForce(r, p, { stiffness: r, restLength: 1 })`,
      "number-for-vector",
      "5:31",
      "stiffness",
      "r is a vector",
    ],
    [`${start}const v = vec3(1, 2)`, "wrong-argument-count", "5:11", "x, y, z", "vec3(x, y, 0)"],
    [`${start}const v = dot(r)`, "wrong-argument-count", "5:11", "b ", "missing"],
    [`${start}const v = magnitude(r, p)`, "wrong-argument-count", "5:24", "2 were given"],
    [
      `${start}const v = totalMass({ mass: m, position: r, momentum: p })`,
      "not-a-list",
      "5:23",
      "square brackets",
    ],
    [`${start}const v = sum(r, m)`, "not-a-vector", "5:18", "m is a number"],
    [`${start}const v = r.add(2)`, "not-a-vector", "5:17"],
  ],
  "names and parts": [
    [
      `${start}p = p + Fnett * dt\nconst Fnet = vec3(0, 0, 0)`,
      "unknown-name",
      "5:9",
      "Fnett",
      "Did you mean Fnet?",
    ],
    [`${start}const v = hieght`, "unknown-name", "5:11", "Did you mean height?"],
    [`${start}const v = Date.now()`, "unknown-name", "5:11", "Date"],
    [`${start}const v = r.length`, "no-such-property", "5:13", "magnitude(v)"],
    [`${start}const v = r.X`, "no-such-property", "5:13", "Did you mean x?"],
    [`${start}const v = m.x`, "no-such-property", "5:13", "m is a number", "Only a vector"],
    [
      `${start}const body = { mass: m, position: r }\nconst v = body.momentum`,
      "no-such-property",
      "6:16",
      "mass and position",
    ],
    [`${start}const w = q + 1\nconst q = 2`, "used-before-made", "5:11", "further up"],
    [`${start}m = 3`, "constant-changed", "5:1", "m is a const"],
    [`height = 3`, "constant-changed", "1:1", "height is a const"],
    [`${start}r.x = 3`, "vector-component-set", "5:3", "r = vec3(…, r.y, r.z)"],
    [`${start}const w = m (dt + 1)`, "not-a-function", "5:11", "m (dt + 1)"],
    [`${start}for (const f of m) p = p * f`, "not-a-list", "5:17"],
  ],
  "what names are declared as": [
    [
      `${start}let F: Vec3<'N'> = 5 * m`,
      "number-for-vector",
      "5:5",
      "F is declared as a vector",
      "5 * m is a number",
    ],
    [`${start}let E: Scalar<'J'> = p * m`, "number-for-vector", "5:5", "E is declared as a number"],
    [`${start}p = 3`, "number-for-vector", "5:1", "p is a vector", "3 is a number"],
    [`${start}let t: Scalar<'s'> = 0\nt = "0.5"`, "wrong-kind", "6:1", "a text"],
    [
      `${start}function push(s: number): Vec3 {\n  return 20 * s\n}`,
      "number-for-vector",
      "6:3",
      "push is to give back a vector",
    ],
    [
      `${start}const push = (s: number): Vec3 => 20 * s`,
      "number-for-vector",
      "5:35",
      "push is to give back a vector",
    ],
    [
      `${start}function push(s: number): Vec3 {\n  if (s > 0) return vec3(s, 0, 0)\n}`,
      "nothing-returned",
      "5:27",
      "not every way",
    ],
    [`${start}function push(s: number): Vec3 {\n  return\n}`, "nothing-returned", "6:3", "gives nothing"],
  ],
  "values that may be lacking": [
    [
      `${start}let F\nif (r.y < 0) F = vec3(0, 5, 0)\np = p + F * dt`,
      "may-be-unset",
      "7:11",
      "F may have no value",
    ],
    [
      `${start}let F: Vec3\nif (r.y < 0) F = vec3(0, 5, 0)\np = p + F * dt`,
      "may-be-unset",
      "7:9",
      "F may have no value",
    ],
    [`${start}let F\nif (m > 1) F = vec3(0, 5, 0)\nconst w = magnitude(F)`, "may-be-unset", "7:21"],
    [
      `${start}let b: { x: number } | undefined = m > 1 ? { x: 1 } : undefined\nconst w = b.x`,
      "may-be-unset",
      "6:11",
    ],
  ],
}

describe.each(Object.entries(cases))("the check of kinds: %s", (_, list) => {
  it.each(list.map(one => [one[0].replace(start, "").replaceAll("\n", " ; "), ...one]))(
    "%s",
    (_title, text, code, place, ...words) => {
      const found = problemsOf(text)
      expect(found.map(one => [one.code, `${one.where?.line}:${one.where?.column}`, one.text])).toEqual([
        [code, place, expect.any(String)],
      ])
      const said = `${found[0]!.text} ${found[0]!.todo}`
      for (const word of words) expect(said).toContain(word)
      expect(said).not.toMatch(/assignable|Vec3|TS\d|ds\$|overload|union|undefined[^)]|'\w+'|\bany\b/)
    },
  )
})

describe("the check of kinds says nothing", () => {
  it.each([
    [
      "of names without a type",
      "let F = vec3(0, 0, 0)\nlet x\nx = 2\nx = x + 1\nF = F + x * F\nfunction push(a, b) { return a * b }\nF = F + push(2, F)\nconst list = []\nlist.push(F)\nF = F + list[0]",
    ],
    [
      "of texts joined with anything",
      'const r = vec3(1, 2, 3)\nlet s = "r = " + r\ns += 2\nconsole.log(s + [1] + 3, r)',
    ],
    [
      "of true and false as one and nothing",
      "const r = vec3(1, 2, 3)\nconst f = (r.y > 0) * 2 + 1\nlet n = 0\nn += r.x < 2",
    ],
    ["of bigints among themselves", "let n = 2n\nn = n * 3n + n ** 2n - -n"],
    [
      "of parts of a record",
      "const bodies = { a: { r: vec3(0, 0, 0), m: 2 } }\nfor (const k in bodies) bodies[k].r = bodies[k].r + bodies[k].m * vec3(1, 0, 0)",
    ],
    [
      "of a program's own function by a library name",
      "const weight = (m) => m * 9.81\nconst W = weight(2) + 1\nfunction sum(a, b) { return a + b }\nconst s = sum(1, 2) * 2\nvar unit = 5\nconst q = unit * 2",
    ],
    [
      "of functions over any kind",
      "function twice<T>(a: T): T { return a }\nconst v = twice(vec3(1, 0, 0)) * 2\nfunction add<T>(a: T, b: T) { return a + b }\nconst w = add(1, 2)",
    ],
    ["of objects that stand for vectors", "const v = { x: 1, y: 2, z: 3 }\nconst m = magnitude(v)"],
    [
      "of generators, classes, maps and patterns",
      "function* steps(n: number) { let i = 0; while (i < n) yield i++ }\nlet s = 0\nfor (const i of steps(3)) s += i\nclass Buoy { r = vec3(0, 0, 0); step(dt: number) { this.r = this.r + dt * vec3(1, 0, 0) } }\nconst b = new Buoy()\nb.step(0.1)\nconst m = new Map([[1, vec3(0, 0, 0)]])\nfor (const [k, v] of m) s += k * v.x\nconst { x, ...rest } = b.r\nconst [first, second = 3] = [1, 2]\ns += x + first + second + rest.y",
    ],
    [
      "of a body that gets parts later",
      "const body: any = {}\nbody.mass = 3\nbody.r = vec3(0, 0, 0)\nbody.r = body.r + body.mass * vec3(1, 0, 0)",
    ],
    [
      "of steppers and force laws",
      "const law = (s) => s.bodies.map(b => b.mass * vec3(0, -9.81, 0))\nlet s = { time: 0, bodies: [{ mass: 2, position: vec3(0, 0, 0), momentum: vec3(0, 0, 0) }] }\nfor (let i = 0; i < 3; i++) s = velocityVerlet(s, law, 0.01)\nrecord(s.time, { b: { position: s.bodies[0].position, momentum: s.bodies[0].momentum } })",
    ],
    ["of a text that cannot be read", "let p = vec3(0, 0, 0)\np = p + 2 *\nlet q = ("],
  ])("%s", (_, text) => expect(problemsOf(text)).toEqual([]))

  it("twice of one fault: what comes of a wrong line is not held against the next", () => {
    const found = problemsOf("const p = vec3(0, 0, 0)\nconst q = p + 2\nconst s = q * 3 - p\nlet F: Vec3 = q")
    expect(found.map(one => one.code)).toEqual(["number-and-vector"])
  })
})

describe("the check of kinds over cells and blanks", () => {
  it("tells the cell, and its own line", () => {
    const [found] = problemsOf(program("const r = vec3(0, 0, 0)", "let t = 0\n\nconst q = r + t"))
    expect(found?.where).toMatchObject({ cell: "cell2", line: 3, column: 13, endLine: 3, endColumn: 14 })
  })
})

describe("the check of kinds and hostile texts", () => {
  it.each([
    ["10,000 nested brackets", `let a = ${"(".repeat(10_000)}1${")".repeat(10_000)}`],
    ["10,000 opened brackets", "(".repeat(10_000)],
    ["10,000 signs", `let a = ${"- ".repeat(9_999)}1`],
    ["a sum of 10,000 terms", `let a = 1\nlet b = ${"a + ".repeat(10_000)}a`],
    ["half of a symbol", 'let a = "\uD800" + 1'],
    ["the checker's own names", "const ds$add = 1\nlet p = vec3(1, 0, 0) + vec3(0, 1, 0)"],
    ["an unfinished text", "let a = `${vec3(1, 2, 3) + "],
  ])("%s: nothing, or a fault that a catch ends, and the next text is checked as ever", (_, text) => {
    try {
      problemsOf(text)
    } catch (cause) {
      expect(cause).toBeInstanceOf(RangeError)
    }
    expect(problemsOf("const p = vec3(0, 0, 0) + 1").map(one => one.code)).toEqual(["number-and-vector"])
  })
})
