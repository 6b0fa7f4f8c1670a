import type { Problem } from "../cell/problem.ts"

/** A problem in words: what was seen, and what to do. */
export function ProblemWords({ problem }: { problem: Problem }) {
  return (
    <div class="problem" data-code={problem.code}>
      <p>{problem.text}</p>
      <p class="todo">{problem.todo}</p>
    </div>
  )
}
