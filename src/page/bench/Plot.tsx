import type { Signal } from "@preact/signals"
import { useEffect, useMemo, useRef, useState } from "preact/hooks"
import { type Clock, seek } from "./clock.ts"
import { quantity } from "./number.ts"
import { nearestRow, type PlotLine, type PlotModel, type PlotWish, plotModel } from "./plot-model.ts"
import type { Ink, Quantity } from "./quantities.ts"
import { plotCsv, plotSvg, saveText } from "./save.ts"
import { useWidth } from "./size.ts"
import type { Study } from "./study.ts"

interface Props {
  readonly study: Study
  readonly quantities: readonly Quantity[]
  readonly reference: { readonly study: Study; readonly quantities: readonly Quantity[] } | null
  readonly wish: PlotWish
  readonly clock: Signal<Clock>
  readonly height?: number
  readonly onRemove?: () => void
}

interface Drawn {
  readonly x: (value: number) => number
  readonly y: (value: number) => number
  readonly top: number
  readonly bottom: number
}

const inkOf: Record<Ink, string> = {
  position: "var(--q-position)",
  velocity: "var(--q-velocity)",
  momentum: "var(--q-momentum)",
  force: "var(--q-force)",
  net: "var(--q-net-force)",
  energy: "var(--q-energy)",
  scalar: "var(--ink)",
}

const margins = { marginLeft: 54, marginRight: 14, marginTop: 22, marginBottom: 34 }

/** A plot with its axes, the reference in long dashes, and a hairline at the instant shown; a press moves the time. */
export function Plot({ study, quantities, reference, wish, clock, height = 196, onRemove }: Props) {
  const box = useRef<HTMLDivElement>(null)
  const field = useRef<HTMLDivElement>(null)
  const width = useWidth(box, 560)
  const [drawn, setDrawn] = useState<Drawn | null>(null)
  const model = useMemo(() => plotModel(study, quantities, wish, width), [study, quantities, wish, width])
  const other = useMemo(
    () => reference && plotModel(reference.study, reference.quantities, wish, width),
    [reference, wish, width],
  )
  useEffect(() => {
    let gone = false
    if (model && field.current)
      draw(model, other, width, height).then(({ element, scales }) => {
        if (gone) return
        field.current?.replaceChildren(element)
        setDrawn(scales)
      })
    return () => {
      gone = true
    }
  }, [model, other, width, height])
  if (!model)
    return (
      <p class="bn-note">
        Nothing is recorded under {[wish.x, ...wish.y].join(", ")}. Plots name what the program records.
      </p>
    )
  const file = `${study.recording.cell}-${wish.y.join("-")}`
  const saveCsv = () => saveText(`${file}.csv`, "text/csv", plotCsv(model, study.recording.rows))
  const saveSvg = () => {
    const svg = field.current?.querySelector("svg")
    if (svg) saveText(`${file}.svg`, "image/svg+xml", plotSvg(svg))
  }
  const point = (event: PointerEvent) => {
    const frame = field.current?.getBoundingClientRect()
    if (!drawn || !frame) return
    const row = nearestRow(study, model, event.clientX - frame.left, event.clientY - frame.top, drawn)
    clock.value = { ...seek(clock.value, study.timeline, study.timeline.at(row)), playing: false }
  }
  return (
    <figure class="bn-plot">
      <div
        class="bn-plot-field"
        ref={box}
        style={{ height }}
        onPointerDown={event => {
          ;(event.currentTarget as Element).setPointerCapture(event.pointerId)
          point(event)
        }}
        onPointerMove={event => event.buttons > 0 && point(event)}
      >
        <div ref={field} />
        {drawn && (
          <Hair study={study} model={model} drawn={drawn} clock={clock} width={width} height={height} />
        )}
      </div>
      <figcaption>
        <Readings study={study} model={model} clock={clock} reference={other !== null} />
        {wish.caption && <p class="bn-caption">{wish.caption}</p>}
        {model.missing.length > 0 && <p class="bn-note">Not recorded: {model.missing.join(", ")}.</p>}
        <p class="bn-plot-actions">
          <button type="button" class="bn-quiet" onClick={saveCsv}>
            save as CSV
          </button>
          <button type="button" class="bn-quiet" onClick={saveSvg}>
            save as SVG
          </button>
          {onRemove && (
            <button type="button" class="bn-quiet" onClick={onRemove}>
              take this plot away
            </button>
          )}
        </p>
      </figcaption>
    </figure>
  )
}

