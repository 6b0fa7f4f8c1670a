import type { Program } from "../contract.ts"
import { aboutAt } from "./about.ts"
import { typeProblems } from "./check-types.ts"
import type { Answers } from "./contract.ts"
import type { Declarations } from "./declaration-files.ts"
import { renameAt } from "./rename.ts"
import { createService, type Service } from "./service.ts"
import { suggestAt } from "./suggest.ts"
import type { KnownParameter } from "./surroundings.ts"

/** What the page asks of its checker, and what it hears back. */
export type ToTypes =
  | { readonly kind: "start"; readonly declarations: string }
  | {
      readonly kind: keyof Answers
      readonly id: number
      readonly program: Program
      readonly parameters: readonly KnownParameter[]
      readonly offset: number
      readonly name: string
    }
export type Ask = Extract<ToTypes, { id: number }>
export type FromTypes =
  | { readonly kind: "ready" }
  | { readonly kind: "failed"; readonly message: string }
  | { readonly kind: "answer"; readonly id: number; readonly answer: Answers[keyof Answers] }

const say = (message: FromTypes): void => self.postMessage(message)

let service: Promise<Service> | null = null

async function start(address: string): Promise<Service> {
  const answer = await fetch(address)
  if (!answer.ok) throw new Error(`the server answered ${answer.status}`)
  const fresh = createService((await answer.json()) as Declarations)
  // the first program brings language and library in; it is none of a student's
  const text = "let p = vec3(1, 0, 0)\np = p + 2 * p\nrecord(p.x, { p })"
  typeProblems(
    fresh.lay(
      { text, cells: [{ name: "", from: 0, to: text.length }], blanks: [], parameters: [], timeStep: "dt" },
      [],
    ),
  )
  return fresh
}

/** The newest text not yet checked: a later one takes its place. */
let waiting: Ask | null = null

async function answer(ask: Ask): Promise<void> {
  if (service === null) return
  const { id, kind, program, parameters, offset, name } = ask
  try {
    const laid = (await service).lay(program, parameters)
    const found =
      kind === "problems"
        ? typeProblems(laid)
        : kind === "suggest"
          ? suggestAt(laid, offset)
          : kind === "about"
            ? aboutAt(laid, offset)
            : renameAt(laid, offset, name)
    say({ kind: "answer", id, answer: found })
  } catch {
    // a text nested too deep for the checker: it has words of its own elsewhere
    const nothing: Answers = {
      problems: [],
      suggest: null,
      about: null,
      rename: { ok: false, why: "This text cannot be read." },
    }
    say({ kind: "answer", id, answer: nothing[kind] })
  }
}

self.onmessage = ({ data }: MessageEvent<ToTypes>) => {
  if (data.kind === "start") {
    service = start(data.declarations)
    service.then(
      () => say({ kind: "ready" }),
      cause => say({ kind: "failed", message: String(cause) }),
    )
  } else if (data.kind === "problems") {
    const first = waiting === null
    if (waiting !== null) say({ kind: "answer", id: waiting.id, answer: [] })
    waiting = data
    // after what else has been asked meanwhile: suggestions first
    if (first)
      setTimeout(() => {
        const ask = waiting
        waiting = null
        if (ask !== null) void answer(ask)
      }, 0)
  } else void answer(data)
}
