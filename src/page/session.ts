import { batch, computed, effect, type ReadonlySignal, signal } from "@preact/signals"
import type { Compiled, CompileResult, Program } from "../cell/contract.ts"
import type { Problem } from "../cell/problem.ts"
import type { Judgement, Reference } from "../judge/contract.ts"
import type { Edition } from "../judge/edition.ts"
import { judgeSeed } from "../judge/tools.ts"
import type { Recording, Runner, RunOutcome } from "../run/contract.ts"
import type { Clock } from "./clock.ts"
import { pause } from "./clock.ts"
import { firstOfEachLine, notJudged } from "./findings.ts"
import type { Keeper } from "./keep/keeper.ts"
import type { Kinds } from "./kinds.ts"
import { type Looking, openLooking, type ShownRun } from "./lines/looking.ts"
import { oneAtATime } from "./one-at-a-time.ts"
import { openStepping, type StepStudying } from "./stepping.ts"
import type { RunState } from "./words.ts"

/** From the last keystroke to the run, ms: long enough to join the strokes of a word, short enough to feel at once. */
export const runAfter = 40
/** From the last keystroke to saying that something is wrong, ms: nobody wants to hear it in mid-word. */
export const complainAfter = 800
/** From the last run to the judgement, ms. */
export const judgeAfter = 350
/** Runs closer together than this belong to one change: the ghost stays what was before it. */
const sameChange = 1500
/** A run shorter than this is not announced as running, ms. */
const announceAfter = 120

/** What the session needs from below, so that it can be tested without a browser. */
export interface Workshop {
  /** compiles the worksheet's program with these texts in its blanks; loads the compiler at first use */
  compile(texts: Readonly<Record<string, string>>): Promise<CompileResult>
  /** where units do not fit in what the student wrote */
  units(texts: Readonly<Record<string, string>>): Promise<readonly Problem[]>
  /** the check of kinds, and what it knows of names */
  readonly kinds: Kinds
  /** whether the compiler is there, so that the state can say that it is coming */
  readonly compilerReady: () => boolean
  /** begins to fetch the compiler; called once the first motion is there, so that neither waits for the other */
  warmUp(): void
  readonly runner: Runner
  /** for second looks at a run: values of its lines, and what a shorter time step changes; made when first needed */
  readonly second: () => Runner
  /** units of what the lines of a program set, by offset */
  lineUnits(program: Program): Promise<Readonly<Record<number, string>>>
  readonly reference: Reference | null
  /** runs at shorter time steps, in a place of its own so that it never delays a motion; null if overtaken */
  judge(request: JudgeRequest): Promise<Judgement | null>
  close(): void
}

export interface JudgeRequest {
  readonly compiled: Compiled
  /** the run at the sheet's own values, if it has been made already */
  readonly outcome: RunOutcome | null
  readonly overtaken: () => boolean
}

/** A judgement and whether it still speaks of the text on the page. */
export interface Standing {
  readonly judgement: Judgement
  readonly current: boolean
}

export interface Session {
  readonly edition: Edition
  readonly keeper: Keeper
  readonly state: ReadonlySignal<RunState>
  readonly running: ReadonlySignal<boolean>
  readonly recordings: ReadonlySignal<readonly Recording[]>
  readonly ghost: ReadonlySignal<readonly Recording[] | null>
  readonly output: ReadonlySignal<readonly string[]>
  /** of the program on the page; shown beside the line it happened in */
  readonly problems: ReadonlySignal<readonly Problem[]>
  /** where kinds of value do not fit, in a text that can be read */
  readonly misfits: ReadonlySignal<readonly Problem[]>
  /** the problems, and where kinds and units do not fit: evidence beside the verdict, not a reason to stop */
  readonly findings: ReadonlySignal<readonly Problem[]>
  readonly kinds: Kinds
  readonly standing: ReadonlySignal<Standing | null>
  readonly reference: Reference | null
  readonly parameters: ReadonlySignal<Readonly<Record<string, number>>>
  /** the run whose motion is shown; null before the first */
  readonly shown: ReadonlySignal<ShownRun | null>
  /** values beside the lines */
  readonly looking: Looking
  readonly stepping: StepStudying
  /** whether a parameter differs from the sheet's value */
  readonly varied: ReadonlySignal<boolean>
  /** the texts of blanks that were just typed */
  write(texts: Readonly<Record<string, string>>): void
  answer(question: string, text: string): void
  setParameter(name: string, value: number): void
  resetParameters(): void
  /** compiles and runs now */
  run(): void
  stop(): void
  close(): void
}

const ownValues = (edition: Edition): Record<string, number> =>
  Object.fromEntries(edition.sheet.parameters.map(({ name, value }) => [name, value]))

