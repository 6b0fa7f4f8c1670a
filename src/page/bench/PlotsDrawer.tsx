import type { Signal } from "@preact/signals"
import { useMemo, useState } from "preact/hooks"
import type { PlotBlock } from "../../worksheet/contract.ts"
import type { Clock } from "./clock.ts"
import { Plot } from "./Plot.tsx"
import type { PlotWish } from "./plot-model.ts"
import { mainQuantity, type Quantity } from "./quantities.ts"
import type { Study } from "./study.ts"

export interface Measured {
  readonly study: Study
  readonly quantities: readonly Quantity[]
}

/** The worksheet's plots, or one that suits the motion; and those that the reader adds. */
export function PlotsDrawer({
  own,
  reference,
  blocks,
  clock,
}: {
  own: Measured
  reference: Measured | null
  blocks: readonly PlotBlock[]
  clock: Signal<Clock>
}) {
  const [added, setAdded] = useState<readonly PlotWish[]>([])
  const main = useMemo(() => mainQuantity(own.study, own.quantities)?.id ?? "", [own])
  const usual = useMemo<PlotWish[]>(
    () => (blocks.length > 0 ? [...blocks] : [{ x: "t", y: [main], caption: "" }]),
    [blocks, main],
  )
  return (
    <>
      {usual.map((wish, k) => (
        <Plot key={k} {...own} reference={reference} wish={wish} clock={clock} />
      ))}
      {added.map((wish, k) => (
        <Plot
          key={`${wish.x} ${wish.y[0]}`}
          {...own}
          reference={reference}
          wish={wish}
          clock={clock}
          onRemove={() => setAdded(added.filter((_, n) => n !== k))}
        />
      ))}
      <AddPlot quantities={own.quantities} onAdd={wish => setAdded([...added, wish])} />
    </>
  )
}

function AddPlot({
  quantities,
  onAdd,
}: {
  quantities: readonly Quantity[]
  onAdd: (wish: PlotWish) => void
}) {
  const [y, setY] = useState("")
  const [x, setX] = useState("t")
  const up = quantities.some(q => q.id === y) ? y : (quantities[1]?.id ?? "t")
  const across = quantities.some(q => q.id === x) ? x : "t"
  return (
    <form
      class="bn-add-plot"
      onSubmit={event => {
        event.preventDefault()
        onAdd({ x: across, y: [up], caption: "" })
      }}
    >
      <Choice name="Plot" quantities={quantities} value={up} onChange={setY} />
      <Choice name="against" quantities={quantities} value={across} onChange={setX} />
      <button type="submit" class="bn-key">
        add
      </button>
    </form>
  )
}

function Choice({
  name,
  quantities,
  value,
  onChange,
}: {
  name: string
  quantities: readonly Quantity[]
  value: string
  onChange: (id: string) => void
}) {
  return (
    <label>
      <span>{name}</span>
      <select value={value} onChange={event => onChange(event.currentTarget.value)}>
        {quantities.map(q => (
          <option key={q.id} value={q.id}>
            {q.label}
          </option>
        ))}
      </select>
    </label>
  )
}
