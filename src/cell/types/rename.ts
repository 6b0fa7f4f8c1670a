import ts from "typescript"
import { placeOf } from "../assemble.ts"
import { knownNames } from "../names.ts"
import { nameAt } from "./about.ts"
import type { Renamed, Renaming } from "./contract.ts"
import { type Laid, programFileName } from "./service.ts"

const reserved: ReadonlySet<string> = new Set(
  "arguments await break case catch class const continue debugger default delete do else enum eval export extends false finally for function if implements import in instanceof interface let new null package private protected public return static super switch this throw true try typeof undefined var void while with yield".split(
    " ",
  ),
)

/**
 * Every place of the name at an offset, with the new name, over all cells. Nothing is renamed by halves: if one place lies in
 * given lines, or the new name already means something, no place is changed.
 */
export function renameAt(laid: Laid, offset: number, name: string): Renamed {
  const { program, service } = laid
  const no = (why: string): Renamed => ({ ok: false, why })
  const found = nameAt(laid, offset)
  if (!found) return no("No name stands here.")
  const before = found.node.text
  if (program.parameters.includes(before))
    return no(`${before} is a parameter of the worksheet; its name is given.`)
  const symbol = laid.checker.getSymbolAtLocation(found.node)
  if (symbol && symbol.flags & ts.SymbolFlags.Alias)
    return no(`${before} is a name of the library; it stays as it is.`)
  const locations = service.findRenameLocations(
    programFileName,
    found.node.getStart(laid.file),
    false,
    false,
    { providePrefixAndSuffixTextForRename: true },
  )
  if (!locations || locations.length === 0 || locations.some(one => one.fileName !== programFileName))
    return no(`${before} is a name of the library; it stays as it is.`)
  const places = new Map<number, Renaming>()
  for (const { textSpan, prefixText = "", suffixText = "" } of locations) {
    const at = laid.toProgram(textSpan.start, textSpan.start + textSpan.length)
    if (at === null) return no(`${before} is a name of the worksheet itself; it stays as it is.`)
    const blank = program.blanks.find(one => one.from <= at.from && at.to <= one.to)
    if (!blank) {
      const { cell, line } = placeOf(program, at.from, at.to)
      return no(
        `${before} stands in a given line too (${cell}, line ${line}), and given lines stay as they are.`,
      )
    }
    places.set(at.from, { ...at, insert: `${prefixText}${name}${suffixText}` })
  }
  const wrong = unfit(laid, name, before)
  if (wrong !== null) return no(wrong)
  return { ok: true, name: before, places: [...places.values()].sort((a, b) => a.from - b.from) }
}

/** Why a new name cannot be used; null if it can. An empty one is only asked about. */
function unfit({ program }: Laid, name: string, before: string): string | null {
  if (name === "" || name === before) return null
  if (!/^[\p{ID_Start}_$][\p{ID_Continue}$]*$/u.test(name))
    return "A name is one word of letters and digits and begins with a letter."
  if (reserved.has(name)) return `${name} is a word of the language and cannot be a name.`
  if (knownNames.has(name)) return `${name} is a name of the library; choose another.`
  if (program.parameters.includes(name)) return `${name} is a parameter of the worksheet; choose another.`
  const used: readonly string[] = program.text.match(/[\p{ID_Start}_$][\p{ID_Continue}$]*/gu) ?? []
  return used.includes(name) ? `${name} is used already; choose another name.` : null
}
