import { describe, expect, it } from "vitest"
import { compile, explainFailure, lower } from "../../src/cell/index.ts"
import { compiled, prints, program, run, strip } from "./run.ts"

/** What the text prints as the language itself runs it, in strict mode. */
async function original(text: string): Promise<string[]> {
  const printed: unknown[] = []
  const js = await strip(text)
  new Function("console", `"use strict";\n${js}`)({ log: (...values: unknown[]) => printed.push(...values) })
  return printed.map(shown)
}

const shown = (value: unknown): string =>
  Object.is(value, -0) ? "-0" : typeof value === "bigint" ? `${value}n` : String(value)

const texts: Record<string, string> = {
  "numbers, texts, bigints": `console.log(1 + 2 * 3 - 4 / 5, "a" + 1 + 2, 1 + 2 + "a", 10n ** 20n + 1n, -0 * 1, 7 % 3, -7 % 3, 2 ** 3 ** 2, (-2) ** 2)`,
  "mixed kinds": `console.log([] + {}, [] + [], null + 1, undefined + 1, true + true, "3" * "4", "3" - 1, +"7", -"7", [5] * [6])`,
  "bigint and number do not mix": `try { const f = (a, b) => a + b; f(1n, 1) } catch (e) { console.log(e.name, e.message) }`,
  "valueOf and toPrimitive, in order and once": `
    const log = []
    const o = n => ({ valueOf() { log.push(n); return n } })
    const f = (a, b) => [a + b, a - b, a * b, a / b, a ** b, -a]
    console.log(...f(o(2), o(3)), log.join())
    console.log({ [Symbol.toPrimitive](hint) { return hint } } + "!", \`\${{ [Symbol.toPrimitive](hint) { return hint } }}\`)`,
  "operands are evaluated left to right and once":
    `
    const log = []
    const v = n => (log.push(n), n)
    let x = v(1) + v(2) * v(3) - v(4) / -v(5) ** v(2) `.replace("-v(5) ** v(2)", "(-v(5)) ** v(2)") +
    `
    console.log(x, log.join())`,
  "compound assignment evaluates its target once": `
    let n = 0
    const o = { a: [1, 2, 3], get g() { n++; return this }, s: "t" }
    const key = () => { n += 10; return 1 }
    o.a[key()] += 5
    o.g.g.a[key()] *= 2
    o.s += 1 + 2
    o.a[0] -= 3; o.a[2] /= 2; o.a[2] **= 2; o.a[1] %= 4; o.a[1] <<= 2
    console.log(n, o.a.join(), o.s)`,
  "compound assignment reads the old value before the right side runs": `
    let x = 1
    const f = () => { x = 10; return 2 }
    x += f()
    console.log(x)
    const o = { p: 1 }
    o.p += (o.p = 5, 2)
    console.log(o.p)
    let q = { v: 1 }
    const r = q
    q.v += (q = { v: 100 }, 1)
    console.log(r.v, q.v)`,
  "compound assignment is an expression": `let a = 1, b; b = a += 2; console.log(a, b, (a -= 1) * 3, a ||= 7, a &&= 0, b ??= 4)`,
  "compound assignment on computed keys, private names, super": `
    class A { get v() { return this._v ?? 1 } set v(x) { this._v = x } }
    class B extends A {
      #n = 1
      static s = 2
      m() { super.v += 3; super["v"] *= 2; this.#n += 4; this.#n *= this.#n; B.s **= 3; return [this.v, this.#n, B.s] }
      k = (this.#n -= 0.5)
    }
    console.log(...new B().m(), new B().k)`,
  "update expressions": `let i = 5; const o = { k: 1 }; console.log(i++ + ++i, i-- - --i, o.k++ + o.k, i++ * -i)`,
  "precedence and brackets": `const a = 2, b = 3, c = 4; console.log(a + b * c, (a + b) * c, a - (b - c), a / b / c, a / (b / c), -(a + b), - -a, +-a, a - -b, a+ +b, a*-b, ~(a + b), !(a - b), a + b > c && c - a < b, a + b == 5 ? a * b : c)`,
  "comma, conditional, assignment inside operators": `let a, b; console.log((a = 3) + (b = 4), (a, b) * (b, a), a > b ? a : b + 1, (a ? b : 0) * 2, [a + b, (a, b)])`,
  "decrement and arrow side by side": `let x = 3; const out = []; while (x-->0) out.push(x); console.log(out.join())`,
  "optional chaining": `const o = { a: { b: [1, 2], f(x) { return x + this.b[1] } } }, u = undefined; console.log(o?.a?.b?.[0] + 1, u?.a.b.c, u?.[1 + 1], o.a?.f(3), o.z?.(1 + 1), (u?.a)?.b, (o?.a).b[1], delete o?.a?.b)`,
  "nullish and logical": `const z = 0, n = null; console.log((z ?? 1) + 2, (z || 5) * 2, n ?? z + 1, !z && 1 + 1)`,
  destructuring: `
    const [a = 1 + 1, [b, ...c] = [3, 4, 5], , d] = [undefined, undefined, 9, 10]
    const { x, y: { z = x + 1 } = {}, ["k" + 1]: k = 5 * 2, ...rest } = { x: 3, k2: 1, w: 8 }
    let p, q, o = {}
    ;[p, q] = [1, 2]; [p, q] = [q, p]; ({ p: o.m = p + q, q = q * 5 } = { q: undefined });
    [o.n = 7 - 1] = []
    for (const [i, { v = i + 1 }] of [[1, {}], [2, { v: 9 }]]) console.log(i * v)
    console.log(a, b, c.join(), d, x, z, k, JSON.stringify(rest), p, q, JSON.stringify(o))
    const f = ({ a = 1, b: { c = a + 1 } = {} }, [d = c * 2] = [], ...e) => a + c + d + e.length
    console.log(f({}), f({ a: 2 }, [3], 4, 5))`,
  "functions, defaults, rest, arguments, names": `
    function f(a, b = a + 1, ...c) { return a + b + c.length + arguments.length }
    const g = function () {}, h = () => {}, o = { m() {}, n: () => {}, get p() { return 1 + 1 } }
    let k; k = () => {}; k ||= 1
    class C { static s = () => 1; f = function () {} }
    console.log(f(1), f(1, 2, 3, 4), g.name, h.name, o.m.name, o.n.name, k.name, C.s.name, new C().f.name, f.length, o.p)
    console.log((x => y => x + y)(1)(2), (() => ({ a: 1 + 1 }))().a, ((a, b) => { return a - b })(5, 3), [1, 2, 3].map(x => x * x).join())`,
  recursion: `const fib = n => n < 2 ? n : fib(n - 1) + fib(n - 2); function fact(n) { return n <= 1n ? 1n : n * fact(n - 1n) }; console.log(fib(15), fact(25n))`,
  "this and methods": `
    const o = { n: 1, f() { return this.n + 1 }, g() { return (() => this.n * 10)() }, h: { k() { return this === o.h } } }
    const { f } = o
    let t; try { f() } catch (e) { t = e.name }
    console.log(o.f(), o["f"](), (o.f)(), o?.f(), (0, o.f).call({ n: 5 }), o.g(), o.h.k(), t, (function () { return this })())`,
  classes: `
    class A { static #count = 0; #v; constructor(v) { this.#v = v; A.#count += 1 } get v() { return this.#v } set v(x) { this.#v = x * 2 } static get count() { return A.#count } ["m" + 1]() { return this.#v - 1 } static { this.t = 1 + 1 } has(o) { return #v in o } *[Symbol.iterator]() { yield this.#v; yield this.#v + 1 } }
    class B extends A { w = this.v + 1; constructor() { super(3); this.v += 1 } m1() { return super.m1() + 100 } }
    const b = new B(), Anonymous = class {}
    console.log(b.v, b.w, b.m1(), A.count, A.t, b.has(b), [...b].join(), Anonymous.name, new (class { q = 2 * 3 })().q)`,
  "generators and iteration": `
    function* g(n) { let got = 0; while (n-- > 0) got += (yield n * got) ?? 1; return got }
    const it = g(3); const seen = [it.next().value, it.next(5).value, it.next().value, it.next(2).value]
    function* all() { const r = yield* g(2); yield r + 0.5 }
    const m = new Map([["a", 1], ["b", 2]]); let s = 0; for (const [k, v] of m) s += v
    for (const k in { x: 1, y: 2 }) s += k.length
    console.log(seen.join(), [...all()].join(), s, Math.max(...[1, 2].map(x => x + 1)))`,
  "loops, labels, switch": `
    let s = 0
    outer: for (let i = 0; i < 5; i++) { for (let j = 0; ; j++) { if (j > i) continue outer; if (i * j > 6) break outer; s += i * 10 + j } }
    let k = 0; do k++; while (k < 3)
    do { k -= 1 } while (k > 1)
    for (;;) { if (k++ > 4) break }
    for (var q = 0, w = 10; q < w; q += 2, w--);
    if (s > 1) s += 1; else s -= 1
    if (s < 0) ; else if (s > 1e9) s = 0; else { s *= 2 }
    const sw = x => { switch (x + 1) { case 1: return "one"; case 2: { s++ } case 3: s += 2; break; default: s += 100 } return s }
    block: { if (s) break block; s = -1 }
    console.log(s, k, q, w, sw(0), sw(1), sw(2), sw(9))`,
  "closures keep their own turn": `const fs = []; for (let i = 0; i < 3; i++) fs.push(() => i * 10); var gs = []; for (var j = 0; j < 3; j++) gs.push(() => j + 1); console.log(fs.map(f => f()).join(), gs.map(f => f()).join())`,
  "try, catch, finally, throw": `
    const f = x => { try { if (x > 1) throw new Error("e" + x); return x + 1 } catch ({ message: m }) { return m + "!" } finally { console.log("f" + x) } }
    console.log(f(1), f(2)); try { null.x } catch { console.log("caught") }
    try { throw { a: 1 + 1 } } catch (e) { console.log(e.a) }`,
  "templates and tags": `const a = 2, t = (s, ...v) => s.raw.join("|") + v.join(); console.log(\`\${a + 1} and \${\`\${a * a}\`}\`, t\`x\${a - 1}\\n\${-a}y\`, \`a\\\`b\${"}"}\`)`,
  "texts, remarks and patterns are left alone": `
    // a + b \`\${
    /* a * b */
    const s = "a + b // no", r = /a+b*\\/[/-]/g, d = 6 / 2 / 3 // 1 / 2
    console.log(s, r.source, d, s /* + 1 */ + 1, /* x */ 2 - /* y
    */ 1, "x".replace(/x/, "y/z"))`,
  "line ends without semicolons": `
    let a = 1
    let b = a
    ++a
    const f = function () { return 2 }
    const c = a
      + b
      - 1
    ;[1, 2].forEach(x => console.log(x + c))
    const g = () => {
      return
      1 + 1
    }
    console.log(a, b, c, g())
    if (a) console.log("yes")
    else console.log("no")
    var i = 0; while (i < 2) i++
    console.log(i)`,
  "spread and object literals": `const o = { a: 1 }, k = "z"; const p = { ...o, b: o.a + 1, [k + 1]: 2 * 3, "q r": -o.a, 3: 4, k, async: 1, get: 2, set s(v) { this.t = v + 1 } }; p.s = 4; console.log(JSON.stringify(p), Math.max(...[1, 2], 3 - 1), [...[1], 2 + 2].join())`,
  "types are taken away": `
    interface Body { mass: number; position?: string }
    type Pair<T> = [T, T]
    enum Kind { A = 1, B = A + 2, C = "c".length }
    enum Name { X = "x" }
    function add<T extends number>(this: void, a: T, b?: number): number { return a + (b ?? 0) }
    const pair: Pair<number> = [1, 2], b = { mass: 3 } as Body, n = b.mass! + 1, u = <number>(b.mass as unknown) * 2
    let later!: number; later = 5; later! += 1
    abstract class S { abstract area(): number; constructor(protected readonly side: number) {} }
    class Q extends S { area() { return this.side * this.side } declare z: string }
    function over(a: number): number; function over(a: string): string; function over(a: any) { return a + a }
    const sat = { k: 1 + 1 } satisfies { k: number }
    const gen = async <T,>(x: T): Promise<T> => x
    console.log(Kind.B, Kind[1], Name.X, add<number>(1, 2), pair[0] + pair[1], n, u, later, new Q(3).area(), over(2), over("x"), sat.k, typeof gen)`,
  "typeof, void, delete, in, instanceof": `const o = { a: 1 }; console.log(typeof nothing, typeof o, void 0, delete o.a, "a" in o, [] instanceof Array, typeof (1 + 1))`,
  "names of the library can be used for other things": `const dot = (a, b) => a * b; let magnitude = 3; { const unit = 2; magnitude += unit } function cross() { return 1 } console.log(dot(2, 3), magnitude, cross()); var vec3 = 5; console.log(vec3 + 1); const host = 1, lib = 2, parameters = 3; console.log(host + lib + parameters)`,
  "var is hoisted, functions too": `console.log(f(), v); var v = 1; function f() { return 1 + 1 } { function g() { return 3 } console.log(g()) } console.log(v)`,
  "unicode and separators": `const ö = 1_000, \\u0061b = 2, 日 = "\\u{1F600}"; console.log(ö + ab, 日.length + 1, "é".length, 0x1f + 0b11 + 0o17 + .5 + 5. + 1e3)`,
  "getters on the way": `let log = ""; const o = { get a() { log += "a"; return { get b() { log += "b"; return 2 }, set b(v) { log += "B" + v } } } }; o.a.b += 1; o.a.b *= o.a.b; console.log(log)`,
  "text that looks forbidden": `console.log("<!-- -->", \`import(x) eval(y)\`, /-->/.test("-->"), "import(" + "eval(" /* <!-- --> */, String.raw\`a\`)`,
  "sorting and reducing": `console.log([3, 1, 2].sort((a, b) => b - a).join(), [1, 2, 3].reduce((s, x) => s + x ** 2, 0), [..."abc"].map((c, i) => c + i).join(""))`,
  "deep sums": `console.log(${Array.from({ length: 300 }, (_, i) => i).join(" + ")})`,
}

