import { computed, type ReadonlySignal, signal } from "@preact/signals"
import type { Problem } from "../../cell/problem.ts"
import type { StudentSheet } from "../../worksheet/contract.ts"
import type { Clock } from "../clock.ts"
import type { Device, Student } from "./device.ts"
import { freshWork, mergeWork, type PastText, readWork, textsOf, type Work } from "./work.ts"

/** Longest time that a keystroke waits before it is on the device, ms. Leaving the page does not wait at all. */
export const keepWithin = 250

/** Whether what is typed is on the device. */
export type Keeping =
  | { readonly kind: "untouched" }
  | { readonly kind: "waiting" }
  | { readonly kind: "kept"; readonly at: number }
  | { readonly kind: "failed"; readonly problem: Problem }

/** Texts by blank and by question. */
export interface Texts {
  readonly answers: Readonly<Record<string, string>>
  readonly questions: Readonly<Record<string, string>>
}

/** One edition's work, live: what is typed goes in, and is on the device a moment later. */
export interface Keeper {
  readonly work: ReadonlySignal<Work>
  readonly answers: ReadonlySignal<Readonly<Record<string, string>>>
  readonly questions: ReadonlySignal<Readonly<Record<string, string>>>
  readonly keeping: ReadonlySignal<Keeping>
  readonly student: ReadonlySignal<Student>
  /** work kept on this device for other editions of the same worksheet */
  readonly earlier: readonly Work[]
  /** whether anything was kept here before this visit */
  readonly resumed: boolean
  writeAnswer(blank: string, text: string): void
  writeQuestion(question: string, text: string): void
  writeStudent(student: Student): void
  writePoints(points: number, outOf: number): void
  /** puts these texts on the sheet; what stood there (and differs) is kept among the past, under `why` */
  replace(texts: Texts, why: string): void
  /** writes now */
  flush(): void
  /** another window wrote the same edition */
  absorb(json: string): void
}

export function createKeeper(device: Device, sheet: StudentSheet, clock: Clock): Keeper {
  const kept = device.read(sheet.id, sheet.digest)
  const work = signal<Work>(kept ?? freshWork(sheet, clock.now()))
  const keeping = signal<Keeping>(kept ? { kind: "kept", at: clock.now() } : { kind: "untouched" })
  const student = signal<Student>(device.readStudent())
  const typedHere = new Set<string>()
  let callOff: (() => void) | null = null

  const flush = (): void => {
    callOff?.()
    if (!callOff) return
    callOff = null
    const written = device.write(work.value)
    work.value = written.work
    keeping.value = written.problem
      ? { kind: "failed", problem: written.problem }
      : { kind: "kept", at: clock.now() }
  }
  const change = (next: Work): void => {
    work.value = next
    if (keeping.value.kind !== "failed") keeping.value = { kind: "waiting" }
    callOff ??= clock.after(keepWithin, flush)
  }
  const pastOf = (
    names: { answers: readonly string[]; questions: readonly string[] },
    why: string,
  ): PastText => {
    const pick = (from: Record<string, string>, which: readonly string[]) =>
      Object.fromEntries(which.map(name => [name, from[name] ?? ""]))
    return {
      at: clock.now(),
      why,
      answers: pick(textsOf(work.value.answers), names.answers),
      questions: pick(textsOf(work.value.questions), names.questions),
    }
  }
  return {
    work,
    keeping,
    student,
    answers: computed(() => textsOf(work.value.answers)),
    questions: computed(() => textsOf(work.value.questions)),
    earlier: device.editions(sheet.id).filter(other => other.digest !== sheet.digest),
    resumed: kept !== null,
    writeAnswer(blank, text) {
      typedHere.add(blank)
      change({ ...work.value, answers: { ...work.value.answers, [blank]: { text, at: clock.now() } } })
    },
    writeQuestion(question, text) {
      change({ ...work.value, questions: { ...work.value.questions, [question]: { text, at: clock.now() } } })
    },
    writeStudent(next) {
      student.value = next
      const problem = device.writeStudent(next)
      if (problem) keeping.value = { kind: "failed", problem }
    },
    writePoints(points, outOf) {
      const nothingWritten = Object.keys({ ...work.value.answers, ...work.value.questions }).length === 0
      if (nothingWritten) return
      const now = work.value.points
      if (now?.points === points && now.outOf === outOf) return
      change({ ...work.value, points: { points, outOf, at: clock.now() } })
    },
    replace(texts, why) {
      const at = clock.now()
      const differs = (from: Work["answers"], to: Readonly<Record<string, string>>): string[] =>
        Object.keys(to).filter(name => from[name] !== undefined && from[name].text !== to[name])
      const lost = {
        answers: differs(work.value.answers, texts.answers),
        questions: differs(work.value.questions, texts.questions),
      }
      const past =
        lost.answers.length + lost.questions.length > 0
          ? [...work.value.past, pastOf(lost, why)]
          : work.value.past
      const stamp = (to: Readonly<Record<string, string>>) =>
        Object.fromEntries(Object.entries(to).map(([name, text]) => [name, { text, at }]))
      change({
        ...work.value,
        past,
        answers: { ...work.value.answers, ...stamp(texts.answers) },
        questions: { ...work.value.questions, ...stamp(texts.questions) },
      })
    },
    flush,
    absorb(json) {
      const other = readWork(json)
      if (!other || other.digest !== sheet.digest || other.id !== sheet.id) return
      const overwritten = [...typedHere].filter(blank => {
        const mine = work.value.answers[blank]
        const theirs = other.answers[blank]
        return mine && theirs && theirs.at > mine.at && theirs.text !== mine.text
      })
      for (const blank of overwritten) typedHere.delete(blank)
      const mine = work.value
      const past = overwritten.length
        ? [
            ...mine.past,
            pastOf({ answers: overwritten, questions: [] }, "before another window of this page wrote"),
          ]
        : mine.past
      work.value = mergeWork({ ...mine, past }, other)
      if (overwritten.length) change(work.value)
    },
  }
}
