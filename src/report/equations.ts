/**
 * HTML of a set line with its equations as MathML alone: the drawn form needs style sheets and typefaces that a
 * single file does not carry, and every browser in use sets MathML itself.
 */
export function mathOnly(html: string): string {
  let out = ""
  let from = 0
  for (;;) {
    const drawn = html.indexOf('<span class="katex-html"', from)
    if (drawn < 0) return withoutSource(out + html.slice(from))
    out += html.slice(from, drawn)
    from = endOfSpan(html, drawn)
  }
}

/** Where the span that opens at `from` has ended. */
function endOfSpan(html: string, from: number): number {
  const tag = /<(\/?)span\b[^>]*>/g
  tag.lastIndex = from
  let depth = 0
  for (let found = tag.exec(html); found !== null; found = tag.exec(html)) {
    depth += found[1] === "/" ? -1 : 1
    if (depth === 0) return tag.lastIndex
  }
  return html.length
}

/** The TeX that MathML carries along is not needed for reading. */
const withoutSource = (html: string): string => html.replace(/<annotation\b[^>]*>[^<]*<\/annotation>/g, "")