describe("a rewritten program means what it meant", () => {
  it.each(Object.entries(texts))("%s", async (_, text) => {
    expect((await prints(text)).map(shown)).toEqual(await original(text))
  })

  it("async functions go on after the program's end as always", async () => {
    const done: unknown[] = []
    const { js } = await compiled(
      "const f = async (a, b) => { const c = await a; return c + b }; f(Promise.resolve(1), 2).then(v => console.log(v * 2)); for (const x of []) ;",
    )
    const host = {
      ...(await import("../../src/cell/operators.ts")),
      maxTurns: 100,
      done() {},
      enterCell() {},
    }
    new Function("lib", "parameters", "host", js)(
      { console: { log: (v: unknown) => done.push(v) } },
      {},
      host,
    )
    await new Promise(resolve => setTimeout(resolve, 0))
    expect(done).toEqual([6])
  })
})

describe("signs side by side that some engines read as a remark", () => {
  it("are operators", async () => {
    expect(await prints("let x = 3, n = 0\nwhile (x-->0) n++\nconsole.log(x<!--n, n-->0)")).toEqual([
      true,
      true,
    ])
  })
})

describe("types that need no more than to be taken away", () => {
  const typed: Record<string, string> = {
    annotations:
      "const a: number = 1, b: Vec3<'m'> = vec3(1, 2, 3); let c: { k: number } | null = null, [d, e]: [number, number] = [1, 2]; const { f }: { f: number } = { f: 3 }",
    functions:
      "function f<T extends number>(a: T, b?: number, ...c: string[]): a is T { return a } const g = async <T,>(x: T): Promise<T> => x, h = (a?): void => {}, k = (x: (y: number) => void) => (x as any)",
    "as, satisfies, !":
      "const a = (1 + 2) as number, b = { k: 1 } satisfies object, c = b!.k, d = ((a))! + (b as { k: number }).k, e = (a as unknown as number) * 2",
    "interfaces and names of types":
      "interface I { a: number; b(): void }\ntype T = I | { c: string }\nfunction f() { type U = T; interface V {} return 1 as unknown as U }\nconst x = 1 as number\n;[x].map(y => y)",
    classes:
      "class A<T> extends Array<T> { x: number = 1\n y = this.x as number\n ['z']: string\n #p: number\n static s: number = 2\n m<U>(a: U): U { return a } get g(): number { return 1 } }",
    "line ends that types hid":
      "const b = 1, c = 2\nconst a = b as number\n(c)\nlet d: number\n[c]\ntype T = number\n;(b)",
    "calls and more":
      "const m = new Map<string, number>(), n = Array.from<number>([1]), t = String.raw<string>`x`\nfor (const x of [1] as number[]) x\ntry { } catch (e: unknown) { e }\nif ((m as Map<string, number>).size > 1) m",
  }
  it.each(Object.entries(typed))("%s", async (_, text) => {
    for (const trace of [false, true]) {
      const plain = lower(program(text), { trace })
      const kept = lower(program(text), { trace, keepTypes: true })
      if (!plain.ok || !kept.ok) throw new Error(JSON.stringify([plain, kept]))
      expect([plain.lowered.plain, kept.lowered.plain]).toEqual([true, false])
      new Function(plain.lowered.text)
      expect(await strip(plain.lowered.text)).toBe(await strip(kept.lowered.text))
    }
  })
  it("are taken without the stripper; an enum asks for it", async () => {
    const never = async (): Promise<string> => {
      throw new Error("The stripper was called")
    }
    expect(await compile(program("const a: number = 1"), never)).toMatchObject({ ok: true })
    await expect(compile(program("enum E { A }"), never)).rejects.toThrow("The stripper was called")
  })
})

