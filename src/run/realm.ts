import type { Compiled } from "../cell/contract.ts"
import type { Host } from "../cell/host.ts"
import { OperatorError } from "../cell/operator-error.ts"
import * as operators from "../cell/operators.ts"
import type { Problem } from "../cell/problem.ts"
import { createTracer } from "../cell/trouble/tracer.ts"
import * as physics from "../physics/index.ts"
import { math } from "../physics/math.ts"
import { createCanary } from "./canary.ts"
import type { RunOutcome, RunRequest } from "./contract.ts"
import { explain } from "./explain.ts"
import { inThousands, limitsFrom } from "./limits.ts"
import { type Collector, createCollector } from "./lines/collector.ts"
import { storeNumber } from "./number-view.ts"
import { createOutput, type Output } from "./output.ts"
import { endedByDepth, isOverflow, tooDeep } from "./overflow.ts"
import { safeGlobalNames } from "./powers.ts"
import { seededRandom } from "./random.ts"
import { createRecorder, type Recorder } from "./record.ts"
import { RunStop, stop } from "./stop.ts"
import { presentable } from "./text.ts"

/** What a run ended with: the outcome, and what is needed to look for the place of a failure. */
export interface RunEnd {
  readonly outcome: RunOutcome
  /** present when the program failed and a second run with the trace can tell where */
  readonly failure?: { readonly cause: unknown }
}

export interface Realm {
  /** runs the program to its end, the promise jobs it leaves included; nothing of it runs afterwards */
  run(request: RunRequest): Promise<RunEnd>
  /** the same run once more with the trace program, to say where the failure is */
  trace(request: RunRequest, end: RunEnd): Promise<Problem>
  /** whether the realm is as it was before the first run */
  sound(): boolean
}

type ProgramFunction = (lib: object, parameters: object, host: Host) => void

/**
 * The place of programs within a locked realm (lockdown.ts must have run). The library is evaluated once and
 * hardened with its prototypes and classes, so no program can change what the next one finds; each program gets a
 * compartment of its own with the pure part of the language, and nothing else. When one and the same program is run
 * several times in turn it is called again: nothing that it can reach outlives a call, since all outside its function is frozen.
 *
 * @param clock milliseconds, for the outcome only; programs never see it
 * @param turnOfTheHost resolves when all promise jobs have run
 */
