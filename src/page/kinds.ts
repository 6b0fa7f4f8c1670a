import { assembleProgram } from "../cell/assemble.ts"
import type { Program } from "../cell/contract.ts"
import type { Problem } from "../cell/problem.ts"
import type { About, Answers, Renamed, Suggestions } from "../cell/types/contract.ts"
import { createPageTypes, type PageTypes } from "../cell/types/types.browser.ts"
import type { StudentSheet } from "../worksheet/contract.ts"

type Texts = Readonly<Record<string, string>>

/** A place in a listing as the reader has it: a cell and an offset in its text. */
export interface Spot {
  readonly cell: string
  /** the cell's whole text: an answer about another text is none */
  readonly text: string
  readonly offset: number
}

/** What the checker knows of the names in the listings; everything resolves with nothing while it is not there. */
export interface Names {
  /** @param wait whether to wait for a checker that is still on its way */
  suggest(texts: Texts, at: Spot, wait: boolean): Promise<Suggestions | null>
  about(texts: Texts, at: Spot): Promise<About | null>
  rename(texts: Texts, at: Spot, name: string): Promise<Renamed & { readonly texts?: Texts }>
}

export interface Kinds extends Names {
  /** where kinds of value do not fit; nothing if the checker cannot be loaded */
  problems(texts: Texts): Promise<readonly Problem[]>
  /** begins to fetch the checker */
  warmUp(): void
  close(): void
}

/** Findings told at a time: the first ones usually cause the rest. */
const mostTold = 3

const away: Renamed = {
  ok: false,
  why: "Names cannot be changed everywhere at once just now: the check of kinds is not there yet.",
}

/** The checker of one open worksheet, fetched when first wanted. */
export function openKinds(sheet: StudentSheet): Kinds {
  const names = sheet.parameters.map(parameter => parameter.name)
  let types: PageTypes | null = null
  let ready = false
  const get = (): PageTypes => {
    if (types) return types
    const fresh = createPageTypes()
    fresh.ready.then(
      () => {
        ready = true
      },
      // the next one who asks fetches it anew
      () => {
        fresh.close()
        if (types === fresh) types = null
      },
    )
    types = fresh
    return fresh
  }
  const assemble = (texts: Texts): Program => assembleProgram(sheet.cells, texts, names, sheet.timeStep)

  const ask = async <K extends keyof Answers>(kind: K, program: Program, offset = 0, name = "") => {
    try {
      return await get().ask(kind, program, sheet.parameters, offset, name)
    } catch {
      return null
    }
  }
  /** Where a spot lies in the program; null if the program holds another text there. */
  const inProgram = (program: Program, { cell, text, offset }: Spot): number | null => {
    const found = program.cells.find(one => one.name === cell)
    return found && program.text.slice(found.from, found.to) === text ? found.from + offset : null
  }

  return {
    async problems(texts) {
      const found = await ask("problems", assemble(texts))
      return (found ?? []).slice(0, mostTold)
    },
    async suggest(texts, at, wait) {
      if (!ready && !wait) return null
      const program = assemble(texts)
      const offset = inProgram(program, at)
      if (offset === null) return null
      const found = await ask("suggest", program, offset)
      return found && { ...found, from: at.offset - (offset - found.from) }
    },
    async about(texts, at) {
      const program = assemble(texts)
      const offset = inProgram(program, at)
      if (offset === null) return null
      const found = await ask("about", program, offset)
      const by = at.offset - offset
      return found && { ...found, from: found.from + by, to: found.to + by }
    },
    async rename(texts, at, name) {
      const program = assemble(texts)
      const offset = inProgram(program, at)
      if (offset === null) return away
      const found = (await ask("rename", program, offset, name)) ?? away
      return found.ok ? { ...found, texts: textsAfter(program, found.places) } : found
    },
    warmUp: () => void get(),
    close: () => types?.close(),
  }
}

/** The text of each blank that a renaming changes. */
function textsAfter(program: Program, places: Extract<Renamed, { ok: true }>["places"]): Texts {
  const after: Record<string, string> = {}
  for (const blank of program.blanks) {
    const inside = places.filter(one => blank.from <= one.from && one.to <= blank.to)
    if (inside.length === 0) continue
    let text = ""
    let done = blank.from
    for (const { from, to, insert } of inside) {
      text += program.text.slice(done, from) + insert
      done = to
    }
    after[blank.name] = text + program.text.slice(done, blank.to)
  }
  return after
}

/** Calls back once the browser has nothing else to do, or after a while at the latest. */
export function whenIdle(work: () => void): void {
  if (typeof requestIdleCallback === "function") requestIdleCallback(work, { timeout: 4000 })
  else setTimeout(work, 1500)
}
