import type { CellSource } from "../../cell/contract.ts"
import type { Check } from "../../worksheet/contract.ts"
import type { Session } from "../session.ts"
import { untouched } from "../tried.ts"
import { plural, pointsWords, verdictWords } from "../words.ts"
import { blankOf } from "./notes.ts"
import { openWords } from "./sheetValues.ts"
import { VerdictMark } from "./VerdictMark.tsx"

/** What will be looked at in a cell, with points, and what came of it. */
export function Checks(props: { cell: CellSource; checks: readonly Check[]; session: Session }) {
  const { cell, checks, session } = props
  if (checks.length === 0) return null
  const standing = session.standing.value
  const stale = standing !== null && !standing.current
  const open = checks
    .map(check => {
      const verdict = standing?.judgement.checks.find(candidate => candidate.name === check.name)?.verdict
      return verdict ? openWords(session.edition.sheet, check, verdict) : ""
    })
    .find(words => words !== "")
  const empty = untouched(session.edition, session.keeper.answers.value)
  return (
    <div class="checks">
      <p class="checks-title">
        <span class="caps">What will be looked at</span>
        {stale && <i class="checks-stale">not looked at since your last change</i>}
      </p>
      <ul>
        {checks.map(check => {
          const found = standing?.judgement.checks.find(candidate => candidate.name === check.name) ?? null
          const blank = blankOf(cell, check, found, session.reference)
          const due = found?.verdict === "met" || blank === null || !empty.has(blank)
          const result = due && !stale ? found : null
          return (
            <li key={check.name} class="check">
              <VerdictMark verdict={result?.verdict ?? null} />
              <span class="check-says">{check.says === "" ? check.name : check.says}</span>
              <span class={`check-verdict verdict-word-${(result?.verdict ?? "none").replaceAll(" ", "-")}`}>
                {result ? verdictWords(result.verdict) : "not yet"}
              </span>
              <span class="check-points">
                {result ? pointsWords(result.points, result.outOf) : plural(check.points, "point")}
              </span>
            </li>
          )
        })}
      </ul>
      {open && !stale && <p class="checks-open">{open}</p>}
    </div>
  )
}