export function createRealm(clock: () => number, turnOfTheHost: () => Promise<void>): Realm {
  const shared: Record<string, unknown> = { ...physics, Math: math }
  const globals: Record<string, unknown> = { Math: math }
  // The pure names as a compartment has them: its Error, RegExp and Symbol are the tamed ones.
  const model = new Compartment().globalThis as Record<string, unknown>
  for (const name of safeGlobalNames) {
    globals[name] = model[name]
    shared[name] = model[name]
  }
  harden([shared, globals, { ...operators }, OperatorError, RunStop, storeNumber])
  const canary = createCanary(shared)

  /** A function of the program in a compartment that holds the pure names only, all constant (and therefore quick). */
  const load = (js: string): ProgramFunction => {
    const compartment = new Compartment()
    const own = compartment.globalThis as Record<string, unknown>
    for (const name of Reflect.ownKeys(own)) {
      const property = Object.getOwnPropertyDescriptor(own, name)
      if (property?.configurable) delete own[name as string]
    }
    for (const name of Object.keys(globals)) if (!Object.hasOwn(own, name)) own[name] = globals[name]
    Object.setPrototypeOf(own, unknownNames)
    Object.freeze(own)
    return compartment.evaluate(
      `(function (lib, parameters, host) {\n${presentable(js)}\n})`,
    ) as ProgramFunction
  }

  /** The program of the run before, if it came to its end: to load and warm it up costs more than a run. */
  let ready: { readonly compiled: Compiled; readonly act: ProgramFunction } | undefined
  const loaded = (compiled: Compiled, js: string): ProgramFunction => {
    if (ready?.compiled === compiled && js === compiled.js) return ready.act
    ready = undefined
    const act = load(js)
    if (js === compiled.js) ready = { compiled, act }
    return act
  }

  const execute = async (request: RunRequest, js: string, tracing: boolean) => {
    const { compiled } = request
    const limits = limitsFrom(request.limits)
    const vectorPrototype = physics.Vec3.prototype
    const recorder = createRecorder(
      compiled.program.cells.map(cell => cell.name),
      limits.recorded,
      vectorPrototype,
    )
    const output = createOutput(limits.output, vectorPrototype)
    const collector = request.lines && createCollector(compiled, request.lines)
    const control = createControl(request, limits.turns, recorder, output, collector)
    const random = seededRandom(request.seed)
    const lib = Object.freeze({
      ...shared,
      random: () => random(),
      console: consoleOf(output.print),
    })
    const started = clock()
    let cause: { readonly thrown: unknown } | undefined
    try {
      loaded(compiled, js)(lib, parametersOf(request), control.host)
    } catch (thrown) {
      cause = { thrown }
    }
    control.end()
    await turnOfTheHost()
    const milliseconds = clock() - started
    const stopped = control.stopped()
    if (stopped !== undefined) cause = { thrown: stopped }
    if (cause !== undefined && endedByDepth(cause.thrown)) control.forget()
    if (cause !== undefined) ready = undefined
    return { recorder, output, control, collector, cause, milliseconds, tracing }
  }

  return {
    async run(request) {
      const { compiled, lines } = request
      const { recorder, output, control, collector, cause, milliseconds } = await execute(
        request,
        lines ? traceOf(compiled) : compiled.js,
        false,
      )
      const problem = cause === undefined ? null : explain(cause.thrown, request.compiled, undefined)
      // To look at what was thrown can run code of the program's, and that can leave jobs again.
      if (cause !== undefined) await turnOfTheHost()
      const outcome: RunOutcome = {
        recordings: recorder.recordings(request.excerpt),
        problem,
        output: output.lines(),
        turns: control.turns(),
        timeStepFound: control.timeStepFound(),
        milliseconds,
        ...(collector ? { lines: collector.values() } : {}),
      }
      // whoever looks at lines has the failure from the run before
      if (collector) return { outcome }
      const placed =
        cause === undefined || (cause.thrown instanceof RunStop && cause.thrown.site !== undefined)
      return placed ? { outcome } : { outcome, failure: { cause: cause.thrown } }
    },
    async trace(request, end) {
      const { control, cause } = await execute(request, traceOf(request.compiled), true)
      // A program that fails otherwise with the trace than without is explained without a place.
      if (cause === undefined || end.failure === undefined) return end.outcome.problem!
      const problem = explain(end.failure.cause, request.compiled, control.tracer.lastSite(), {
        notFinite: control.tracer.notFinite(),
        recordings: end.outcome.recordings,
      })
      await turnOfTheHost()
      return problem
    },
    sound: () => canary.unchanged(),
  }
}

function traceOf({ traceJs }: Compiled): string {
  if (traceJs === null) throw new TypeError("The program came without its trace.")
  return traceJs
}

/** All of a console that makes sense here; each prints a line. */
function consoleOf(print: (...values: unknown[]) => void): object {
  const log = Object.freeze((...values: unknown[]) => print(...values))
  return Object.freeze({ log, info: log, warn: log, error: log, debug: log })
}

/**
 * Stands behind a compartment's names. The hardened realm by itself gives `undefined` for a name that nobody
 * made; a misspelt name has to be an error, as the language says.
 */
const unknownNames: object = new Proxy(Object.freeze(Object.create(null) as object), {
  has: (_, name) => typeof name === "string",
  get(_, name) {
    if (typeof name === "string") throw new ReferenceError(`${name} is not defined`)
    return undefined
  },
  set(_, name) {
    throw new ReferenceError(`${String(name)} is not defined`)
  },
})

const parametersOf = (request: RunRequest): object =>
  Object.freeze(Object.assign(Object.create(null), request.parameters))

