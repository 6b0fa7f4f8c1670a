import "../../../src/page/fonts.css"
import "../../../src/page/tokens.css"
import "../../../src/page/base.css"
import { signal } from "@preact/signals"
import { render } from "preact"
import { Bench } from "../../../src/page/bench/Bench.tsx"
import type { Recording } from "../../../src/run/contract.ts"
import { cases } from "./cases.ts"

const wanted = new URLSearchParams(location.search).get("case") ?? "bounce"
const fixture = (cases[wanted] ?? cases.bounce!)()
const home = Object.fromEntries(fixture.sheet.parameters.map(p => [p.name, p.value]))
const parameters = signal<Record<string, number>>(home)
const recordings = signal<readonly Recording[]>(fixture.run(home))
const ghost = signal<readonly Recording[] | null>(fixture.ghost ?? null)

function set(values: Record<string, number>): void {
  parameters.value = values
  ghost.value = recordings.value
  recordings.value = fixture.run(values)
}

function Page() {
  const [recording] = recordings.value
  return (
    <main>
      <h1 class="off-screen">Bench</h1>
      <Bench
        sheet={fixture.sheet}
        cell={fixture.sheet.cells[0]?.name ?? ""}
        recordings={recordings.value}
        ghost={ghost.value}
        reference={
          fixture.reference ? { parameters: home, factors: [1], runs: [fixture.reference], slips: [] } : null
        }
        departures={fixture.departures ?? []}
        parameters={parameters.value}
        onParameter={(name, value) => set({ ...parameters.value, [name]: value })}
        onResetParameters={() => set(home)}
        state={recording ? `run ${recording.rows.toLocaleString("en")} steps in 2 ms` : ""}
        running={false}
        onRun={() => set(parameters.value)}
        onStop={() => undefined}
        problem={fixture.problem ?? null}
      />
    </main>
  )
}

render(<Page />, document.getElementById("page")!)
