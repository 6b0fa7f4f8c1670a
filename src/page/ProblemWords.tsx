import type { Problem } from "../cell/problem.ts"

/** To the page that says what a message means, with an example. */
export function ProblemLink({ code }: { code: string }) {
  return (
    <a class="problem-link" href={`problems/${code}.html`} target="_blank" rel="noopener">
      what this means
    </a>
  )
}

/** A problem in words: what was seen, and what to do. */
export function ProblemWords({ problem }: { problem: Problem }) {
  return (
    <div class="problem" data-code={problem.code}>
      <p>{problem.text}</p>
      <p class="todo">
        {problem.todo} <ProblemLink code={problem.code} />
      </p>
    </div>
  )
}
