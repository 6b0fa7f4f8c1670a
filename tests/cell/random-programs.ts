import fc from "fast-check"

/** Random programs as text. Every loop ends; every name is made before it is used; what is printed tells all values. */

const join = (parts: fc.Arbitrary<string>[], make: (...texts: string[]) => string): fc.Arbitrary<string> =>
  fc.tuple(...parts).map(texts => make(...texts))

/** Plain JavaScript: numbers, texts, bigints, objects, functions, all operators. */
const plain = fc.letrec<Record<"expression" | "statement" | "block", string>>(tie => {
  const e = tie("expression")
  const s = tie("statement")
  const name = fc.constantFrom("a", "b", "c", "d")
  const number = fc.constantFrom("0", "1", "2", "3.5", "-1", "1e3", "0.1", "10", "NaN", "Infinity")
  const value = fc.oneof(
    number,
    fc.constantFrom(
      '"x"',
      '"7"',
      "``",
      "null",
      "undefined",
      "true",
      "3n",
      "[1, 2]",
      "{ x: 1 }".replace(/^/, "(") + ")",
      "o",
      "o.k",
      "o.list",
    ),
    name,
    name,
  )
  const sign = fc.constantFrom(
    "+",
    "-",
    "*",
    "/",
    "%",
    "**",
    "<",
    ">",
    "===",
    "==",
    "&&",
    "||",
    "??",
    "&",
    "<<",
    ">>>",
    ",",
  )
  const target = fc.oneof(
    name,
    fc.constantFrom("o.k", "o.list[1]", "o[key()]", "get().k", "o.deep.v", "(o).k"),
  )
  const update = fc.constantFrom("=", "+=", "-=", "*=", "/=", "%=", "**=", "&&=", "||=", "??=", "|=")
  return {
    expression: fc.oneof(
      { maxDepth: 4, depthIdentifier: "e" },
      value,
      join([e, sign, e], (x, op, y) => `((${x}) ${op} (${y}))`),
      join(
        [e, fc.constantFrom("+", "-", "*"), e, fc.constantFrom("+", "-", "*", "/"), e],
        (x, p, y, q, z) => `(${x}) ${p} (${y}) ${q} (${z})`,
      ),
      join([fc.constantFrom("-", "+", "!", "~", "typeof ", "void "), e], (op, x) => `${op}(${x})`),
      join([target, update, e], (t, op, x) => `(${t} ${op} ${x})`),
      join(
        [fc.constantFrom("a++", "--b", "o.k++", "--o.list[0]", "++get().k"), fc.constant("")],
        x => `(${x})`,
      ),
      join([e, e, e], (x, y, z) => `(${x} ? ${y} : ${z})`),
      join([e, e], (x, y) => `f(${x}, ${y})`),
      join([e], x => `[1, 2, ${x}].map((v, i) => v + i).join()`),
      join([e], x => `(v => -v * (${x}))(2)`),
      join([e], x => `(({ p = ${x}, q: [r] = [p + 1] }) => p + r)({})`),
      join([e, e], (x, y) => "`${" + x + "}-${" + y + "}`"),
      join([e], x => `({ k: ${x}, get g() { return this.k + 1 } }).g`),
      join([e], x => `o?.deep?.[${x}] ?? log(${x})`),
      join([e], x => `new (class { w = 1 + (${x}); m() { return this.w - 1 } })().m()`),
    ),
    statement: fc.oneof(
      { maxDepth: 3, depthIdentifier: "s" },
      join([e], x => `log(${x});`),
      join([name, e], (n, x) => `${n} = ${x}`),
      join([target, update, e], (t, op, x) => `;${t} ${op} ${x}`),
      join([e, tie("block"), tie("block")], (x, p, q) => `if (${x}) ${p} else ${q}`),
      join([fc.constantFrom("1", "2", "3"), tie("block")], (n, p) => `for (let i = 0; i < ${n}; i++) ${p}`),
      join([tie("block")], p => `for (const v of [1, 2n, "z"]) ${p}`),
      join(
        [fc.constantFrom("2", "4"), s],
        (n, p) => `{ let w = ${n}; while (w-- > 0) { ${p} } do { w += 1 } while (w < 1) }`,
      ),
      join([tie("block"), tie("block")], (p, q) => `try ${p} catch (x) { log(x?.name) } finally ${q}`),
      join([name, e], (n, x) => `{ const ${n} = ${x}; log(${n}) }`),
      join([e, s], (x, p) => `switch (${x}) { case 1: ${p}; case "x": log("two"); break; default: ${p} }`),
      join([e], x => `{ const [m, n = ${x}] = [a]; [a, b] = [n, m]; ({ k: c = ${x} } = o) }`),
      join(
        [e, e],
        (x, y) =>
          `{ function* g() { const r = yield ${x}; yield r + (${y}) } const it = g(); log(it.next().value); log(it.next(2).value) }`,
      ),
    ),
    block: fc.array(s, { minLength: 1, maxLength: 3 }).map(list => `{ ${list.join("\n")}\n}`),
  }
})

