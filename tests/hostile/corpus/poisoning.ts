import type { Hostile } from "./program.ts"

/** Prints "held" when the attempt to change something throws. */
const fixed = (...attempts: readonly string[]): string =>
  attempts.map(a => `try { ${a}; lib.console.log("open") } catch { lib.console.log("held") }`).join("\n")

export const poisoning: readonly Hostile[] = [
  {
    name: "prototypes of the language",
    raw: fixed(
      "Object.prototype.polluted = 1",
      "Array.prototype.push = () => 0",
      "Function.prototype.call = 1",
      "String.prototype.slice = 1",
      "Number.prototype.toFixed = 1",
      "Map.prototype.get = 1",
      "Error.prototype.message = 'forged'",
      "RegExp.prototype.test = () => true",
    ),
    ends: "harmless",
    held: 8,
  },
  {
    name: "prototypes by defineProperty and setPrototypeOf",
    raw: fixed(
      "Object.defineProperty(Object.prototype, 'x', { value: 1 })",
      "Object.setPrototypeOf(Array.prototype, { a: 1 })",
      "Object.prototype.__defineGetter__('y', () => 1)",
      "({}).__proto__.z = 1",
      "Object.assign(Object.prototype, { w: 1 })",
    ),
    ends: "harmless",
    held: 5,
  },
  {
    name: "prototypes of iterators and generators",
    raw: fixed(
      "Object.getPrototypeOf([][Symbol.iterator]()).next = () => ({ done: true })",
      "Object.getPrototypeOf(function* () {}).prototype.next = 1",
      "Object.getPrototypeOf(async () => {}).x = 1",
    ),
    ends: "harmless",
    held: 3,
  },
  {
    name: "functions of the library",
    raw: fixed(
      "lib.vec3 = () => 0",
      "lib.magnitude.call = () => 0",
      "lib.Vec3.prototype.add = function () { return this }",
      "lib.Vec3.prototype.constructor = Object",
      "Object.setPrototypeOf(lib.Vec3, null)",
      "lib.Vec3.forged = 1",
      "delete lib.Vec3.prototype.dot",
    ),
    ends: "harmless",
    held: 7,
  },
  {
    name: "the mathematics",
    raw: fixed("lib.Math.sin = () => 0", "Math.PI = 3", "delete Math.cos", "Math.random = () => 0.5"),
    ends: "harmless",
    held: 4,
  },
  {
    name: "the host's functions",
    raw: fixed(
      "host.record = () => 0",
      "host.add.x = 1",
      "Object.defineProperty(host, 'maxTurns', { value: Infinity })",
      "delete host.overrun",
      "lib.console.log = 1",
      "parameters.height = 5",
    ),
    ends: "harmless",
    held: 6,
  },
  {
    name: "JSON, Object and Array themselves",
    raw: fixed(
      "JSON.parse = () => 0",
      "Object.freeze = x => x",
      "Object.getPrototypeOf = () => null",
      "Array.isArray = () => true",
      "Number.isFinite = () => true",
      "Symbol.iterator = 1",
    ),
    ends: "harmless",
    held: 6,
  },
  {
    name: "a name made global",
    raw: fixed("leak = 1", "this.leak = 1", "undefined = 1", "NaN = 0"),
    ends: "harmless",
    held: 4,
  },
  {
    name: "a vector bent after it was made",
    raw: "const v = lib.vec3(1, 2, 3); v.x = 'x'; host.record(0, { v })",
    ends: /^record-value$/,
  },
  {
    name: "a vector with a getter",
    raw: "const v = Object.create(lib.Vec3.prototype, { x: { get() { return NaN } }, y: { value: 1 }, z: { value: 2 } }); host.record(0, { v })",
    ends: /^record-value$/,
  },
  {
    name: "NaN hidden in a vector",
    cell: "record(0, { v: vec3(1, 2, 3) })\nrecord(1, { v: vec3(1, 2, 3) * NaN })",
    ends: /^(record-value|not-finite|became-not-finite)$/,
  },
  {
    name: "infinity from dividing by a tiny number",
    cell: "record(0, { a: 1e308 / 1e-308 })",
    ends: /^record-value$/,
  },
  {
    name: "accessors on what is recorded, different each time",
    raw: "let n = 0; const q = { get a() { n++; return n % 3 === 0 ? lib.vec3(1, 2, 3) : n % 3 === 1 ? n : 'text' } }; for (let i = 0; i < 9; i++) host.record(i, q)",
    ends: /^record-(value|shape)$/,
  },
  {
    name: "a record that records within its own getter",
    raw: "host.record(0, { a: 1 }); host.record(1, { get a() { host.record(1, { a: 2 }); return 3 } })",
    ends: /^record-shape$/,
  },
  {
    name: "a record that enters another cell within its own getter",
    raw: "host.record(0, { get a() { host.enterCell(5); return 3 } })",
    ends: /^program-damaged$/,
  },
  { name: "a thenable as quantities", raw: "host.record(0, { then(f) { f() } })", ends: /^record-value$/ },
  {
    name: "an object with valueOf as a number",
    raw: "host.record(0, { a: { valueOf() { return 1 } } })",
    ends: /^record-value$/,
  },
  { name: "a Number object", raw: "host.record(0, { a: new Number(1) })", ends: /^record-value$/ },
  { name: "a whole number of any length", raw: "host.record(0, { a: 1n })", ends: /^record-value$/ },
  {
    name: "a time that is an object",
    raw: "let n = 0; host.record({ valueOf() { return n++ } }, { a: 1 })",
    ends: /^record-time$/,
  },
  {
    name: "a state left for the next run in a shared function",
    raw: fixed(
      "Object.defineProperty(lib.dot, 'left', { value: 'behind' })",
      "Symbol.for('left').description.x = 1",
      "Symbol.prototype.left = 1",
    ),
    ends: "harmless",
    held: 3,
  },
  {
    name: "an iterator of Array bent for the host's own loops",
    raw: fixed(
      "Array.prototype[Symbol.iterator] = function* () { yield 'forged' }",
      "Object.defineProperty(Array.prototype, Symbol.iterator, { value: null })",
    ),
    ends: "harmless",
    held: 2,
  },
  {
    name: "a setter on Object.prototype for an index",
    raw: fixed(
      "Object.defineProperty(Array.prototype, '0', { set(v) { lib.console.log('open') } })",
      "Object.defineProperty(Object.prototype, 'problem', { set() {} })",
      "Object.defineProperty(Object.prototype, 'then', { value() {} })",
    ),
    ends: "harmless",
    held: 3,
  },
]
