import { linkHtml, mostLines, type ReportParts, type Section, scrolled } from "./parts.ts"
import { count, grouped, nameHtml, stranger } from "./text.ts"
import { nameless } from "./told.ts"

/** Files that could not be marked, those with the same reason together: why, what to do, and whose they are. */
export function notMarkedSection({ tally, naming, anonymous }: ReportParts): Section | null {
  if (tally.refused.length === 0) return null
  const shown = tally.refused.slice(0, mostLines)
  const groups = new Map<string, { text: string; todo: string; places: number[] }>()
  for (const place of shown) {
    const entry = tally.entries[place]!
    const student = { id: entry.id, name: entry.name }
    const told =
      anonymous && entry.reason ? nameless(entry.reason, { file: entry.file, student }) : entry.reason
    const { text, todo } = told ?? { text: "", todo: "" }
    const key = `${text}\n${todo}`
    const group = groups.get(key)
    if (group === undefined) groups.set(key, { text, todo, places: [place] })
    else group.places.push(place)
  }
  const bodies = [...groups.values()]
    .sort((a, b) => b.places.length - a.places.length)
    .map(({ text, todo, places }) => {
      const lines = places.map(place => {
        const { file, name, id } = tally.entries[place]!
        const own = anonymous || (name.trim() === "" && id.trim() === "") ? "" : nameHtml(file)
        return `<tr><td>${linkHtml(place, naming)}</td>${anonymous ? "" : `<td>${own}</td>`}</tr>`
      })
      return `<tbody><tr><th scope="rowgroup" colspan="${anonymous ? 1 : 2}"><b>${stranger(text)}</b><span class="says">${stranger(todo)}</span></th></tr>${lines.join("")}</tbody>`
    })
  return {
    id: "not-marked",
    title: "Not marked",
    html: scrolled(
      "Not marked",
      `<table class="not-marked"><caption>${count(tally.refused.length, "file")} could not be marked, by reason${shown.length < tally.refused.length ? `; the first ${grouped(shown.length)} are listed` : ""}.</caption><thead><tr><th scope="col">student</th>${anonymous ? "" : '<th scope="col">file</th>'}</tr></thead>${bodies.join("")}</table>`,
    ),
  }
}
