import type { Signal } from "@preact/signals"
import { useEffect, useId, useMemo, useRef, useState } from "preact/hooks"
import type { DataBlock, PlotBlock } from "../../worksheet/contract.ts"
import type { Clock } from "./clock.ts"
import { type Constant, quantityFor, readExpression, vectorNames } from "./expression.ts"
import { overlaysOf } from "./overlay.ts"
import { Plot } from "./Plot.tsx"
import type { PlotWish } from "./plot-model.ts"
import { mainQuantity, type Quantity } from "./quantities.ts"
import type { Study } from "./study.ts"

export interface Measured {
  readonly study: Study
  readonly quantities: readonly Quantity[]
}

/** A plot of a variable that was sent here from its line. */
export interface SentPlot {
  readonly key: string
  readonly name: string
  /** null until its values are found for the run shown */
  readonly wish: PlotWish | null
  /** the program has no such variable any more */
  readonly lost: boolean
}

/** The worksheet's plots, or one that suits the motion; variables that were sent here; and those that the reader adds. */
export function PlotsDrawer({
  own,
  reference,
  blocks,
  data,
  constants,
  sent,
  onDrop,
  clock,
}: {
  own: Measured
  reference: Measured | null
  blocks: readonly PlotBlock[]
  data: readonly DataBlock[]
  constants: readonly Constant[]
  sent: readonly SentPlot[]
  onDrop: (key: string) => void
  clock: Signal<Clock>
}) {
  const [added, setAdded] = useState<readonly PlotWish[]>([])
  const main = useMemo(() => mainQuantity(own.study, own.quantities)?.id ?? "", [own])
  const usual = useMemo<PlotWish[]>(
    () => (blocks.length > 0 ? [...blocks] : [{ x: "t", y: [main], caption: "" }]),
    [blocks, main],
  )
  const overlays = useMemo(() => overlaysOf(data), [data])
  const shared = { ...own, reference, clock, constants, overlays }
  return (
    <>
      {usual.map((wish, k) => (
        <Plot key={k} {...shared} wish={wish} />
      ))}
      {sent.map(({ key, name, wish, lost }) => (
        <Arriving key={key}>
          {wish ? (
            <Plot {...shared} reference={null} wish={wish} onRemove={() => onDrop(key)} />
          ) : (
            <p class={lost ? "bn-note" : "bn-note bn-plot-waits"}>
              {lost
                ? `No line that runs sets ${name} to a number or vector now. `
                : `The values of ${name} are being found. `}
              <button type="button" class="bn-quiet" onClick={() => onDrop(key)}>
                take this plot away
              </button>
            </p>
          )}
        </Arriving>
      ))}
      {added.map((wish, k) => (
        <Plot
          key={`${wish.x} ${wish.y[0]}`}
          {...shared}
          wish={wish}
          onRemove={() => setAdded(added.filter((_, n) => n !== k))}
        />
      ))}
      <AddPlot
        quantities={own.quantities}
        constants={constants}
        onAdd={wish => {
          if (!added.some(one => one.x === wish.x && one.y[0] === wish.y[0])) setAdded([...added, wish])
        }}
      />
    </>
  )
}

/** What was just sent here is brought into view. */
function Arriving({ children }: { children: preact.ComponentChildren }) {
  const place = useRef<HTMLDivElement>(null)
  useEffect(() => place.current?.scrollIntoView({ block: "nearest" }), [])
  return (
    <div class="bn-arriving" ref={place}>
      {children}
    </div>
  )
}

/** Any recorded name, or an expression of such names, against time or another. */
function AddPlot({
  quantities,
  constants,
  onAdd,
}: {
  quantities: readonly Quantity[]
  constants: readonly Constant[]
  onAdd: (wish: PlotWish) => void
}) {
  const [y, setY] = useState("")
  const [x, setX] = useState("t")
  const [why, setWhy] = useState("")
  const id = useId()
  const names = useMemo(() => quantities.map(q => ({ id: q.id, label: q.label })), [quantities])
  const add = (event: Event): void => {
    event.preventDefault()
    for (const text of [y, x]) {
      if (quantityFor(text.trim(), quantities, constants)) continue
      const read = readExpression(text, quantities, constants)
      setWhy(read.ok ? "" : read.why)
      return
    }
    setWhy("")
    setY("")
    onAdd({ x: x.trim(), y: [y.trim()], caption: "" })
  }
  const field = (name: string, value: string, set: (text: string) => void) => (
    <label>
      <span>{name}</span>
      <input
        type="text"
        list={`${id}-names`}
        value={value}
        spellcheck={false}
        autocapitalize="off"
        autocomplete="off"
        aria-describedby={why === "" ? undefined : `${id}-why`}
        onInput={event => set(event.currentTarget.value)}
      />
    </label>
  )
  return (
    <form class="bn-add-plot" onSubmit={add}>
      {field("Plot", y, setY)}
      {field("against", x, setX)}
      <datalist id={`${id}-names`}>
        {names.map(one => (
          <option key={one.id} value={one.id}>
            {one.label}
          </option>
        ))}
      </datalist>
      <button type="submit" class="bn-key">
        add
      </button>
      <p class="bn-note bn-add-hint">A recorded name, or an expression such as {exampleOf(quantities)}.</p>
      <p id={`${id}-why`} class="bn-warn" role="alert">
        {why}
      </p>
    </form>
  )
}

function exampleOf(quantities: readonly Quantity[]): string {
  const vector =
    vectorNames(quantities).find(name => name.endsWith(".momentum")) ?? vectorNames(quantities)[0]
  return vector ? `magnitude(${vector})^2 / 2` : `2 * ${quantities[1]?.id ?? "t"}`
}
