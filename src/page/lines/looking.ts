import { batch, computed, effect, type ReadonlySignal, type Signal, signal } from "@preact/signals"
import type { Compiled } from "../../cell/contract.ts"
import type { LinesWish, LineValues, Recording, Runner } from "../../run/contract.ts"
import { rowsAtOnce } from "../../run/lines/contract.ts"
import type { BenchHand } from "../bench/contract.ts"
import type { Clock } from "../clock.ts"
import { oneAtATime } from "../one-at-a-time.ts"
import type { Found } from "./beside.ts"
import { nameOfKey, settingLines } from "./names.ts"
import { sitesOf, type Variable, variableOf } from "./variable.ts"

/** The run whose motion is shown, as it has to be asked for again. */
export interface ShownRun {
  readonly compiled: Compiled
  readonly parameters: Readonly<Record<string, number>>
  readonly seed: number
  readonly recordings: readonly Recording[]
}

/** Values beside the lines: whether they are wanted, and what was found for the run and row shown. */
export interface Looking {
  readonly wanted: Signal<boolean>
  /** what the bench shows, and how to move it; null while it shows no motion */
  readonly hand: Signal<BenchHand | null>
  /** what was found last; null before, or when not wanted */
  readonly found: ReadonlySignal<Found | null>
  /** whether it belongs to the run and row shown */
  readonly current: ReadonlySignal<boolean>
  /** what was sent to plots, with the values of the run shown as soon as they are found */
  readonly variables: ReadonlySignal<readonly SentVariable[]>
  /** sends a variable to a plot, or takes it away again */
  send(key: string): void
  drop(key: string): void
  close(): void
}

export interface SentVariable {
  readonly key: string
  readonly name: string
  /** null until it is found for the run shown, and where the program has it no more */
  readonly variable: Variable | null
  /** whether it was looked for in the run shown */
  readonly sought: boolean
}

export interface LookingNeeds {
  readonly shown: ReadonlySignal<ShownRun | null>
  /** in a place of its own, so that it never delays a motion */
  readonly runner: () => Runner
  units(run: ShownRun): Promise<Readonly<Record<number, string>>>
  readonly clock: Clock
}

/** From the last run to the second, slower one, ms: the motion and its judgement go first. */
export const lookAfter = 500

export function openLooking(needs: LookingNeeds): Looking {
  const wanted = signal(false)
  const hand = signal<BenchHand | null>(null)
  const found = signal<Found | null>(null)
  const foundRun = signal<ShownRun | null>(null)
  const current = computed(() => {
    const at = hand.value
    const values = found.value?.values
    if (!at || !values || foundRun.value !== needs.shown.value) return false
    const row = at.row.value
    return values.cell === at.cell && row >= values.from && row < values.from + values.rows
  })
  const sent = signal<readonly string[]>([])
  const sought = signal<{ readonly run: ShownRun; readonly variables: readonly Variable[] } | null>(null)
  const variables = computed(() => {
    const now = sought.value?.run === needs.shown.value ? sought.value : null
    return sent.value.map((key): SentVariable => {
      const variable = now?.variables.find(one => one.key === key) ?? null
      const done = now !== null && sentFor?.run === now.run && sentFor.keys.includes(key)
      return { key, name: variable?.name ?? nameOfKey(key), variable, sought: done }
    })
  })
  let closed = false
  let drop: (() => void) | null = null
  /** what `variables` belong to */
  let sentFor: { run: ShownRun; keys: readonly string[] } | null = null

  const rowsOf = (run: ShownRun, cell: string): number =>
    run.recordings.find(recording => recording.cell === cell)?.rows ?? 0

  /** Rows to look at around the one shown: all of them where they fit. */
  const windowOf = (run: ShownRun, { cell, row }: BenchHand): LinesWish => {
    const rows = rowsOf(run, cell)
    const room = rowsAtOnce(settingLines(run.compiled).length)
    if (rows <= room) return { cell, from: 0, to: rows }
    const from = Math.max(0, Math.min(rows - room, row.peek() - (room >> 1)))
    return { cell, from, to: from + room }
  }

  const ask = async (run: ShownRun, lines: LinesWish): Promise<LineValues | null> => {
    const { compiled, parameters, seed } = run
    const outcome = await needs.runner().run({ compiled, parameters, seed, lines })
    return outcome.lines ?? null
  }

  const look = async (): Promise<void> => {
    const run = needs.shown.peek()
    const at = hand.peek()
    if (!run || !at || rowsOf(run, at.cell) === 0) return
    const overtaken = (): boolean => closed || needs.shown.peek() !== run || hand.peek()?.cell !== at.cell
    const units = await needs.units(run).catch(() => ({}))
    if (overtaken()) return
    if (wanted.peek() && !current.peek()) {
      const values = await ask(run, windowOf(run, at))
      if (overtaken()) return
      if (values && values.rows > 0)
        batch(() => {
          foundRun.value = run
          found.value = { compiled: run.compiled, values, units }
        })
    }
    const keys = sent.peek()
    if (sentFor?.run === run && sentFor.keys === keys) return
    sentFor = { run, keys }
    const whole = found.peek()
    const rows = rowsOf(run, at.cell)
    const complete =
      whole &&
      foundRun.peek() === run &&
      whole.values.cell === at.cell &&
      whole.values.from === 0 &&
      whole.values.rows >= rows
    const next: Variable[] = []
    for (const key of keys) {
      if (complete) {
        const variable = variableOf(whole, key)
        if (variable) next.push(variable)
        continue
      }
      const only = sitesOf(run, key)
      if (only.length === 0) continue
      const values = await ask(run, { cell: at.cell, from: 0, to: rows, only })
      if (overtaken()) return
      const variable = values && variableOf({ compiled: run.compiled, values, units }, key)
      if (variable) next.push(variable)
    }
    sought.value = { run, variables: next }
  }

  // without a place to run in there are no values, and everything else goes on
  const go = oneAtATime(
    () => look().catch(() => {}),
    () => closed,
  )

  const soon = (ms: number): void => {
    drop?.()
    drop = needs.clock.after(ms, () => {
      drop = null
      void go()
    })
  }

  const stops = [
    effect(() => {
      const run = needs.shown.value
      const cell = hand.value?.cell
      if (!run || cell === undefined) return
      if ((wanted.value && !current.value) || sent.value.length > 0)
        soon(foundRun.peek() === run ? lookAfter / 2 : lookAfter)
    }),
  ]

  return {
    wanted,
    hand,
    found,
    current,
    variables,
    send(key) {
      if (!sent.peek().includes(key)) sent.value = [...sent.peek(), key]
    },
    drop(key) {
      sent.value = sent.peek().filter(other => other !== key)
    },
    close() {
      closed = true
      drop?.()
      for (const stop of stops) stop()
    },
  }
}
