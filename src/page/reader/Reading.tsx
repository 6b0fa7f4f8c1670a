import { useMemo } from "preact/hooks"
import type { Session } from "../session.ts"
import { BenchSide } from "./BenchSide.tsx"
import { Handout } from "./Handout.tsx"
import { useCellInView } from "./inView.ts"
import { Spoken } from "./Spoken.tsx"

/** Moves focus without touching the address, which names the worksheet. */
const jump = (id: string) => () => {
  const target = document.getElementById(id)
  target?.focus()
  target?.scrollIntoView()
}

/** The reading page: handout on the left, bench on the right. */
export function Reading({ session }: { session: Session }) {
  const { sheet } = session.edition
  const names = useMemo(() => sheet.cells.map(cell => cell.name), [sheet])
  const [cell, setCell] = useCellInView(names)
  return (
    <div class="reading">
      <button type="button" class="skip" onClick={jump("handout")}>
        To the worksheet
      </button>
      <button type="button" class="skip" onClick={jump("bench")}>
        To the bench
      </button>
      <main class="handout" id="handout" tabIndex={-1}>
        <Handout session={session} onCell={setCell} />
      </main>
      <BenchSide session={session} cell={cell} />
      <Spoken session={session} />
    </div>
  )
}
