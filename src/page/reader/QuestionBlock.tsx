import { useId } from "preact/hooks"
import { readNumberAnswer } from "../../judge/number-answer.ts"
import type { Question } from "../../worksheet/contract.ts"
import type { Session } from "../session.ts"
import { plural } from "../words.ts"

/** What keeps a typed answer from being read as a number; "" when nothing does. */
export function numberWords(typed: string, unit: string): string {
  const reading = readNumberAnswer(typed, unit)
  if (reading.ok) return ""
  const wanted = unit === "1" ? "a number" : `a number in ${unit}`
  switch (reading.why) {
    case "empty":
      return ""
    case "no number":
      return `This is kept, but ${wanted} is wanted here, such as 3.2 or 1.5e3.`
    case "unit":
      return `The unit behind the number is not known; ${wanted} is wanted here.`
    case "wrong quantity":
      return `That unit belongs to another quantity; ${wanted} is wanted here.`
  }
}

/** A question as on an exercise sheet: its number hangs, its answer is kept as it is typed. */
export function QuestionBlock(props: { question: Question; number: number; session: Session }) {
  const { question, number, session } = props
  const id = useId()
  const typed = session.keeper.questions.value[question.name] ?? ""
  const answer = (text: string): void => session.answer(question.name, text)
  const ask = <span dangerouslySetInnerHTML={{ __html: question.askHtml }} />
  return (
    <section class="question row" data-question={question.name}>
      <p class="hang" aria-hidden="true">
        Q{number}
      </p>
      {question.points > 0 && <p class="margin-points">{plural(question.points, "point")}</p>}
      {question.kind === "choice" ? (
        <fieldset>
          <legend>
            <span class="unseen">Question {number}: </span>
            {ask}
          </legend>
          <ol class="choices">
            {question.choices.map(choice => (
              <li key={choice.key}>
                <label>
                  <input
                    type="radio"
                    name={id}
                    value={choice.key}
                    checked={typed === choice.key}
                    onChange={() => answer(choice.key)}
                  />
                  <span class="choice-key">{choice.key}</span>
                  <span dangerouslySetInnerHTML={{ __html: choice.html }} />
                </label>
              </li>
            ))}
          </ol>
          {typed !== "" && (
            <button type="button" class="word-button screen-only" onClick={() => answer("")}>
              take the choice back
            </button>
          )}
        </fieldset>
      ) : (
        <div>
          <label for={id}>
            <span class="unseen">Question {number}: </span>
            {ask}
          </label>
          {question.kind === "number" ? (
            <p class="number-answer">
              <input
                id={id}
                class="ruled-field number-field"
                inputMode="decimal"
                autocomplete="off"
                value={typed}
                aria-describedby={`${id}-note`}
                onInput={event => answer(event.currentTarget.value)}
              />
              {question.unit !== "1" && question.unit !== "" && <span class="unit">{question.unit}</span>}
              <span id={`${id}-note`} class="field-note">
                {numberWords(typed, question.unit)}
              </span>
            </p>
          ) : (
            <textarea
              id={id}
              class="ruled-field text-field"
              rows={Math.max(3, typed.split("\n").length + 1)}
              value={typed}
              onInput={event => answer(event.currentTarget.value)}
            />
          )}
        </div>
      )}
    </section>
  )
}
