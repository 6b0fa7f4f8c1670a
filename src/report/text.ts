/** Characters of a name, an id or a file name that are shown. */
const longestName = 60

const entities: Readonly<Record<string, string>> = {
  "&": "&amp;",
  "<": "&lt;",
  ">": "&gt;",
  '"': "&quot;",
  "'": "&#39;",
}

/** Any text as HTML text or attribute value. */
export const escaped = (text: string): string => text.replace(/[&<>"']/g, character => entities[character]!)

/** What cannot be seen, or turns the order of what stands around it: among them blanks that are no spaces. */
const unseen =
  // biome-ignore lint/suspicious/noControlCharactersInRegex: these are the ones to be found
  /[\u0000-\u0008\u000b-\u001f\u007f-\u009f\u00ad\u061c\u115f\u1160\u180e\u200b\u200e\u200f\u2028-\u202e\u2060-\u206f\u2800\u3164\ufeff\uffa0\ufff9-\ufffb\u{e0000}-\u{e007f}]/gu

/** Joiners and choices of form belong to what they follow (in Persian names, in emoji); alone they are nothing. */
const joinsNothing = /(?<![\p{L}\p{M}\p{N}\p{P}\p{S}])(?:\u034f|\u200c|\u200d|[\ufe00-\ufe0f])/gu

/**
 * A text that a stranger wrote, as HTML: what cannot be seen is named by its code point, half characters are
 * replaced, and `<bdi>` keeps its direction to itself.
 */
export function stranger(text: string): string {
  return `<bdi>${strangerText(text)}</bdi>`
}

/** The same without `<bdi>`, for titles, attributes and listings. */
export const strangerText = (text: string): string => escaped(plainText(text))

/** The same where no HTML is written: for tables of plain text. */
export const plainText = (text: string): string =>
  text
    .replace(/\p{Surrogate}/gu, "\ufffd")
    .replace(joinsNothing, codePoint)
    .replace(unseen, codePoint)

const codePoint = (character: string): string =>
  `⟨U+${character.codePointAt(0)!.toString(16).toUpperCase().padStart(4, "0")}⟩`

/** Long names are cut in the middle of nowhere rather than filling the page. */
export const shortName = (name: string): string => {
  const line = name
    .slice(0, 4 * longestName)
    .replace(/\s+/g, " ")
    .trim()
  return line.length <= longestName ? line : `${line.slice(0, longestName - 1)}…`
}

/** A name, one line, cut if it is long. */
export const nameHtml = (name: string): string => stranger(shortName(name))

/** “3 students”, “1 student”. */
export const count = (n: number, thing: string, things = `${thing}s`): string =>
  `${grouped(n)} ${n === 1 ? thing : things}`

/** Whole numbers in groups of three from 10 000 on, with a thin space. */
export const grouped = (n: number): string =>
  n < 10_000 ? String(n) : String(n).replace(/\B(?=(\d{3})+$)/g, "\u202f")

/** Points and means: at most two digits after the point, true minus. */
export const number = (value: number): string => String(Number(value.toFixed(2))).replace("-", "−")

/** “a”, “a and b”, “a, b and c”. */
export function listed(items: readonly string[]): string {
  return items.length < 2 ? (items[0] ?? "") : `${items.slice(0, -1).join(", ")} and ${items.at(-1)}`
}
