import type { Hostile } from "./program.ts"

const shape = /^record-shape$/

export const names: readonly Hostile[] = [
  { name: "__proto__ as a name", raw: "host.record(0, JSON.parse('{\"__proto__\": 1}'))", ends: shape },
  {
    name: "__proto__ as a group",
    raw: 'host.record(0, JSON.parse(\'{"__proto__": {"a": 1}}\'))',
    ends: shape,
  },
  {
    name: "constructor and prototype as names",
    raw: "host.record(0, { constructor: 1, prototype: 2 })",
    ends: shape,
  },
  { name: "an empty name", raw: "host.record(0, { '': 1 })", ends: shape },
  { name: "a picture as a name", raw: "host.record(0, { '\u{1F680}': 1 })", ends: shape },
  { name: "a mark that turns the writing round", raw: "host.record(0, { 'a\\u202eb': 1 })", ends: shape },
  { name: "a mark of no width", raw: "host.record(0, { 'a\\u200bb': 1 })", ends: shape },
  { name: "half of a pair", raw: "host.record(0, { 'a\\ud800': 1 })", ends: shape },
  { name: "a name of a million letters", raw: "host.record(0, { ['a'.repeat(1e6)]: 1 })", ends: shape },
  {
    name: "a name with a line end and markup",
    raw: "host.record(0, { '<script>alert(1)</script>\\n': 1 })",
    ends: shape,
  },
  {
    name: "a name with a comma and a quote, for tables",
    raw: "host.record(0, { '=1+1,\"': 1 })",
    ends: shape,
  },
  {
    name: "a hundred thousand names",
    raw: "const q = {}; for (let i = 0; i < 1e5; i++) q['a' + i] = i; host.record(0, q)",
    ends: shape,
  },
  {
    name: "groups a thousand deep",
    raw: "let q = { a: 1 }; for (let i = 0; i < 1000; i++) q = { q }; host.record(0, q)",
    ends: shape,
  },
  { name: "a group that holds itself", raw: "const q = {}; q.q = q; host.record(0, q)", ends: shape },
  { name: "a symbol as a name", raw: "host.record(0, { [Symbol('s')]: 1 })", ends: shape },
  {
    name: "names that change under way",
    raw: "host.record(0, { a: 1 }); host.record(1, { b: 1 })",
    ends: shape,
  },
  {
    name: "a name that comes from a prototype",
    raw: "host.record(0, Object.create({ a: 1 }))",
    ends: /^record-(shape|value)$/,
  },
  { name: "a list as quantities", raw: "host.record(0, [1, 2, 3])", ends: /^record-(shape|value)$/ },
  {
    name: "names of other scripts, which are welcome",
    raw: "host.record(0, { 'Ωé名前': 1, $_a1: 2 })",
    ends: "harmless",
  },
]