export const plainProgram: fc.Arbitrary<string> = fc
  .array(plain.statement, { minLength: 1, maxLength: 6 })
  .map(
    list => `
let a = 1, b = 2.5, c = "t", d = 4n, calls = 0
const out = []
const show = v => typeof v === "object" && v !== null ? JSON.stringify(v, (k, x) => typeof x === "bigint" ? x + "n" : x) : typeof v === "function" ? "f" : Object.is(v, -0) ? "-0" : String(v) + typeof v
const log = v => { out.push(show(v)); if (out.length > 400) throw new RangeError("enough"); return v }
const o = { k: 3, list: [1, 2, 3], deep: { v: 1 } }
const key = () => { calls++; return "k" }
const get = () => { calls += 10; return o }
const f = (x, y = x) => { if (calls++ > 200) return 0; return x + y }
try {
${list.join("\n")}
} catch (x) { log(x?.name) }
for (const v of [a, b, c, d, o, calls]) out.push(show(v))
console.log(out.join("|"))
`,
  )

/** Mechanics: vectors and numbers, well matched for the most part. */
const mechanics = fc.letrec<Record<"vector" | "number" | "any" | "statement" | "block", string>>(tie => {
  const v = tie("vector")
  const n = tie("number")
  const s = tie("statement")
  const vectorName = fc.constantFrom("r", "p", "q", "g")
  const changing = fc.constantFrom("r", "p", "q")
  const numberName = fc.constantFrom("m", "k", "t", "dt")
  return {
    number: fc.oneof(
      { maxDepth: 3, depthIdentifier: "n" },
      fc.constantFrom("0", "1", "2", "0.5", "-1.5", "1e-3", "3"),
      numberName,
      join([vectorName, fc.constantFrom("x", "y", "z")], (a, c) => `${a}.${c}`),
      join([n, fc.constantFrom("+", "-", "*", "/", "**"), n], (a, op, b) => `((${a}) ${op} (${b}))`),
      join([v, fc.constantFrom("x", "y", "z")], (a, c) => `(${a}).${c}`),
      join([v, v], (a, b) => `dot(${a}, ${b})`),
      join([v], a => `magnitude(${a})`),
      join([v, v], (a, b) => `distance(${a}, ${b})`),
      join([v, v], (a, b) => `(${a}).dot(${b})`),
      join([v], a => `(${a}).magnitude()`),
      join([v], a => `size(${a})`),
      join([n], a => `-(${a})`),
      fc.constant("t++"),
    ),
    vector: fc.oneof(
      { maxDepth: 4, depthIdentifier: "v" },
      vectorName,
      vectorName,
      join([n, n, n], (x, y, z) => `vec3(${x}, ${y}, ${z})`),
      join([v, fc.constantFrom("+", "-"), v], (a, op, b) => `((${a}) ${op} (${b}))`),
      join([n, v], (a, b) => `(${a}) * (${b})`),
      join([v, n], (a, b) => `(${a}) * (${b})`),
      join([v, n], (a, b) => `((${a}) / (${b}))`),
      join([v], a => `-(${a})`),
      join([v, v], (a, b) => `cross(${a}, ${b})`),
      join([v], a => `unit(${a})`),
      join([v, v], (a, b) => `(${a}).add(${b}).subtract(${a}).negated()`),
      join([v, n], (a, b) => `(${a}).times(${b}).over(2)`),
      join([v, v], (a, b) => `along(${a}, ${b})`),
      join([n, v, v], (c, a, b) => `(${c} > 0 ? ${a} : ${b})`),
      join([v, n], (a, b) => `force(${a}, ${b})`),
      join([v], a => `twice(${a})`),
      join([v], a => `body.move(${a})`),
      fc.constantFrom("body.r", "list[0]", "last()"),
      join([changing, v], (a, b) => `(${a} = ${b})`),
    ),
    /** now and then something that does not fit */
    any: fc.oneof(
      { weight: 6, arbitrary: v },
      { weight: 2, arbitrary: n },
      { weight: 1, arbitrary: fc.constantFrom('"text"', "undefined", "null", "list") },
    ),
    statement: fc.oneof(
      { maxDepth: 3, depthIdentifier: "s" },
      join([changing, v], (a, b) => `${a} = ${b}`),
      join([changing, v], (a, b) => `${a} = ${b}`),
      join([changing, fc.constantFrom("+=", "-="), v], (a, op, b) => `${a} ${op} ${b}`),
      join([changing, fc.constantFrom("*=", "/="), n], (a, op, b) => `${a} ${op} ${b}`),
      join([numberName, n], (a, b) => (a === "dt" ? `m = ${b}` : `${a} = ${b}`)),
      join([v], a => `{ const w = ${a}; log(w, w.x); q = w + r }`),
      join([v, n], (a, b) => `{ let w = ${a}; for (let i = 0; i < 3; i++) { w = w * (${b}) + r; log(w) } }`),
      join([n, tie("block"), tie("block")], (a, b, c) => `if (${a} > 0) ${b} else ${c}`),
      join([tie("block")], a => `for (let i = 0; i < 2; i++) ${a}`),
      join([v], a => `body.r = ${a}; body.r += p; list[0] = body.r`),
      join(
        [v, v],
        (a, b) =>
          `{ const u = ${a}, w = ${b}; record(t, { one: { position: u, forces: { f: w } }, energy: u.x }) }`,
      ),
      join([v], a => `log("at " + ${a}, \`\${p}\`)`),
      join(
        [tie("any"), fc.constantFrom("+", "-", "*", "/"), tie("any")],
        (a, op, b) => `log((${a}) ${op} (${b}))`,
      ),
      join([changing, changing], (a, b) => `log(${a} === ${b}, ${a} === g)`),
      join([v], a => `{ let w = ${a}; const later = () => w + p; w = w + r; log(later()) }`),
      join([changing, v], (a, b) => `log(${a} = ${b})`),
      join(
        [changing],
        a =>
          `log(typeof ${a}, !${a}, ${a} ? 1 : 2, ${a} && t, [${a}].length, void ${a}, ${a} instanceof Vec3)`,
      ),
      join(
        [changing],
        a =>
          `{ const { x, y: w } = ${a}; log(x, w, "x" in ${a}, ${a}?.z, ${a}["y"], JSON.stringify({ ${a} })) }`,
      ),
    ),
    block: fc.array(s, { minLength: 1, maxLength: 3 }).map(list => `{ ${list.join("\n")}\n}`),
  }
})

