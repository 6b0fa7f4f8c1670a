import type { Hostile } from "./program.ts"

export const forging: readonly Hostile[] = [
  {
    name: "a result written instead of a motion",
    raw: "return { recordings: [{ cell: 'drop', rows: 1 }], problem: null, points: 100 }",
    ends: "harmless",
  },
  {
    name: "messages to the parent process",
    raw: "for (const name of ['process', 'postMessage', 'parentPort', 'send']) { try { (0, [name][0]); lib.console.log(typeof lib[name] === 'undefined' && typeof host[name] === 'undefined' ? 'held' : 'open') } catch { lib.console.log('held') } }",
    ends: "harmless",
    held: 4,
  },
  {
    name: "ending the process",
    raw: "try { process.exit(0) } catch { lib.console.log('held') } try { process.kill(process.ppid) } catch { lib.console.log('held') }",
    ends: "harmless",
    held: 2,
  },
  { name: "ending the process, in a cell", cell: "process.exit(0)", ends: /^unknown-name$/ },
  {
    name: "telling a smaller number of turns",
    raw: "host.done(-5); host.done(NaN); host.done('0'); host.done({}); host.done(1e9)",
    ends: "harmless",
  },
  {
    name: "a stop of one's own making",
    raw: "let Stop; try { host.record() } catch (e) { Stop = e.constructor } throw new Stop({ code: 'stopped', text: 'x', todo: 'y' })",
    ends: /^record-time$/,
  },
  {
    name: "an error dressed as one of ours",
    raw: "throw { problem: { code: 'forged', text: 'You have full points.', todo: '' }, code: 'forged' }",
    ends: /./,
  },
  {
    name: "an error whose words are not words",
    raw: "throw Object.assign(new Error('x'), { code: 'a-b', text: { toString() { for (;;) ; } }, todo: 3 })",
    ends: /^program-error$/,
  },
  {
    name: "a code with a path in it",
    raw: "throw Object.assign(new Error('x'), { code: '../../etc', text: 'a', todo: 'b' })",
    ends: /^program-error$/,
  },
  {
    name: "hidden draws told apart by the seed",
    raw: "for (const name of ['seed', 'stepFactor', 'draw', 'request', 'limits']) lib.console.log(name in lib || name in host || name in parameters ? 'open' : 'held')",
    ends: "harmless",
    held: 5,
  },
  {
    name: "the reference from what the program can see",
    raw: "const seen = new Set(); const look = (o, d) => { if (d > 4 || (typeof o !== 'object' && typeof o !== 'function') || o === null || seen.has(o)) return; seen.add(o); for (const k of Object.getOwnPropertyNames(o)) { if (k !== 'ReferenceError' && /reference|answer|secret|recording|chunk|store/i.test(k)) lib.console.log('open', k); let v; try { v = o[k] } catch {} look(v, d + 1) } look(Object.getPrototypeOf(o), d + 1) }; look(lib, 0); look(host, 0); look(parameters, 0); lib.console.log('held')",
    ends: "harmless",
    held: 1,
  },
  {
    name: "the budget used up just before the end",
    cell: "record(0, { a: 1 })\nlet i = 0\nwhile (i < 1e9) { i = i + 1 }\nrecord(1, { a: 2 })",
    ends: /^endless-loop$/,
  },
  {
    name: "records for a cell that never ran",
    raw: "host.enterCell(1); host.record(0, { a: 1 })",
    ends: /^program-damaged$/,
  },
  {
    name: "going back to an earlier cell",
    raw: "host.enterCell(0); host.enterCell(-1)",
    ends: /^program-damaged$/,
  },
  {
    name: "a cell number that is none",
    raw: "host.enterCell({ valueOf() { return 0 } })",
    ends: /^program-damaged$/,
  },
  {
    name: "records after the end",
    raw: "(async () => { await null; host.record(0, { a: 1 }) })()",
    ends: /^late-call$/,
  },
  {
    name: "records after the end, through then",
    raw: "host.record(0, { a: 1 }); (async () => {})().then(() => host.record(1, { a: 2 }))",
    ends: /^late-call$/,
  },
  {
    name: "the stop caught and hidden",
    raw: "try { host.overrun(0) } catch {} try { host.record(0, { a: 1 }) } catch {}",
    ends: /^endless-loop$/,
  },
  {
    name: "an empty blank claimed in any place",
    raw: "try { host.emptyBlank(99999) } catch {} host.done(3)",
    ends: /^empty-blank$/,
  },
  {
    name: "open rows moved on past their end",
    raw: "host.record(0, { a: 1 }); const r = host.rows('a:s'); r.next = 1e9",
    ends: /^program-damaged$/,
  },
  {
    name: "open rows at a place that is no number, answered by the program",
    raw: "host.record(0, { a: 1 }); const r = host.rows('a:s'); r.next = { valueOf() { for (;;) ; } }",
    ends: /^program-damaged$/,
  },
  {
    name: "open rows with a getter for what is read after the end",
    raw: "host.record(0, { a: 1 }); const r = host.rows('a:s'); try { Object.defineProperty(r, 'next', { get() { for (;;) ; } }); lib.console.log('open') } catch { lib.console.log('held') }",
    ends: "harmless",
    held: 1,
  },
  {
    name: "open rows of another array",
    raw: "host.record(0, { a: 1 }); const r = host.rows('a:s'); r.view = { setFloat64() {}, buffer: null }; r.last = 1e9; host.record(1, { a: 2 })",
    ends: /^program-damaged$/,
  },
  {
    name: "NaN and a time that runs back, written into open rows",
    raw: "host.record(5, { a: 1 }); const r = host.rows('a:s'); r.view.setFloat64(16, 4, true); r.view.setFloat64(24, NaN, true); r.next = 32",
    ends: /^run-lost$/,
  },
  {
    name: "a half row in open rows",
    raw: "host.record(0, { a: 1 }); const r = host.rows('a:s'); r.next = 24",
    ends: /^program-damaged$/,
  },
  {
    name: "something left on rows that all runs share",
    raw: "const r = host.rows('none'); try { r.view.left = 1; lib.console.log('open') } catch { lib.console.log('held') }",
    ends: "harmless",
    held: 1,
  },
  {
    name: "buffers by way of open rows",
    raw: "host.record(0, { a: 1 }); const Big = host.rows('a:s').view.buffer.constructor; const View = host.rows('a:s').view.constructor; const all = []; for (;;) { const b = new Big(8e6); const v = new View(b); for (let i = 0; i < 8e6; i += 512) v.setUint8(i, 1); all.push(b) }",
    ends: /^(memory-limit|run-lost|too-large|program-error)$/,
  },
  {
    name: "sites that do not exist",
    raw: "host.at(-1); host.at('x'); host.at({}); host.overrun(1e9)",
    ends: /^endless-loop$/,
  },
  {
    name: "a time step that is no number",
    raw: "const a = host.timeStep({ valueOf() { return 1 } }); host.record(0, { a })",
    ends: /^record-value$/,
  },
  {
    name: "operators on what answers differently",
    raw: "let n = 0; const o = { valueOf() { return n++ % 2 ? NaN : 1 } }; host.record(0, { a: host.add(o, host.add(o, 1)) })",
    ends: /^record-value$/,
  },
  {
    name: "text that looks forbidden, printed",
    cell: "console.log('import(x) eval(y) <!-- -->')\nlet x = 3\nwhile (x-->0) { record(3 - x, { x }) }",
    ends: "harmless",
  },
]
