import type { Extension } from "@codemirror/state"
import { untracked } from "@preact/signals"
import { renaming } from "../editor/rename.ts"
import { suggestions } from "../editor/suggestions.ts"
import { wordCards } from "../editor/wordCards.ts"
import { type Session, textsOf } from "../session.ts"
import { plural } from "../words.ts"

/** What an editor needs to suggest, explain and change names: the checker, asked with the texts of all blanks. */
export function nameHelp(session: Session, cell: string, say: (words: string) => void): Extension {
  const texts = (): Record<string, string> =>
    untracked(() => textsOf(session.edition, session.keeper.answers.value))
  const spot = (text: string, offset: number) => ({ cell, text, offset })
  return [
    suggestions((text, offset, wait) => session.kinds.suggest(texts(), spot(text, offset), wait)),
    wordCards((text, offset) => session.kinds.about(texts(), spot(text, offset))),
    renaming({
      async look(text, offset) {
        const found = await session.kinds.rename(texts(), spot(text, offset), "")
        return found.ok ? { name: found.name } : { why: found.why }
      },
      async change(text, offset, name) {
        const found = await session.kinds.rename(texts(), spot(text, offset), name)
        if (!found.ok) return { why: found.why }
        if (name === "") return { why: "Write the new name." }
        if (found.texts && name !== found.name) {
          session.write(found.texts)
          say(`${found.name} is called ${name} now, in ${plural(found.places.length, "place")}.`)
        }
        return null
      },
      say,
    }),
  ]
}