const helpers = [
  "function force(a, b) { if (b > 1) return a * b; return a - p * 0.5 }",
  "const twice = a => a + a",
  "const size = a => magnitude(a) + a.x",
  "const last = () => list[list.length - 1]",
]

export const mechanicsProgram: fc.Arbitrary<string> = fc
  .array(mechanics.statement, { minLength: 1, maxLength: 7 })
  .map(
    list => `
const bits = x => Object.is(x, -0) ? "-0" : String(x)
const out = []
const show = a => isVec3(a) ? "(" + [a.x, a.y, a.z].map(bits).join() + ")" : bits(a)
const log = (...all) => { for (const a of all) out.push(show(a)) }
const g = vec3(0, -9.81, 0)
let r = vec3(1, 2, 3), p = vec3(0.5, -1, 0), q = vec3(0, 0, 0)
let m = 2, k = 30.5, t = 0
const dt = 0.01
const body = { r: vec3(1, 0, 0), move(a) { this.r = this.r + a * dt; return this.r } }
const list = [vec3(0, 1, 0)]
${helpers.join("\n")}
try {
${list.join("\n")}
} catch (x) { log(x.code ?? x.name, x.text) }
for (const a of [r, p, q, m, k, t, body.r, list[0]]) log(a)
console.log(out.join("|"))
`,
  )
