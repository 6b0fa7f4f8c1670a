/** Records of a CSV text by RFC 4180, section 2: commas, CRLF, quotes doubled. Throws where the text breaks it. */
export function readCsv(text: string): string[][] {
  if (text === "") return []
  if (!text.endsWith("\r\n")) throw new Error("the last record has no line end")
  const rows: string[][] = []
  let row: string[] = []
  let i = 0
  while (i < text.length) {
    let field = ""
    if (text[i] === '"') {
      for (i++; ; i++) {
        if (i >= text.length) throw new Error("a quoted field has no end")
        if (text[i] !== '"') field += text[i]
        else if (text[i + 1] === '"') {
          field += '"'
          i++
        } else break
      }
      i++
    } else {
      while (i < text.length && text[i] !== "," && text[i] !== "\r" && text[i] !== "\n") {
        if (text[i] === '"') throw new Error("a quote inside a plain field")
        field += text[i++]
      }
    }
    row.push(field)
    if (text[i] === ",") {
      i++
      continue
    }
    if (text.slice(i, i + 2) !== "\r\n") throw new Error(`neither comma nor CRLF after a field, at ${i}`)
    rows.push(row)
    row = []
    i += 2
  }
  return rows
}
