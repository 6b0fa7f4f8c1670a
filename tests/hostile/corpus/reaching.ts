import { type Hostile, refused } from "./program.ts"

/** Prints "held" when the attempt throws or gives nothing; past the compiler, so that only the realm stands in the way. */
const closed = (...attempts: readonly string[]): string =>
  attempts
    .map(
      a =>
        `try { const found = (${a}); if (found === undefined || found === null) lib.console.log("held"); else lib.console.log("open", typeof found) } catch { lib.console.log("held") }`,
    )
    .join("\n")

export const reaching: readonly Hostile[] = [
  {
    name: "the maker of functions through a constructor",
    raw: closed(
      "(() => {}).constructor('return 1')()",
      "lib.vec3.constructor('return globalThis')()",
      "host.add.constructor('return process')()",
    ),
    ends: "harmless",
    held: 3,
  },
  {
    name: "the makers of async, generator and async generator functions",
    raw: closed(
      "(async () => {}).constructor('return 1')()",
      "(function* () {}).constructor('yield 1')().next()",
      "(async function* () {}).constructor('yield 1')()",
    ),
    ends: "harmless",
    held: 3,
  },
  {
    name: "the maker of functions from what an error brings",
    raw: "try { null.x } catch (e) { try { e.constructor.constructor('return process')(); lib.console.log('open') } catch { lib.console.log('held') } }",
    ends: "harmless",
    held: 1,
  },
  {
    name: "the maker of functions from a stop of the run",
    raw: "try { host.record() } catch (e) { try { e.constructor.constructor('return process')(); lib.console.log('open') } catch { lib.console.log('held') } }",
    ends: /^record-time$/,
    held: 1,
  },
  {
    name: "the maker of functions from the console and the random numbers",
    raw: closed(
      "lib.console.log.constructor('return process')()",
      "lib.random.constructor('return process')()",
      "lib.Math.sin.constructor('return 1')()",
    ),
    ends: "harmless",
    held: 3,
  },
  {
    name: "import of a module, in code",
    raw: "import('node:fs').then(fs => fs)",
    ends: /^(program-error|program-failed)$/,
  },
  {
    name: "import of a module, with a comment in between",
    raw: "import/**/('node:fs')",
    ends: /^(program-error|program-failed)$/,
  },
  {
    name: "import spelt with an escape",
    raw: "im\\u0070ort('node:fs')",
    ends: /^(program-error|program-failed)$/,
  },
  { name: "import.meta", raw: "import.meta.url", ends: /^(program-error|program-failed)$/ },
  { name: "import in a cell", cell: "import('node:fs')", ends: refused },
  { name: "an import statement in a cell", cell: "import fs from 'node:fs'", ends: refused },
  { name: "require", cell: "require('fs')", ends: refused },
  { name: "eval in a cell", cell: "eval('1')", ends: refused },
  {
    name: "eval, direct and indirect",
    raw: closed("eval('1')", "(0, eval)('1')", "ev\\u0061l('1')"),
    ends: "harmless",
    held: 3,
  },
  {
    name: "globalThis, window, self, global, process",
    raw: closed(
      "globalThis",
      "window",
      "self",
      "global",
      "process",
      "require",
      "module",
      "exports",
      "__filename",
      "Deno",
      "Bun",
    ),
    ends: "harmless",
    held: 11,
  },
  {
    name: "this of a plain function",
    raw: closed("(function () { return this })()", "(() => this)()"),
    ends: "harmless",
    held: 2,
  },
  {
    name: "this at the top, outside the program's function",
    raw: "}), (this && this.process ? 0 : 0), (function () {",
    ends: /^unknown-name$/,
  },
  {
    name: "closing the program's function to stand outside",
    raw: "})\nlib = 1\n;(function () {",
    ends: /^(program-error|program-failed|unknown-name|constant-changed|not-a-function)$/,
  },
  {
    name: "arguments, callee and caller",
    raw: closed(
      "(function () { return arguments.callee })()",
      "(function f() { return f.caller })()",
      "(function () { return lib.vec3.caller })()",
    ),
    ends: "harmless",
    held: 3,
  },
  {
    name: "the clock",
    raw: closed(
      "Date",
      "new Date()",
      "Date.now()",
      "performance.now()",
      "setTimeout",
      "setInterval",
      "requestAnimationFrame",
      "Temporal",
    ),
    ends: "harmless",
    held: 8,
  },
  {
    name: "the network",
    raw: closed(
      "fetch",
      "XMLHttpRequest",
      "WebSocket",
      "EventSource",
      "WebTransport",
      "navigator",
      "importScripts",
      "RTCPeerConnection",
    ),
    ends: "harmless",
    held: 8,
  },
  {
    name: "shared memory, waiting and other threads",
    raw: closed(
      "SharedArrayBuffer",
      "Atomics",
      "Atomics.wait",
      "Worker",
      "MessageChannel",
      "BroadcastChannel",
      "postMessage",
    ),
    ends: "harmless",
    held: 7,
  },
  { name: "WebAssembly", raw: closed("WebAssembly", "WebAssembly.Module"), ends: "harmless", held: 2 },
  {
    name: "buffers outside the heap",
    raw: closed(
      "ArrayBuffer",
      "Float64Array",
      "Uint8Array",
      "DataView",
      "Buffer",
      "new ArrayBuffer(2 ** 33)",
    ),
    ends: "harmless",
    held: 6,
  },
  {
    name: "what looks into objects",
    raw: closed("Proxy", "Reflect", "WeakMap", "WeakRef", "FinalizationRegistry", "Function", "Promise"),
    ends: "harmless",
    held: 7,
  },
  {
    name: "another compartment or a lockdown of one's own",
    raw: closed(
      "Compartment",
      "lockdown",
      "harden",
      "assert",
      "new (Object.getPrototypeOf(function () {}).constructor)('return 1')",
    ),
    ends: "harmless",
    held: 5,
  },
  {
    name: "the stack of an error",
    raw: "const e = new Error('x'); lib.console.log(typeof e.stack === 'string' && e.stack.includes('runner') ? 'open' : 'held')",
    ends: "harmless",
    held: 1,
  },
  {
    name: "prepareStackTrace",
    raw: "try { Error.prepareStackTrace = (e, sites) => { lib.console.log('open ' + typeof sites); return sites } } catch {} try { null.x } catch (e) { e.stack } lib.console.log('held')",
    ends: "harmless",
    held: 1,
  },
  {
    name: "captureStackTrace for call sites",
    raw: "const o = {}; try { Error.prepareStackTrace = (_, s) => s; Error.captureStackTrace(o) } catch {} lib.console.log(Array.isArray(o.stack) ? 'open' : 'held')",
    ends: "harmless",
    held: 1,
  },
  {
    name: "a stack overflow within the host's own functions",
    raw: "let found = 0; const dig = () => { try { dig() } catch (e) { try { host.record(0, { a: 1 }) } catch (inner) { try { inner.constructor.constructor('return process')(); found++ } catch {} } throw e } }; try { dig() } catch {} lib.console.log(found ? 'open' : 'held')",
    ends: "harmless",
    held: 1,
  },
  {
    name: "Symbol.species to see inner lists",
    raw: "class Mine extends Array { static get [Symbol.species]() { return function () { lib.console.log('open'); return [] } } } try { lib.console.log(new Mine(1, 2)) } catch {} lib.console.log('held')",
    ends: "harmless",
    held: 1,
  },
  {
    name: "Symbol.hasInstance on a class of the library",
    raw: "try { Object.defineProperty(lib.Vec3, Symbol.hasInstance, { value: () => true }); lib.console.log('open') } catch { lib.console.log('held') }",
    ends: "harmless",
    held: 1,
  },
  {
    name: "Symbol.unscopables on what holds the names",
    raw: "}), (() => { 'use strict'; this[Symbol.unscopables] = { vec3: true } })(), (function () {",
    ends: /^(constant-changed|program-error|program-failed|not-a-function)$/,
  },
  {
    name: "a debugger statement",
    cell: "debugger\nrecord(0, { a: 1 })",
    ends: /^(harmless|not-allowed-here)$/,
  },
  { name: "with", cell: "with (Math) { }", ends: refused },
]
