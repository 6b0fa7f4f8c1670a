import type { CellEquations } from "./equations.ts"

/** Whether a listing's lines are shown as equations, and the same as a list that is read out. */
export function EquationsBelow({ equations, number }: { equations: CellEquations; number: number }) {
  const wanted = equations.wanted.value
  return (
    <>
      <button type="button" class="word-button" onClick={equations.toggle}>
        {wanted ? "put the equations away" : "lines as equations"}
      </button>
      {wanted && equations.list.value.length > 0 && (
        <div class="unseen">
          <p>Equations of listing {number}</p>
          <ol>
            {equations.list.value.map(one => (
              <li key={one.from}>
                line {one.line}: {one.words}
              </li>
            ))}
          </ol>
        </div>
      )}
    </>
  )
}
