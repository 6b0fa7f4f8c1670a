import type { Check } from "../../worksheet/contract.ts"
import type { Standing } from "../session.ts"
import { plural, pointsWords, verdictWords } from "../words.ts"
import { VerdictMark } from "./VerdictMark.tsx"

/** What will be looked at in a cell, with points, and what came of it. */
export function Checks({ checks, standing }: { checks: readonly Check[]; standing: Standing | null }) {
  if (checks.length === 0) return null
  return (
    <div class="checks">
      <p class="checks-title caps">What will be looked at</p>
      <ul>
        {checks.map(check => {
          const result = standing?.judgement.checks.find(candidate => candidate.name === check.name) ?? null
          return (
            <li key={check.name} class={standing && !standing.current ? "check stale" : "check"}>
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
    </div>
  )
}
