import type { ReportSubject } from "./contract.ts"
import type { ClassTally } from "./tally.ts"
import { escaped, grouped, nameHtml } from "./text.ts"

/** Names shown of those that a finding or a slip concerns; the rest are counted. */
const mostNames = 40
/** Lines of a table at most. */
export const mostLines = 2000

/** How a file of the class is named and where its work is shown. */
export interface Naming {
  readonly label: (place: number) => string
  /** "" for no place to go to */
  readonly href: (place: number) => string
}

export interface ReportParts {
  readonly subject: ReportSubject
  readonly tally: ClassTally
  readonly naming: Naming
  /** each student's work, ready made, when the class is small enough; in the order of the register */
  readonly works: readonly string[]
  /** answers to text questions, by question; null when they stand on the students' own pages alone */
  readonly texts: ReadonlyMap<string, readonly (readonly [place: number, text: string])[]> | null
  readonly anonymous: boolean
}

/** A stretch of the page with a heading of its own. */
export interface Section {
  readonly id: string
  readonly title: string
  readonly html: string
}

export function namesHtml(who: readonly number[], naming: Naming, most = mostNames): string {
  if (who.length === 0) return ""
  const links = who.slice(0, most).map(place => linkHtml(place, naming))
  const rest = who.length - links.length
  return `<p class="whom">${links.join(", ")}${rest > 0 ? ` and ${grouped(rest)} more` : ""}</p>`
}

export function linkHtml(place: number, { label, href }: Naming): string {
  const address = href(place)
  return address === ""
    ? nameHtml(label(place))
    : `<a href="${escaped(address)}">${nameHtml(label(place))}</a>`
}

/** A wide table scrolls in its own window, which the keyboard can reach. */
export const scrolled = (label: string, table: string): string =>
  `<div class="scroll" role="region" tabindex="0" aria-label="${escaped(label)}: table">${table}</div>`
