import { useEffect, useState } from "preact/hooks"
import type { Edition } from "../../judge/edition.ts"
import { wallClock } from "../clock.ts"
import { openDevice, workKey } from "../keep/device.ts"
import { createKeeper } from "../keep/keeper.ts"
import { recallValues } from "../lines/remember.ts"
import { type Loaded, loadEdition } from "../load.ts"
import { ProblemWords } from "../ProblemWords.tsx"
import { openSession, type Session } from "../session.ts"
import { openWorkshop } from "../workshop.ts"
import { Reading } from "./Reading.tsx"
import "katex/dist/katex.min.css"
import "./reading.css"
import "./handout.css"
import "./listing.css"
import "./values.css"

function begin(edition: Edition): { session: Session; end: () => void } {
  const { sheet } = edition
  const keeper = createKeeper(
    openDevice(() => localStorage),
    sheet,
    wallClock,
  )
  const session = openSession(edition, openWorkshop(edition), keeper, wallClock)
  session.looking.wanted.value = recallValues()
  const key = workKey(sheet.id, sheet.digest)
  const heard = (event: StorageEvent): void => {
    if (event.key === key && event.newValue !== null) keeper.absorb(event.newValue)
  }
  const leaving = (): void => keeper.flush()
  const hidden = (): void => {
    if (document.visibilityState === "hidden") keeper.flush()
  }
  addEventListener("storage", heard)
  addEventListener("pagehide", leaving)
  document.addEventListener("visibilitychange", hidden)
  return {
    session,
    end() {
      removeEventListener("storage", heard)
      removeEventListener("pagehide", leaving)
      document.removeEventListener("visibilitychange", hidden)
      session.close()
    },
  }
}

/** Fetches one worksheet and opens it. */
export function Reader({ id }: { id: string }) {
  const [loaded, setLoaded] = useState<Loaded<Session> | null>(null)
  useEffect(() => {
    let left = false
    let end = (): void => {}
    void loadEdition(id).then(edition => {
      if (left) return
      if (!edition.ok) {
        setLoaded(edition)
        return
      }
      const begun = begin(edition.value)
      end = begun.end
      document.title = edition.value.sheet.title
      setLoaded({ ok: true, value: begun.session })
    })
    return () => {
      left = true
      end()
    }
  }, [id])
  if (!loaded) return <p class="waiting">Opening the worksheet …</p>
  if (loaded.ok) return <Reading session={loaded.value} />
  return (
    <main class="not-opened">
      <h1>This worksheet did not open</h1>
      <div role="alert">
        <ProblemWords problem={loaded.problem} />
      </div>
      <p>
        <button type="button" class="word-button" onClick={() => location.reload()}>
          Load again
        </button>{" "}
        <a class="word-button" href="#/">
          To the shelf
        </a>
      </p>
    </main>
  )
}
