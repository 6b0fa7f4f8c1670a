import { useEffect, useState } from "preact/hooks"
import type { Session } from "../session.ts"
import { pointsWords, verdictWords } from "../words.ts"

/** What a screen reader is told, politely and once: a new verdict, or why the program stopped. */
export function Spoken({ session }: { session: Session }) {
  const [words, setWords] = useState("")
  const standing = session.standing.value
  const problem = session.problems.value[0] ?? session.misfits.value[0]
  const next = problem
    ? `${problem.where ? `Line ${problem.where.line} of ${problem.where.cell ?? "the listing"}: ` : ""}${problem.text}`
    : standing?.current
      ? [
          pointsWords(standing.judgement.points, standing.judgement.outOf),
          ...standing.judgement.checks.map(check => `${check.name} ${verdictWords(check.verdict)}`),
        ].join("; ")
      : ""
  useEffect(() => {
    if (next !== "") setWords(next)
  }, [next])
  return (
    <p class="unseen" aria-live="polite">
      {words}
    </p>
  )
}
