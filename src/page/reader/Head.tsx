import { InkChoice } from "../InkChoice.tsx"
import type { Keeping } from "../keep/keeper.ts"
import { ProblemWords } from "../ProblemWords.tsx"
import { pointsOfQuestions, type Session } from "../session.ts"
import { dayWords, plural, soFarWords, timeWords } from "../words.ts"

function keepingWords(keeping: Keeping): string {
  switch (keeping.kind) {
    case "untouched":
      return "what you write is kept on this device"
    case "waiting":
      return "keeping …"
    case "kept":
      return `kept on this device, ${timeWords(keeping.at)}`
    case "failed":
      return "not kept on this device"
  }
}

/** Name and number, ruled at the head of the sheet as on paper. */
function StudentLine({ session }: { session: Session }) {
  const { keeper } = session
  const student = keeper.student.value
  return (
    <div class="student-line">
      <label>
        <span>Name</span>
        <input
          id="student-name"
          class="ruled-field"
          autocomplete="name"
          maxLength={200}
          value={student.name}
          onInput={event => keeper.writeStudent({ ...student, name: event.currentTarget.value })}
        />
      </label>
      <label class="student-number">
        <span>Number</span>
        <input
          id="student-id"
          class="ruled-field"
          autocomplete="off"
          maxLength={200}
          value={student.id}
          onInput={event => keeper.writeStudent({ ...student, id: event.currentTarget.value })}
        />
      </label>
      <p class="student-points">
        <Points session={session} />
      </p>
    </div>
  )
}

function Points({ session }: { session: Session }) {
  const standing = session.standing.value
  const checks = session.edition.sheet.checks.reduce((sum, check) => sum + check.points, 0)
  const questions = pointsOfQuestions(session.edition)
  const written = Object.keys(session.keeper.answers.value).length > 0
  if (!standing?.current || !written) return <>{plural(checks + questions, "point")}</>
  return <>{soFarWords(standing.judgement.points, checks, questions)}</>
}

/** What the reader has to know before reading on: nothing is kept, another edition, values that are not the sheet's. */
function Notices({ session }: { session: Session }) {
  const { keeper } = session
  const keeping = keeper.keeping.value
  return (
    <>
      {keeping.kind === "failed" && (
        <div class="notice notice-strong" role="alert">
          <ProblemWords problem={keeping.problem} />
        </div>
      )}
      {keeper.earlier.length > 0 && (
        <div class="notice screen-only">
          <p>The task has changed since you wrote here before. What you had written is kept:</p>
          <ul>
            {keeper.earlier.map(work => {
              const names = Object.keys(session.edition.sheet ? blankNames(session) : {})
              const fits = Object.entries(work.answers).filter(([name]) => names.includes(name))
              return (
                <li key={work.digest}>
                  version {work.version}, begun {dayWords(work.begun)}{" "}
                  {fits.length > 0 && (
                    <button
                      type="button"
                      class="word-button"
                      onClick={() =>
                        keeper.replace(
                          {
                            answers: Object.fromEntries(fits.map(([name, kept]) => [name, kept.text])),
                            questions: {},
                          },
                          "before the text of another edition was brought over",
                        )
                      }
                    >
                      bring over {plural(fits.length, "blank")}
                    </button>
                  )}
                  <details>
                    <summary>show the text</summary>
                    {Object.entries(work.answers).map(([name, kept]) => (
                      <pre key={name}>{kept.text}</pre>
                    ))}
                  </details>
                </li>
              )
            })}
          </ul>
        </div>
      )}
      {session.varied.value && (
        <div class="notice" role="status">
          <p>
            The bench runs with other values than your sheet's. The notes in the margin speak of the sheet's
            own values.{" "}
            <button type="button" class="word-button" onClick={session.resetParameters}>
              back to the sheet's values
            </button>
          </p>
        </div>
      )}
    </>
  )
}

function blankNames(session: Session): Record<string, true> {
  const names: Record<string, true> = {}
  for (const cell of session.edition.sheet.cells)
    for (const segment of cell.segments) if (segment.kind === "blank") names[segment.name] = true
  return names
}

/** The head of the sheet. */
export function Head({ session }: { session: Session }) {
  const { sheet } = session.edition
  return (
    <header class="sheet-head">
      <nav class="sheet-nav screen-only" aria-label="Page">
        <a href="#/">All worksheets</a>
        <a href="reference/index.html" target="_blank" rel="noopener">
          What a cell can call
        </a>
        <span class="keeping">{keepingWords(session.keeper.keeping.value)}</span>
        <InkChoice />
      </nav>
      <h1 tabIndex={-1} id="title">
        {sheet.title}
      </h1>
      {sheet.summary !== "" && <p class="summary">{sheet.summary}</p>}
      <StudentLine session={session} />
      <Notices session={session} />
    </header>
  )
}