describe("a vector kept as three numbers", () => {
  it("is one whole wherever it is asked for as one", async () => {
    expect(
      await prints(`
let r = vec3(1, 2, 3)
r = r * 2
enum E { A = r.y }
enum F { A = 1 }
let q = vec3(0, 1, 0)
q += r
const { x, y } = q
console.log(typeof r, E.A, typeof q, q instanceof Vec3, x + y, [q][0].z, \`\${q}\`, { q }.q.x, q ? 1 : 2)`),
    ).toEqual(["object", 4, "object", true, 7, 6, "(2, 5, 6)", 2, 1])
  })
  it("is told by its own name when it is used before it is made", async () => {
    const c = await compiled("const f = () => 1\nconst s = p.x + f()\nlet p = vec3(1, 2, 3)\np = p + p")
    expect(explainFailure(run(c).error, c, run(c, { trace: true }).site)).toMatchObject({
      code: "used-before-made",
      text: "p is used before it is made.",
      where: { line: 2, column: 11 },
    })
  })
  it("is the same object to a program that asks for sameness", async () => {
    expect(
      await prints(
        "let a = vec3(1, 2, 3)\nconst b = a\na = a\nconsole.log(a === b, vec3(1, 2, 3) === a, [a].includes(b))",
      ),
    ).toEqual([true, false, true])
  })
})

