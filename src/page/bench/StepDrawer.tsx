import { useMemo } from "preact/hooks"
import type { Recording } from "../../run/contract.ts"
import type { StepStudying } from "../stepping.ts"
import { quantity, significant } from "./number.ts"
import { type StepRow, type StepStudy, stepStudy } from "./step-study.ts"
import { orderText, stepWords } from "./step-words.ts"

interface Props {
  readonly stepping: StepStudying
  readonly cell: string
  /** the name of the time step */
  readonly dt: string
  readonly label: (body: string) => string
  /** the same as it stands in a sentence */
  readonly inSentence: (body: string) => string
}

/** The run at dt, dt/2 and dt/4: what changes, and what order that shows. */
export function StepDrawer({ stepping, cell, dt, label, inSentence }: Props) {
  const state = stepping.state.value
  return (
    <>
      <p class="bn-actions">
        {state.kind === "running" ? (
          <button type="button" class="bn-key" onClick={stepping.cancel}>
            stop
          </button>
        ) : (
          <button type="button" class="bn-key" onClick={stepping.start}>
            run with {dt}, {dt}/2 and {dt}/4
          </button>
        )}
        <span class="bn-note" role="status">
          {state.kind === "running" && `run ${state.done + 1} of ${state.of} is under way`}
          {state.kind === "done" && !state.current && "Below is the study of an earlier run."}
        </span>
      </p>
      {state.kind === "failed" && (
        <p class="bn-warn">
          {state.why.text} {state.why.todo}
        </p>
      )}
      {state.kind === "done" && (
        <Found runs={state.runs} cell={cell} dt={dt} label={label} inSentence={inSentence} />
      )}
    </>
  )
}

function Found({
  runs,
  cell,
  dt,
  label,
  inSentence,
}: Omit<Props, "stepping"> & { runs: readonly (readonly Recording[])[] }) {
  const study = useMemo(() => {
    const [a, b, c] = runs.map(run => run.find(recording => recording.cell === cell))
    return a && b && c ? stepStudy([a, b, c]) : null
  }, [runs, cell])
  if (!study)
    return (
      <p class="bn-note">
        Cell {cell} was not recorded at a common time in all three runs, so they cannot be compared.
      </p>
    )
  return (
    <>
      {stepWords(study, dt, inSentence).map(text => (
        <p key={text} class="bn-text">
          {text}
        </p>
      ))}
      <StepTable study={study} dt={dt} label={label} />
    </>
  )
}

function StepTable({ study, dt, label }: { study: StepStudy; dt: string; label: (body: string) => string }) {
  return (
    <div class="bn-steps">
      <table>
        <caption>What a shorter step changes</caption>
        <thead>
          <tr>
            <th scope="col">quantity</th>
            <th scope="col">{dt}</th>
            <th scope="col">{dt}/2</th>
            <th scope="col">{dt}/4</th>
            <th scope="col">changes by</th>
            <th scope="col">then by</th>
            <th scope="col">order</th>
          </tr>
        </thead>
        <tbody>
          {study.places.map(row => (
            <tr key={row.body}>
              <th scope="row">place of {label(row.body)}</th>
              <td colSpan={3}>{quantity(study.at, "s", 4)}</td>
              <Changes row={row} />
            </tr>
          ))}
          {study.others.map(row => (
            <tr key={row.quantity}>
              <th scope="row">{row.quantity}</th>
              {row.values.map((value, k) => (
                <td key={k}>{quantity(value, row.unit, 5)}</td>
              ))}
              <Changes row={row} />
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  )
}

function Changes({ row }: { row: StepRow }) {
  return (
    <>
      {row.changes.map((change, k) => (
        <td key={k}>{row.order.kind === "exact" ? significant(0) : quantity(change, row.unit, 2)}</td>
      ))}
      <td>{orderText(row.order)}</td>
    </>
  )
}
