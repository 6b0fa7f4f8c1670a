import { readdirSync, statSync } from "node:fs"
import { join } from "node:path"
import type { Problem } from "../cell/problem.ts"
import type { Shelf, ShelfCard } from "../judge/edition.ts"
import { inCourse, makeEdition, prepareSheet } from "./edition.ts"
import { fileProblem, readWorksheet } from "./files.ts"
import { createMaking } from "./making.ts"
import { picturesOf } from "./pictures.ts"
import { sayProblem } from "./say.ts"
import type { Tools } from "./tools.ts"

/** The worksheets under some paths, as the page asks for them. */
export interface Library {
  shelf(): Promise<Shelf>
  /** the edition with this id as JSON, what keeps it from being made, or null where no file has that id */
  edition(id: string): Promise<{ readonly json: string } | { readonly problems: readonly Problem[] } | null>
  /** where the picture with this address lies */
  picture(address: string): string | null
}

interface Sheet {
  readonly file: string
  readonly read: ReturnType<typeof readWorksheet>
  /** its id, or the one it had before a fault was saved */
  readonly id: string | null
}

/**
 * Worksheets made when first asked for and again when their text changes.
 *
 * @param cache a folder for what was made
 * @param say told of each problem once for every time that its file is saved
 */
export function createLibrary(
  paths: readonly string[],
  tools: Tools,
  cache: string,
  say: (problem: Problem) => void,
): Library {
  const prepared = createMaking(join(cache, "cards"), worksheet => prepareSheet(worksheet, tools))
  const editions = createMaking(join(cache, "editions"), worksheet => makeEdition(worksheet, tools))
  const teller = createTeller(say)
  const readOnce = createReader(teller.forget)
  const read = (): Sheet[] =>
    paths.flatMap(path => {
      try {
        return sheetFiles(path).map(readOnce)
      } catch (cause) {
        teller.tell(path, [fileProblem(path, cause)])
        return []
      }
    })
  return {
    async shelf() {
      const cards: ShelfCard[] = []
      const results = await Promise.all(
        read().map(async sheet => ({ sheet, made: sheet.read.ok ? await prepared(sheet.read) : sheet.read })),
      )
      for (const { sheet, made } of results) {
        if (!made.ok) teller.tell(sheet.file, made.problems)
        else cards.push(made.made.card)
        if (sheet.read.ok)
          for (const picture of picturesOf(sheet.read.value))
            if ("problem" in picture) teller.tell(sheet.file, [picture.problem])
      }
      return { format: "deltasheet-shelf/1", title: "Worksheets", cards: inCourse(cards) }
    },
    async edition(id) {
      const sheet = read().find(item => item.id === id)
      if (sheet === undefined) return null
      const result = sheet.read.ok ? await editions(sheet.read) : sheet.read
      if (result.ok) return { json: JSON.stringify(result.made.edition) }
      teller.tell(sheet.file, result.problems)
      return { problems: result.problems }
    },
    picture(address) {
      for (const { read: item } of read()) {
        if (!item.ok) continue
        const found = picturesOf(item.value).find(picture => "path" in picture && picture.address === address)
        if (found && "path" in found) return found.path
      }
      return null
    },
  }
}

function sheetFiles(path: string): string[] {
  if (!statSync(path, { throwIfNoEntry: false })?.isDirectory()) return [path]
  return readdirSync(path)
    .filter(name => name.endsWith(".md") && name !== "README.md")
    .sort()
    .map(name => join(path, name))
}

/** Says each problem of a file once, until the file is saved again. */
function createTeller(say: (problem: Problem) => void) {
  const told = new Map<string, Set<string>>()
  return {
    tell(file: string, problems: readonly Problem[]): void {
      const known = told.get(file) ?? new Set()
      told.set(file, known)
      for (const problem of problems) {
        const text = sayProblem(problem)
        if (known.has(text)) continue
        known.add(text)
        say(problem)
      }
    },
    forget: (file: string): void => void told.delete(file),
  }
}

/** Reads a worksheet file again only when it has been saved since. */
function createReader(saved: (file: string) => void): (file: string) => Sheet {
  const known = new Map<string, { readonly stamp: string; readonly sheet: Sheet }>()
  return file => {
    const stat = statSync(file, { throwIfNoEntry: false })
    const stamp = `${stat?.mtimeMs} ${stat?.size}`
    const before = known.get(file)
    if (before?.stamp === stamp) return before.sheet
    const read = readWorksheet(file)
    const id = read.ok ? read.value.sheet.id : (before?.sheet.id ?? null)
    const sheet = { file, read, id }
    known.set(file, { stamp, sheet })
    saved(file)
    return sheet
  }
}