/** Instants recorded; a program that records nothing is counted by the turns of its loops. */
function stepsOf(outcome: RunOutcome): number {
  const rows = outcome.recordings.reduce((sum, recording) => sum + recording.rows, 0)
  return rows > 0 ? rows : outcome.turns
}

/** Points that only the marker can give. */
export function pointsOfQuestions(edition: Edition): number {
  return edition.sheet.questions.reduce((sum, question) => sum + question.points, 0)
}

/** The texts of all blanks: what was typed, else the starter. */
export function textsOf(edition: Edition, typed: Readonly<Record<string, string>>): Record<string, string> {
  const texts: Record<string, string> = {}
  for (const cell of edition.sheet.cells)
    for (const segment of cell.segments)
      if (segment.kind === "blank") texts[segment.name] = typed[segment.name] ?? segment.starter
  return texts
}

/**
 * The life of an open worksheet: what is typed is kept, compiled, run and judged, in that order and each after
 * its own short pause; a newer text overtakes whatever is under way.
 */
export function openSession(edition: Edition, workshop: Workshop, keeper: Keeper, clock: Clock): Session {
  const own = ownValues(edition)
  const starter = JSON.stringify(textsOf(edition, {}))
  const state = signal<RunState>({ kind: "opening" })
  const running = signal(false)
  const recordings = signal<readonly Recording[]>([])
  const ghost = signal<readonly Recording[] | null>(null)
  const output = signal<readonly string[]>([])
  const problems = signal<readonly Problem[]>([])
  const remarks = signal<readonly Problem[]>([])
  const misfits = signal<readonly Problem[]>([])
  const findings = computed(() => firstOfEachLine(problems.value, misfits.value, remarks.value))
  const standing = signal<Standing | null>(null)
  const parameters = signal<Readonly<Record<string, number>>>(own)
  const varied = computed(() => Object.entries(own).some(([name, value]) => parameters.value[name] !== value))

  const shown = signal<ShownRun | null>(null)
  const looking = openLooking({
    shown,
    runner: workshop.second,
    units: ({ compiled }) => workshop.lineUnits(compiled.program),
    clock,
  })

  const stepping = openStepping({ shown, timeStep: edition.sheet.timeStep, runner: workshop.second })

  let closed = false
  /** counts changes of text or parameters; work begun for an older count is stale */
  let change = 0
  let lastTyped = Number.NEGATIVE_INFINITY
  let lastShown = Number.NEGATIVE_INFINITY
  let compiledFor: { key: string; compiled: Compiled } | null = { key: starter, compiled: edition.starter }
  let dropComplaint: (() => void) | null = null
  let dropMisfits: (() => void) | null = null

  const textKey = (): string => JSON.stringify(textsOf(edition, keeper.answers.peek()))

  const compile = async (key: string): Promise<CompileResult> => {
    if (compiledFor?.key === key) return { ok: true, compiled: compiledFor.compiled }
    if (!workshop.compilerReady()) state.value = { kind: "compiler" }
    const result = await workshop.compile(textsOf(edition, keeper.answers.peek()))
    if (result.ok) compiledFor = { key, compiled: result.compiled }
    return result
  }

  /** Says what is wrong, but not while somebody is in the middle of typing it. */
  const complain = (mine: number, show: () => void): void => {
    dropComplaint?.()
    const wait = Math.max(0, lastTyped + complainAfter - clock.now())
    const say = (): void => {
      if (mine === change && !closed) batch(show)
    }
    if (wait === 0) say()
    else dropComplaint = clock.after(wait, say)
  }

  /** Beside the run, which waits for nothing: what the checker finds is said once the typing rests. */
  const lookAtKinds = (mine: number): void => {
    void workshop.kinds.problems(textsOf(edition, keeper.answers.peek())).then(found => {
      if (mine !== change || closed) return
      const say = (): void => {
        if (mine === change && !closed) misfits.value = found
      }
      dropMisfits = clock.after(Math.max(0, lastTyped + complainAfter - clock.now()), say)
    })
  }

  const show = (outcome: RunOutcome, compiled: Compiled, values: Readonly<Record<string, number>>): void => {
    shown.value = { compiled, parameters: values, seed: judgeSeed, recordings: outcome.recordings }
    const now = clock.now()
    if (now - lastShown > sameChange && recordings.value.length > 0) ghost.value = recordings.value
    lastShown = now
    recordings.value = outcome.recordings
    output.value = outcome.output
  }

  const once = async (): Promise<void> => {
    const mine = change
    const key = textKey()
    const stale = standing.peek()
    if (stale?.current && key !== judgedKey) standing.value = { ...stale, current: false }
    const result = await compile(key)
    if (closed) return
    if (!result.ok) {
      if (mine === change)
        complain(mine, () => {
          problems.value = result.problems
          state.value = { kind: "not-compiled" }
        })
      return
    }
    if (key !== starter) lookAtKinds(mine)
    const announce = clock.after(announceAfter, () => {
      running.value = true
      state.value = { kind: "running" }
    })
    const values = parameters.peek()
    const outcome = await workshop.runner.run({
      compiled: result.compiled,
      parameters: values,
      seed: judgeSeed,
    })
    announce()
    if (closed) return
    running.value = false
    if (outcome.problem) {
      if (mine !== change) return
      const problem = outcome.problem
      // a program that stopped before it recorded anything leaves the last motion to look at
      const nothing = outcome.recordings.every(recording => recording.rows === 0)
      complain(mine, () => {
        if (nothing) output.value = outcome.output
        else show(outcome, result.compiled, values)
        const empty = problem.code === "empty-blank"
        problems.value = empty ? [] : [problem]
        if (empty) state.value = { kind: "waits", blank: problem.where?.blank ?? "" }
        else state.value = { kind: "stopped", problem, older: nothing && recordings.value.length > 0 }
        judging.ask()
      })
    } else {
      dropComplaint?.()
      batch(() => {
        show(outcome, result.compiled, values)
        problems.value = []
        state.value = { kind: "ran", steps: stepsOf(outcome), milliseconds: outcome.milliseconds }
      })
      judging.ask()
    }
    if (mine === change && !varied.peek()) ownOutcome = { key, outcome }
  }

  const go = oneAtATime(once, () => closed)

  let judgedKey = ""
  let ownOutcome: { key: string; outcome: RunOutcome } | null = null
  const judging = pause(clock, judgeAfter, () => void judge())
  const judge = async (): Promise<void> => {
    const mine = change
    const key = textKey()
    if (closed || compiledFor?.key !== key) return
    if (key !== starter)
      void workshop.units(textsOf(edition, keeper.answers.peek())).then(
        found => {
          if (!closed && textKey() === key) remarks.value = found
        },
        // without the compiler's worker the verdict stands alone
        () => {},
      )
    const judgement = await workshop
      .judge({
        compiled: compiledFor.compiled,
        outcome: ownOutcome?.key === key ? ownOutcome.outcome : null,
        overtaken: () => closed || textKey() !== key,
      })
      .catch((cause: unknown) => {
        problems.value = [notJudged(cause)]
        return null
      })
    if (!judgement || closed || textKey() !== key) return
    judgedKey = key
    standing.value = { judgement, current: true }
    keeper.writePoints(judgement.points, judgement.outOf + pointsOfQuestions(edition))
    if (mine !== change) judging.ask()
  }

  const typing = pause(clock, runAfter, () => void go())

  const touched = (): void => {
    change++
    remarks.value = []
    misfits.value = []
    dropMisfits?.()
    dropComplaint?.()
    if (running.peek()) workshop.runner.stop()
  }

  // text that comes from elsewhere (a file, another window, an undo of both) runs like text that was typed
  let seen = textKey()
  const dispose = effect(() => {
    keeper.answers.value
    const key = textKey()
    if (key === seen) return
    seen = key
    touched()
    typing.ask()
  })

  const session: Session = {
    edition,
    keeper,
    state,
    running,
    recordings,
    ghost,
    output,
    problems,
    findings,
    misfits,
    kinds: workshop.kinds,
    standing,
    reference: workshop.reference,
    parameters,
    shown,
    looking,
    stepping,
    varied,
    write(texts) {
      lastTyped = clock.now()
      batch(() => {
        for (const [blank, text] of Object.entries(texts)) keeper.writeAnswer(blank, text)
      })
    },
    answer(question, text) {
      keeper.writeQuestion(question, text)
    },
    setParameter(name, value) {
      if (!(name in own) || parameters.peek()[name] === value) return
      change++
      parameters.value = { ...parameters.peek(), [name]: value }
      void go()
    },
    resetParameters() {
      change++
      parameters.value = own
      void go()
    },
    run() {
      lastTyped = Number.NEGATIVE_INFINITY
      typing.drop()
      touched()
      void go()
    },
    stop() {
      workshop.runner.stop()
    },
    close() {
      closed = true
      dispose()
      typing.drop()
      judging.drop()
      dropComplaint?.()
      dropMisfits?.()
      looking.close()
      stepping.close()
      keeper.flush()
      void workshop.runner.close()
      workshop.close()
    },
  }
  void go().then(() => workshop.warmUp())
  return session
}