describe("what the program is handed", () => {
  it("parameters are constants by their name; the library and Math come as locals", async () => {
    const c = await compiled(
      program("console.log(height + 1, magnitude(vec3(3, 4, 0)), Math.sqrt(4), Infinity, NaN, undefined)", [
        "height",
      ]),
    )
    expect(run(c, { parameters: { height: 2 } }).printed).toEqual([
      3,
      5,
      2,
      Number.POSITIVE_INFINITY,
      Number.NaN,
      undefined,
    ])
  })
  it("the program cannot reach what it is made with", async () => {
    const c = await compiled("console.log(typeof lib, typeof host, typeof parameters, host, this)")
    expect(run(c).printed).toEqual(["undefined", "undefined", "undefined", undefined, undefined])
  })
  it("the named time step goes through the host, wherever it is made at the top", async () => {
    const c = await compiled("const dt = 0.01; { const dt = 5; console.log(dt) } console.log(dt)")
    expect(run(c, { stepFactor: 0.5 }).printed).toEqual([5, 0.005])
  })
  it("turns of loops and calls are counted alike in both texts, and the last is one too many", async () => {
    const c = await compiled(
      "const f = x => x; let i = 0; while (i < 10) { i++; f(i) } do i--; while (i > 0)",
    )
    expect(run(c).turns).toBe(30)
    expect(run(c, { trace: true }).turns).toBe(30)
    expect(run(c, { maxTurns: 30 }).error).toBeUndefined()
    expect(run(c, { maxTurns: 29 }).error).toMatchObject({ problem: { code: "endless-loop" } })
  })
})
