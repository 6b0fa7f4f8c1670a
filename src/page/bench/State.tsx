import type { Problem } from "../../cell/problem.ts"
import type { StudentSheet } from "../../worksheet/contract.ts"
import type { BenchProps } from "./contract.ts"

/** What the bench stands at: whose motion is shown, how the last run went, and the key that runs or stops. */
export function StateLine({
  cell,
  shownCell,
  state,
  running,
  onRun,
  onStop,
}: BenchProps & { readonly shownCell: string }) {
  return (
    <header class="bn-state">
      <p class="bn-of">
        motion of cell <b>{shownCell}</b>
        {shownCell !== cell && <span class="bn-elsewhere"> (cell {cell} records nothing)</span>}
      </p>
      <p class="bn-run-words" role="status">
        {running ? "running" : state}
      </p>
      {running ? (
        <button type="button" class="bn-key" onClick={onStop}>
          stop
        </button>
      ) : (
        <button type="button" class="bn-key" onClick={onRun}>
          run
        </button>
      )}
    </header>
  )
}

/** Nothing is recorded yet: what to do for something to appear. */
export function EmptyBench({
  sheet,
  cell,
  running,
}: {
  sheet: StudentSheet
  cell: string
  running: boolean
}) {
  const blank = sheet.cells.find(c => c.name === cell)?.segments.find(s => s.kind === "blank")
  return (
    <div class="bn-empty">
      <p class="bn-empty-head">{running ? "The program runs." : "Nothing is recorded yet."}</p>
      <p>
        {blank
          ? `Fill the blank “${blank.name}” in cell ${cell}. The motion appears here as soon as the program calls record.`
          : "The motion appears here as soon as the program calls record. Fill the blanks of the cells above, or run it."}
      </p>
    </div>
  )
}

/** Why the run stopped early, in words; and that what was recorded until then is kept. */
export function ProblemNote({ problem, kept }: { problem: Problem; kept: boolean }) {
  const { where } = problem
  return (
    <div class="bn-problem" role="alert">
      <p class="bn-problem-text">
        {problem.text}
        {where?.cell && (
          <span class="bn-where">
            {" "}
            Cell {where.cell}, line {where.line}.
          </span>
        )}
      </p>
      <p>{problem.todo}</p>
      {kept && <p class="bn-kept">Shown is what was recorded until then.</p>}
    </div>
  )
}
