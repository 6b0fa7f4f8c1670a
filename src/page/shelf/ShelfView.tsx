import { useEffect, useState } from "preact/hooks"
import type { Shelf } from "../../judge/edition.ts"
import { InkChoice } from "../InkChoice.tsx"
import { openDevice } from "../keep/device.ts"
import { type Loaded, loadShelf } from "../load.ts"
import { ProblemWords } from "../ProblemWords.tsx"
import { Card } from "./Card.tsx"
import "./shelf.css"

/** All worksheets, each as a card with its motion. */
export function ShelfView() {
  const [shelf, setShelf] = useState<Loaded<Shelf> | null>(null)
  useEffect(() => {
    let left = false
    void loadShelf().then(loaded => {
      if (left) return
      setShelf(loaded)
      document.title = loaded.ok ? loaded.value.title : "Worksheets"
    })
    return () => {
      left = true
    }
  }, [])
  return (
    <div class="shelf">
      <header class="shelf-head">
        <h1>{shelf?.ok ? shelf.value.title : "Worksheets"}</h1>
        <InkChoice />
      </header>
      <main>{shelf ? <Cards shelf={shelf} /> : <p class="waiting">Fetching the worksheets …</p>}</main>
    </div>
  )
}

function Cards({ shelf }: { shelf: Loaded<Shelf> }) {
  if (!shelf.ok)
    return (
      <div class="shelf-note" role="alert">
        <ProblemWords problem={shelf.problem} />
        <button type="button" class="word-button" onClick={() => location.reload()}>
          Load again
        </button>
      </div>
    )
  if (shelf.value.cards.length === 0)
    return (
      <div class="shelf-note">
        <p>No worksheet stands on this shelf yet.</p>
        <p class="todo">
          Write one as a Markdown file, check it, and publish it to this folder; it appears here when the page
          is loaded again.
        </p>
      </div>
    )
  const device = openDevice(() => localStorage)
  return (
    <ul class="cards">
      {shelf.value.cards.map(card => (
        <Card key={card.id} card={card} work={device.editions(card.id)[0] ?? null} />
      ))}
    </ul>
  )
}
