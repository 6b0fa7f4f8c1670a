import { clock, type Hostile, turns } from "./program.ts"

export const loops: readonly Hostile[] = [
  { name: "while (true)", cell: "while (true) { }", ends: turns },
  { name: "for (;;) with work", cell: "let a = 0\nfor (;;) { a = a + 1 }", ends: turns },
  { name: "do while", cell: "do { } while (true)", ends: turns },
  {
    name: "a loop whose step is too small to count",
    cell: "let t = 1e20\nwhile (t < 2e20) { t = t + 1 }",
    ends: turns,
  },
  { name: "a loop that runs the wrong way", cell: "for (let i = 1; i > 0; i = i + 1) { }", ends: turns },
  {
    name: "nested loops that catch the stop",
    cell: "for (;;) { try { for (;;) { } } catch (e) { } }",
    ends: turns,
  },
  {
    name: "finally that goes on with the loop",
    cell: "outer: for (;;) { try { for (;;) { } } finally { continue outer } }",
    ends: turns,
  },
  { name: "labels across loops", cell: "a: for (;;) { b: for (;;) { continue a } }", ends: turns },
  {
    name: "functions that call each other, with try and finally",
    cell: "function f() { try { g() } finally { g() } }\nfunction g() { try { f() } finally { f() } }\nf()",
    ends: /^(endless-loop|too-deep)$/,
  },
  {
    name: "a tree of calls, twice at each level",
    cell: "function f(n: number): number { return n === 0 ? 0 : f(n - 1) + f(n - 1) }\nf(60)",
    ends: turns,
  },
  {
    name: "a getter that loops",
    cell: "const o = { get a(): number { while (true) { } } }\nrecord(0, { a: o.a })",
    ends: turns,
  },
  {
    name: "a getter that loops while record reads it",
    cell: "record(0, { get a(): number { while (true) { } } })",
    ends: turns,
  },
  {
    name: "a loop in a comparison for sort",
    cell: "[3, 1, 2].sort(() => { while (true) { } })",
    ends: turns,
  },
  {
    name: "a comparison that never agrees with itself",
    cell: "const list = Array.from({ length: 200000 }, () => random())\nlist.sort(() => random() - 0.5)",
    ends: turns,
  },
  {
    name: "a loop in toString",
    cell: "const o = { toString(): string { while (true) { } } }\nconst s = String(o)",
    ends: turns,
  },
  {
    name: "a loop in valueOf",
    cell: "const o = { valueOf(): number { while (true) { } } }\nconst s = (o as unknown as number) * 2",
    ends: turns,
  },
  {
    name: "a loop in Symbol.toPrimitive",
    cell: "const o = { [Symbol.toPrimitive](): number { for (;;) { } } }\nconst s = (o as unknown as number) + 1",
    ends: turns,
  },
  { name: "a loop in toJSON", cell: "JSON.stringify({ toJSON() { for (;;) { } } })", ends: turns },
  {
    name: "a generator without an end, spread out",
    cell: "function* g() { while (true) yield 1 }\nconst all = [...g()]",
    ends: /^(endless-loop|not-allowed-here)$/,
  },
  {
    name: "an iterator of one's own without an end",
    cell: "const it = { [Symbol.iterator]: () => ({ next: () => ({ done: false, value: 1 }) }) }\nfor (const x of it) { }",
    ends: turns,
  },
  {
    name: "an iterator without an end, spread by the engine",
    raw: "const it = { [Symbol.iterator]: () => ({ next: () => ({ done: false, value: 1 }) }) }; Math.max(...it)",
    ends: /^(time-limit|memory-limit|run-lost|too-large|too-deep)$/,
  },
  { name: "a reviver that loops", cell: "JSON.parse('[1]', () => { for (;;) { } })", ends: turns },
  {
    name: "replace with a function that loops",
    cell: "'a'.replace(/a/, () => { for (;;) { } })",
    ends: turns,
  },
  {
    name: "a class field that builds itself",
    cell: "class A { a = new A() }\nnew A()",
    ends: /^(endless-loop|too-deep|not-allowed-here)$/,
  },
  { name: "a pattern that tries every way", cell: "/^(a+)+$/.test('a'.repeat(40) + 'b')", ends: clock },
  {
    name: "another pattern that tries every way",
    cell: "/^(([a-z])+.)+[A-Z]([a-z])+$/.test('a'.repeat(60))",
    ends: clock,
  },
  {
    name: "a pattern within replaceAll",
    cell: "('x'.repeat(35) + 'y').replaceAll(/(x+x+)+z/g, '')",
    ends: clock,
  },
  {
    name: "a search for a text in a huge text",
    raw: "const a = 'a'.repeat(2 ** 24); for (;;) (a + 'b').includes(a + 'c')",
    ends: clock,
  },
  { name: "a plain endless loop past the compiler", raw: "for (;;) {}", ends: clock },
  { name: "promise jobs without end", raw: "(async () => { for (;;) await null })()", ends: clock },
  {
    name: "promise jobs without end, through then",
    raw: "const f = () => (async () => {})().then(f); f()",
    ends: clock,
  },
  {
    name: "a job without end left by what is thrown",
    raw: "throw { get code() { (async () => { for (;;) await null })() } }",
    ends: /^(time-limit|thrown-value|program-failed)$/,
  },
  {
    name: "an error whose message never ends",
    raw: "const e = new Error(); Object.defineProperty(e, 'message', { get() { for (;;) ; } }); throw e",
    ends: clock,
  },
  {
    name: "an error whose name never ends",
    raw: "const e = new Error(); Object.defineProperty(e, 'name', { get() { for (;;) ; } }); throw e",
    ends: clock,
  },
  { name: "a thenable given back", raw: "return { then(f) { for (;;) ; } }", ends: "harmless" },
  {
    name: "a number with a million digits",
    raw: "let n = 3n; for (;;) n = n * n",
    ends: /^(time-limit|too-large|program-error|memory-limit|run-lost)$/,
  },
  {
    name: "a huge power of whole numbers",
    raw: "const n = 7n ** (10n ** 8n); n.toString()",
    ends: /^(time-limit|too-large|program-error|memory-limit|run-lost)$/,
  },
]
