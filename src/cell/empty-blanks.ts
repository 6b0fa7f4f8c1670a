import type { Program } from "./contract.ts"
import type { Hidden } from "./emit/emitter.ts"

/** A program's text in which every inline blank holds something. */
export interface Filled {
  readonly text: string
  /** the names put into blanks */
  readonly names: ReadonlySet<string>
  /** an offset of `text` as an offset of the program's own text */
  toProgram(offset: number): number
  /** and back */
  toText(offset: number): number
}

/** One prefix that the program's text does not hold, so that no name of ours can meet one of its own. */
export function hiddenNames(text: string): Hidden {
  let prefix = "ds$"
  while (text.includes(prefix)) prefix += "$"
  return { prefix, of: name => prefix + name }
}

/** Puts a name into each inline blank that holds nothing; offsets after it move. */
export function fillEmptyBlanks(program: Program, hidden: Hidden): Filled {
  const names = new Set<string>()
  const moved: { readonly at: number; readonly by: number }[] = []
  let text = ""
  let from = 0
  for (const blank of program.blanks) {
    if (!blank.inline || program.text.slice(blank.from, blank.to).trim() !== "") continue
    const name = hidden.of(`blank${names.size}`)
    names.add(name)
    text += program.text.slice(from, blank.from)
    moved.push({ at: text.length, by: name.length })
    text += name
    from = blank.from
  }
  text += program.text.slice(from)
  const toProgram = (offset: number): number => {
    let shift = 0
    for (const m of moved) {
      if (offset <= m.at) break
      shift += Math.min(m.by, offset - m.at)
    }
    return offset - shift
  }
  const toText = (offset: number): number => {
    let at = offset
    for (const m of moved) if (m.at < at) at += m.by
    return at
  }
  return { text, names, toProgram, toText }
}
