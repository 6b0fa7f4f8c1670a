import type { ShelfCard } from "../../judge/edition.ts"
import type { Work } from "../keep/work.ts"
import { dayWords, plural, pointsWords } from "../words.ts"
import { StrobePicture } from "./StrobePicture.tsx"

/** Where this device's student stands: "begun 14 Nov, 3 of 4 points". */
export function standingWords(work: Work | null, card: ShelfCard): string {
  if (!work) return "not begun"
  const begun = `begun ${dayWords(work.begun)}`
  if (work.version !== card.version) return `${begun}, on version ${work.version}`
  return work.points ? `${begun}, ${pointsWords(work.points.points, work.points.outOf)}` : begun
}

/** A worksheet as an index card. */
export function Card({ card, work }: { card: ShelfCard; work: Work | null }) {
  const inside = [
    plural(card.blanks, "blank"),
    card.questions > 0 ? plural(card.questions, "question") : "",
    plural(card.points, "point"),
  ]
  return (
    <li>
      <article class="card">
        <h2>
          <a href={`#${encodeURIComponent(card.id)}`}>{card.title}</a>
        </h2>
        {card.strobe ? (
          <StrobePicture strobe={card.strobe} title={card.title} />
        ) : (
          <p class="strobe-none">No motion to show on the card.</p>
        )}
        <p class="card-summary">{card.summary}</p>
        <p class="card-foot">
          <span>{inside.filter(Boolean).join(" · ")}</span>
          <span class={work ? "card-state begun" : "card-state"}>{standingWords(work, card)}</span>
        </p>
      </article>
    </li>
  )
}
