import { placeOf } from "../../cell/assemble.ts"
import type { Compiled, Site } from "../../cell/contract.ts"

/** A line that sets something: where it stands, and what its value is called. */
export interface SettingLine {
  readonly site: number
  readonly cell: string
  /** as the listing counts, from 1 */
  readonly line: number
  /** the name or place on the left: `p`, `body.momentum` */
  readonly name: string
  /** the function it stands in; "" for none */
  readonly within: string
  /** it is passed once: it stands in no loop and no function */
  readonly steady: boolean
  /** of Program.text, where the name begins: the units run names it so */
  readonly at: number
}

/** A name, or a place of some members; what is taken apart by a pattern has no one name. */
const leftSide = /^[\p{ID_Start}_$][\p{ID_Continue}$]*(?:\.[\p{ID_Start}_$][\p{ID_Continue}$]*|\[\d+\])*/u
const functionName = /^(?:async\s+)?function\s*\*?\s*([\p{ID_Start}_$][\p{ID_Continue}$]*)/u
const givenName = /([\p{ID_Start}_$][\p{ID_Continue}$]*)\s*(?::[^=]*)?=\s*$/u

/** All lines that set something under a name, in the order of the text. */
export function settingLines(compiled: Compiled): SettingLine[] {
  const { program, sites } = compiled
  const bodies = sites.filter(({ what }) => what === "function body")
  const loops = sites.filter(({ what }) => what === "turn")
  return sites
    .flatMap((site, number) => {
      if (site.what !== "assignment" && site.what !== "update") return []
      const text = program.text.slice(site.from, site.to)
      const found = leftSide.exec(text)
      // ++n: the name follows the sign
      const name = found?.[0] ?? leftSide.exec(text.slice(2))?.[0]
      if (name === undefined || (!found && !/^(\+\+|--)/.test(text))) return []
      const { cell, line } = placeOf(program, site.from, site.to)
      if (cell === undefined) return []
      const within = nameOfBody(program.text, bodies, site)
      const steady = within === "" && !loops.some(loop => loop.from <= site.from && site.to <= loop.to)
      return [{ site: number, cell, line, name, within, steady, at: site.from }]
    })
    .sort((a, b) => a.at - b.at)
}

/** Variables that a plot can be asked for: a name within a cell, and within a function of it. */
export const variableKey = ({ cell, within, name }: Pick<SettingLine, "cell" | "within" | "name">): string =>
  `${cell}/${within}/${name}`

/** The name within a key, in words. */
export function nameOfKey(key: string): string {
  const [, within, ...name] = key.split("/")
  return within === "" ? name.join("/") : `${name.join("/")} in ${within}`
}

function nameOfBody(text: string, bodies: readonly Site[], { from, to }: Site): string {
  const inner = bodies
    .filter(body => body.from <= from && to <= body.to)
    .reduce<Site | null>((a, b) => (a === null || b.to - b.from < a.to - a.from ? b : a), null)
  if (!inner) return ""
  return (
    functionName.exec(text.slice(inner.from, inner.to))?.[1] ??
    givenName.exec(text.slice(0, inner.from))?.[1] ??
    "a function"
  )
}
