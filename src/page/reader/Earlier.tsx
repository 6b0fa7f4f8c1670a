import type { PastText } from "../keep/work.ts"
import { momentWords } from "../words.ts"

/** Texts that stood in a blank before, each to be brought back. */
export function Earlier(props: {
  blank: string
  past: readonly PastText[]
  onBring: (text: string) => void
}) {
  const texts = props.past
    .filter(past => past.answers[props.blank] !== undefined)
    .map(past => ({ at: past.at, why: past.why, text: past.answers[props.blank]! }))
    .reverse()
  if (texts.length === 0) return null
  return (
    <details class="earlier">
      <summary>
        earlier texts of <i>{props.blank}</i> ({texts.length})
      </summary>
      <ul>
        {texts.map(({ at, why, text }) => (
          <li key={`${at} ${why}`}>
            <p>
              {momentWords(at)}, {why}{" "}
              <button type="button" class="word-button" onClick={() => props.onBring(text)}>
                bring back
              </button>
            </p>
            <pre>{text === "" ? "(empty)" : text}</pre>
          </li>
        ))}
      </ul>
    </details>
  )
}
