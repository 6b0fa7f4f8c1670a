import { type Hostile, memory } from "./program.ts"

export const floods: readonly Hostile[] = [
  {
    name: "a list that grows, past the compiler",
    raw: "const a = []; for (;;) a.push([1, 2, 3])",
    ends: memory,
  },
  {
    name: "a list that grows, in a cell",
    cell: "const a: unknown[] = []\nwhile (true) { a.push(new Array(10000).fill(a.length)) }",
    ends: /^(memory-limit|run-lost|endless-loop|time-limit)$/,
  },
  { name: "one list of a thousand million", raw: "new Array(1e9).fill(7)", ends: memory },
  { name: "Array.from of a huge length", raw: "Array.from({ length: 4e8 }, (_, i) => [i])", ends: memory },
  { name: "a list joined to itself", raw: "let a = [1]; for (;;) a = a.concat(a)", ends: memory },
  {
    name: "a text that doubles",
    cell: "let s = 'a'\nwhile (true) { s = s + s }",
    ends: /^(too-large|program-error)$/,
  },
  {
    name: "a text that is repeated",
    raw: "const all = []; for (;;) all.push('ab'.repeat(1e7 + all.length).split('a').join('c'))",
    ends: memory,
  },
  {
    name: "texts padded to the most",
    raw: "const all = []; for (let i = 0; ; i++) all.push('x'.padEnd(2 ** 24 + i, 'yz').toUpperCase())",
    ends: memory,
  },
  {
    name: "a map that grows",
    raw: "const m = new Map(); for (let i = 0; ; i++) m.set(i, 'v' + i)",
    ends: memory,
  },
  { name: "a set that grows", raw: "const m = new Set(); for (let i = 0; ; i++) m.add({ i })", ends: memory },
  {
    name: "an object with names without end",
    raw: "const o = {}; for (let i = 0; ; i++) o['k' + i] = i",
    ends: memory,
  },
  {
    name: "closures held by closures",
    raw: "let f = () => 0; const all = []; for (;;) { const g = f; f = () => g; all.push(f, new Array(50)) }",
    ends: memory,
  },
  {
    name: "errors with their stacks",
    raw: "const all = []; for (;;) all.push(new Error('x'.repeat(1000)))",
    ends: memory,
  },
  {
    name: "symbols without end",
    raw: "const all = []; for (let i = 0; ; i++) all.push(Symbol.for('s' + i))",
    ends: memory,
  },
  {
    name: "vectors without end",
    cell: "const all: Vec3[] = []\nfor (;;) { all.push(vec3(1, 2, 3)) }",
    ends: /^(endless-loop|memory-limit|run-lost)$/,
  },
  {
    name: "patterns without end",
    raw: "const all = []; for (let i = 0; ; i++) { const r = new RegExp('(' + 'a|b'.repeat(2000) + i + ')'); r.test('c'); all.push(r) }",
    ends: memory,
  },
  {
    name: "functions bound to functions",
    raw: "let f = () => 1; for (;;) f = f.bind(null, [1, 2, 3])",
    ends: memory,
  },
  {
    name: "JSON text of a net of lists",
    raw: "let o = [1]; for (let i = 0; i < 60; i++) o = [o, o]; JSON.stringify(o)",
    ends: memory,
  },
  {
    name: "a deep recursion",
    cell: "function f(n: number): number { return 1 + f(n + 1) }\nf(0)",
    ends: /^too-deep$/,
  },
  {
    name: "a deep recursion that records on the way",
    cell: "function f(n: number): void { record(n, { n })\nf(n + 1) }\nf(0)",
    ends: /^too-deep$/,
  },
  {
    name: "a deep recursion caught at every level",
    cell: "function f(): void { try { f() } catch (e) { f() } }\nf()",
    ends: /^(endless-loop|too-deep)$/,
  },
  {
    name: "JSON nested a million deep",
    raw: "JSON.parse('['.repeat(1e6) + ']'.repeat(1e6))",
    ends: /^(harmless|too-deep|program-error|program-failed)$/,
  },
  {
    name: "a flood of recordings",
    cell: "for (let i = 0; ; i = i + 1) { record(i, { a: vec3(i, i, i), b: vec3(i, i, i) }) }",
    ends: /^(recorded-too-much|endless-loop)$/,
  },
  {
    name: "a flood of recordings past the compiler",
    raw: "for (let i = 0; ; i++) host.record(i, { a: i })",
    ends: /^recorded-too-much$/,
  },
  {
    name: "a flood of printing",
    cell: "while (true) { console.log('x'.repeat(1000)) }",
    ends: /^endless-loop$/,
  },
  { name: "printing one huge text", cell: "console.log('x'.repeat(10000000))", ends: "harmless" },
  { name: "printing a huge list", cell: "console.log(new Array(1000000).fill({ a: 1 }))", ends: "harmless" },
  { name: "printing empty lines without end", raw: "for (;;) lib.console.log()", ends: /^time-limit$/ },
  {
    name: "printing what holds itself",
    cell: "const o: { a?: unknown } = {}\no.a = o\nconsole.log(o)",
    ends: "harmless",
  },
  {
    name: "a text of a hundred million letters in one call",
    cell: "const long = 'x'.repeat(100000000)",
    ends: /^too-large$/,
  },
  {
    name: "a message of ten million letters",
    cell: "throw new Error('x'.repeat(10000000))",
    ends: /^program-error$/,
  },
]