/** Observable Plot comes with the first plot, not with the page. */
async function draw(model: PlotModel, other: PlotModel | null, width: number, height: number) {
  const plot = await import("@observablehq/plot")
  const line = ({ points, dash, quantity: q }: PlotLine) =>
    plot.line(
      { length: points.x.length },
      {
        x: points.x,
        y: points.y,
        stroke: inkOf[q.ink],
        strokeWidth: 1.5,
        strokeDasharray: dash,
      },
    )
  const theirs = (other?.lines ?? []).map(({ points }) =>
    plot.line(
      { length: points.x.length },
      {
        x: points.x,
        y: points.y,
        stroke: "var(--q-reference)",
        strokeWidth: 1.5,
        strokeDasharray: "9 5",
      },
    ),
  )
  const element = plot.plot({
    width,
    height,
    ...margins,
    className: "bn-plot-svg",
    ariaLabel: `${model.yLabel || model.lines.map(l => l.quantity.label).join(", ")} against ${model.xLabel}`,
    x: { label: model.xLabel, labelArrow: "none", ticks: Math.max(3, Math.floor(width / 90)), tickSize: 5 },
    y: {
      label: model.yLabel,
      labelArrow: "none",
      ticks: Math.max(3, Math.floor(height / 38)),
      tickSize: 5,
      nice: true,
    },
    marks: [
      plot.axisX({ anchor: "bottom", label: model.xLabel, labelArrow: "none", tickSize: 5 }),
      plot.axisY({ anchor: "left", label: model.yLabel, labelArrow: "none", tickSize: 5 }),
      plot.ruleY([0], { stroke: "var(--plate-hair)" }),
      ...theirs,
      ...model.lines.map(line),
    ],
  })
  element.setAttribute("role", "img")
  for (const part of element.querySelectorAll("g[aria-label]")) part.removeAttribute("aria-label")
  const [x, y] = [element.scale("x"), element.scale("y")]
  const scales: Drawn = {
    x: value => Number(x?.apply(value)),
    y: value => Number(y?.apply(value)),
    top: margins.marginTop,
    bottom: height - margins.marginBottom,
  }
  return { element, scales }
}

function Hair({
  study,
  model,
  drawn,
  clock,
  width,
  height,
}: {
  study: Study
  model: PlotModel
  drawn: Drawn
  clock: Signal<Clock>
  width: number
  height: number
}) {
  const { instant } = clock.value
  const row = study.timeline.rowAt(instant)
  const x = drawn.x(model.x.id === "t" ? instant : model.x.read(row))
  if (!Number.isFinite(x)) return null
  return (
    <svg class="bn-plot-hair" width={width} height={height} aria-hidden="true">
      <path d={`M${x} ${drawn.top}V${drawn.bottom}`} />
      {model.lines.map(({ quantity: q }) => {
        const y = drawn.y(q.read(row))
        return (
          Number.isFinite(y) && <circle key={q.id} cx={x} cy={y} r={3} style={{ stroke: inkOf[q.ink] }} />
        )
      })}
    </svg>
  )
}

/** Each line with its sample and its value at the instant shown. */
function Readings({
  study,
  model,
  clock,
  reference,
}: {
  study: Study
  model: PlotModel
  clock: Signal<Clock>
  reference: boolean
}) {
  const row = study.timeline.rowAt(clock.value.instant)
  return (
    <ul class="bn-readings">
      {model.lines.map(({ quantity: q, dash }) => (
        <li key={q.id}>
          <svg width="26" height="8" aria-hidden="true">
            <path d="M0 4H26" style={{ stroke: inkOf[q.ink], strokeDasharray: dash }} />
          </svg>
          <span>{q.label}</span> <span class="bn-value">{quantity(q.read(row), q.unit)}</span>
        </li>
      ))}
      {reference && (
        <li>
          <svg width="26" height="8" aria-hidden="true">
            <path class="bn-way-reference" d="M0 4H26" />
          </svg>
          <span>reference</span>
        </li>
      )}
    </ul>
  )
}
