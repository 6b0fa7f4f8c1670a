import { mkdtempSync, rmSync } from "node:fs"
import { tmpdir } from "node:os"
import { join } from "node:path"
import { fileURLToPath } from "node:url"
import type { Compiled } from "../../cell/contract.ts"
import type { Runner, RunOutcome, RunRequest } from "../contract.ts"
import { lostOutcome } from "../outcome.ts"
import { createSeat, type Seat } from "../seat.ts"
import { noPlace, stoppedByHand } from "../words.ts"
import { buildRunnerBundle } from "./bundle.ts"
import { openProcess } from "./process.ts"

export interface NodeRunnerOptions {
  /** processes that run programs at the same time; 1 if not given */
  readonly workers?: number
  /** a new process for every run: slower by about a tenth of a second, and nothing can be left over */
  readonly fresh?: boolean
  /** the program with its trace, for those that were compiled without; where it is not given they fail without a place */
  readonly trace?: (compiled: Compiled) => Promise<Compiled | null>
  /** the built program of the child; found or built if not given */
  readonly bundle?: string
}

/**
 * A runner with child processes. With more than one worker, runs that are asked for together run together;
 * each caller gets the outcome of its own run, whatever the order in which they end.
 */
export function createNodeRunner(options: NodeRunnerOptions = {}): Runner {
  const workers = Math.max(1, Math.floor(options.workers ?? 1))
  const seats: Seat[] = []
  const idle: Seat[] = []
  const waiting: Waiting[] = []
  let closed = false

  let stops = 0
  const program: Bundle =
    options.bundle === undefined
      ? defaultBundle()
      : { file: Promise.resolve(options.bundle), release: () => {} }

  const ready = program.file.then(bundle => {
    if (closed) return
    for (let i = 0; i < workers; i++) {
      const seat = createSeat({
        open: events => openProcess(bundle, events),
        fresh: options.fresh ?? false,
        spares: 0,
        ...(options.trace ? { trace: options.trace } : {}),
      })
      seat.warm()
      seats.push(seat)
      idle.push(seat)
    }
    handOut()
  })

  // Said to whoever asks for a run; until then it concerns nobody.
  ready.catch(() => {})

  const handOut = (): void => {
    while (idle.length > 0 && waiting.length > 0) {
      const [seat, together] = takeWork(idle, waiting, seats)
      const outcomes = seat.runAll(together.map(({ request }) => request))
      for (const [i, outcome] of outcomes.entries()) void outcome.then(together[i]!.resolve)
      void Promise.all(outcomes).then(() => {
        idle.push(seat)
        handOut()
      })
    }
  }

  const dropWaiting = (): void => {
    for (const { resolve } of waiting.splice(0)) resolve(lostOutcome(stoppedByHand, 0))
  }

  return {
    async run(request) {
      const asked = stops
      try {
        await ready
      } catch {
        return lostOutcome(noPlace, 0)
      }
      if (closed || asked !== stops) return lostOutcome(stoppedByHand, 0)
      return new Promise(resolve => {
        waiting.push({ request, resolve })
        handOut()
      })
    },
    stop() {
      stops++
      dropWaiting()
      for (const seat of seats) seat.stop()
    },
    async close() {
      if (closed) return
      closed = true
      dropWaiting()
      await ready.catch(() => {})
      for (const seat of seats) seat.close()
      program.release()
    },
  }
}

interface Waiting {
  readonly request: RunRequest
  readonly resolve: (outcome: RunOutcome) => void
}

/** Runs that one seat makes before it is asked whether there is something better to do. */
const mostTogether = 8

/**
 * An idle seat and runs of one program for it, taken out of both: of a program that the seat has already, else of the
 * first in line that no other seat has at work, else of the first. Idle seats share what waits of it.
 */
function takeWork(idle: Seat[], waiting: Waiting[], seats: readonly Seat[]): [Seat, Waiting[]] {
  const seat = idle.find(one => waiting.some(({ request }) => one.holds(request.compiled))) ?? idle.at(-1)!
  const first =
    waiting.find(({ request }) => seat.holds(request.compiled)) ??
    waiting.find(({ request }) => !seats.some(other => other.holds(request.compiled))) ??
    waiting[0]!
  const { compiled } = first.request
  const alike = waiting.filter(({ request }) => request.compiled === compiled)
  const share = Math.min(mostTogether, Math.ceil(alike.length / idle.length))
  const taken = alike.slice(0, share)
  for (const one of taken) waiting.splice(waiting.indexOf(one), 1)
  idle.splice(idle.indexOf(seat), 1)
  return [seat, taken]
}

/** The child built from source for the runners of this process that are open now. */
let built: { readonly directory: string; readonly file: Promise<string>; users: number } | undefined

interface Bundle {
  readonly file: Promise<string>
  release(): void
}

/** Beside the built commands lies the built child; run from source, it is built once for all open runners. */
function defaultBundle(): Bundle {
  if (!import.meta.url.endsWith(".ts"))
    return {
      file: Promise.resolve(fileURLToPath(new URL("./runner.js", import.meta.url))),
      release: () => {},
    }
  if (built === undefined) {
    const directory = mkdtempSync(join(tmpdir(), "deltasheet-runner-"))
    built = { directory, file: buildRunnerBundle(directory), users: 0 }
  }
  const own = built
  own.users++
  return {
    file: own.file,
    release() {
      if (--own.users > 0) return
      if (built === own) built = undefined
      rmSync(own.directory, { recursive: true, force: true })
    },
  }
}