/** The host object of one run, and what it found out. After the end every call of the program's is too late. */
function createControl(
  request: RunRequest,
  maxTurns: number,
  { record, enterCell, forget, rows, seal, intact, damaged }: Recorder,
  output: Output,
  collector: Collector | undefined,
) {
  const { compiled } = request
  const stepFactor = request.stepFactor ?? 1
  let first: RunStop | undefined
  let ended = false
  let turns = 0
  let timeStepFound = false
  let cell = ""
  const tracer = createTracer(compiled)

  const halt = (reason: RunStop): RunStop => {
    first ??= reason
    seal()
    return first
  }
  /** A question that is still open when the program goes on found no room on the stack: what it asked about was caught. */
  const open = (asked: number | undefined): boolean => asked !== undefined && asked > 0
  /** Calls of the program that can stop it: none after the end, none after a stop, and a stop is remembered. */
  const guarded = (act: () => void): void => {
    if (first !== undefined) throw first
    if (ended) throw halt(tooLate())
    try {
      act()
    } catch (thrown) {
      throw thrown instanceof RunStop ? halt(thrown) : thrown
    }
  }

  const host: Host = Object.freeze({
    ...operators,
    maxTurns,
    overrun(site: number, asked?: number): never {
      turns = maxTurns
      if (open(asked)) throw first ?? halt(tooDeep(site))
      // Programs can come here again and again while they unwind; the words are made once.
      throw first ?? halt(overrun(compiled, maxTurns, site))
    },
    done(count: number, asked?: number) {
      if (open(asked) && first === undefined) halt(tooDeep())
      if (typeof count === "number" && count >= 0 && count <= maxTurns + 1) turns = Math.floor(count)
    },
    enterCell: (index: number, asked?: number) =>
      guarded(() => {
        if (open(asked)) throw tooDeep()
        output.enterCell()
        collector?.leave()
        enterCell(index)
        cell = compiled.program.cells[index]?.name ?? ""
      }),
    caught(thrown: unknown, site: number, asked: number) {
      if (first !== undefined) throw first
      if (asked > 1 || isOverflow(thrown)) throw halt(tooDeep(site))
    },
    timeStep(value: number) {
      timeStepFound = true
      return typeof value === "number" ? value * stepFactor : value
    },
    emptyBlank(site: number): never {
      throw halt(emptyBlank(compiled, site))
    },
    at: collector?.at ?? tracer.at,
    rows,
    record(time: unknown, quantities: unknown) {
      if (first !== undefined) throw first
      if (ended) throw halt(tooLate())
      try {
        record(time, quantities)
        collector?.row(cell)
      } catch (thrown) {
        throw thrown instanceof RunStop ? halt(thrown) : thrown
      }
    },
  })

  return {
    host,
    end: () => {
      ended = true
      seal()
      if (!intact()) halt(damaged())
    },
    stopped: () => first,
    /** What the cell under way did before the stack was full is as much chance as the depth itself. */
    forget: () => {
      forget()
      output.forget()
      turns = 0
    },
    turns: () => turns,
    timeStepFound: () => timeStepFound,
    tracer,
  }
}

/** The trace counts the same turns, so both programs go over the limit at the same place. */
function overrun(compiled: Compiled, maxTurns: number, site: number): RunStop {
  const what = compiled.sites[site]?.what
  const turns = `${inThousands(maxTurns)} turns of its loops and functions`
  return what === "function"
    ? stop(
        "endless-loop",
        `The program did not end within ${turns}; it was calling this function again and again.`,
        "Check what ends the calls: a function that calls itself needs a case in which it does not.",
        site,
      )
    : stop(
        "endless-loop",
        `The program did not end within ${turns}; it was in this loop.`,
        "Check the condition of the loop: something in it must change at every turn so that it becomes false.",
        site,
      )
}

function emptyBlank(compiled: Compiled, site: number): RunStop {
  const from = compiled.sites[site]?.from
  const blank = compiled.program.blanks.find(b => from !== undefined && b.from <= from && from <= b.to)
  return stop(
    "empty-blank",
    blank === undefined ? "A blank is still empty." : `The blank "${blank.name}" is still empty.`,
    "Write an expression there.",
    site,
  )
}

const tooLate = (): RunStop =>
  stop(
    "late-call",
    "The program went on after its last line had run, through async or a promise.",
    "Write the motion as a plain loop; a cell runs from its first line to its last and then is done.",
  )
