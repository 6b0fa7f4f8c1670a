import type { Signal } from "@preact/signals"
import { useEffect, useMemo, useRef, useState } from "preact/hooks"
import { type Clock, seek } from "./clock.ts"
import { type Drawn, draw, drawResidual, inkOf } from "./draw-plot.ts"
import type { Constant } from "./expression.ts"
import { quantity } from "./number.ts"
import { departureOf, type Overlay, residualOf, usualOverlay } from "./overlay.ts"
import { nearestRow, type PlotModel, type PlotWish, plotModel } from "./plot-model.ts"
import type { Quantity } from "./quantities.ts"
import { plotCsv, plotPng, plotSvg, saveBlob, saveText } from "./save.ts"
import { useWidth } from "./size.ts"
import type { Study } from "./study.ts"

interface Props {
  readonly study: Study
  readonly quantities: readonly Quantity[]
  readonly reference: { readonly study: Study; readonly quantities: readonly Quantity[] } | null
  readonly wish: PlotWish
  readonly clock: Signal<Clock>
  readonly height?: number
  /** parameters that expressions may name */
  readonly constants?: readonly Constant[]
  /** columns of the worksheet's data that can be laid over it */
  readonly overlays?: readonly Overlay[]
  readonly onRemove?: () => void
}

const none: readonly never[] = []

/** A plot with its axes, the reference in long dashes, and a hairline at the instant shown; a press moves the time. */
export function Plot({
  study,
  quantities,
  reference,
  wish,
  clock,
  height = 196,
  constants = none,
  overlays = none,
  onRemove,
}: Props) {
  const box = useRef<HTMLDivElement>(null)
  const field = useRef<HTMLDivElement>(null)
  const width = useWidth(box, 560)
  const [drawn, setDrawn] = useState<Drawn | null>(null)
  const model = useMemo(
    () => plotModel(study, quantities, wish, width, constants),
    [study, quantities, wish, width, constants],
  )
  const other = useMemo(
    () => reference && plotModel(reference.study, reference.quantities, wish, width, constants),
    [reference, wish, width, constants],
  )
  const usual = useMemo(
    () => (model ? usualOverlay(overlays, wish.x, wish.y, model.lines[0]?.quantity.unit ?? "") : null),
    [overlays, wish, model],
  )
  /** undefined until the reader chooses */
  const [chosen, setChosen] = useState<Overlay | null | undefined>(undefined)
  const overlay = chosen === undefined ? usual : chosen
  useEffect(() => {
    let gone = false
    if (model && field.current)
      draw(model, other, overlay, width, height).then(({ element, scales }) => {
        if (gone) return
        field.current?.replaceChildren(element)
        setDrawn(scales)
      })
    return () => {
      gone = true
    }
  }, [model, other, overlay, width, height])
  const [below, setBelow] = useState(false)
  const left = useMemo(() => {
    if (!below || !model) return null
    if (overlay) return residualOf(study, model, overlay)
    return reference && other ? departureOf(study, model, { study: reference.study, model: other }) : null
  }, [below, model, overlay, study, reference, other])
  const strip = useRef<HTMLDivElement>(null)
  useEffect(() => {
    let gone = false
    if (left && drawn)
      drawResidual(left, drawn.domain, width).then(element => {
        if (!gone) strip.current?.replaceChildren(element)
      })
    return () => {
      gone = true
    }
  }, [left, drawn, width])
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
  const savePng = async () => {
    const svg = field.current?.querySelector("svg")
    if (svg) saveBlob(`${file}.png`, await plotPng(svg))
  }
  const comparable = model.x.id === "t" && (overlay !== null || other !== null)
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
      {left && (
        <>
          <div ref={strip} class="bn-plot-residual" />
          <p class="bn-caption">
            {left.label}; root mean square {quantity(left.rms, left.unit, 2)}
          </p>
        </>
      )}
      {below && !left && comparable && <p class="bn-note">They share no time, so nothing is left to show.</p>}
      <figcaption>
        <Readings study={study} model={model} clock={clock} reference={other !== null} overlay={overlay} />
        {wish.caption && <p class="bn-caption">{wish.caption}</p>}
        {model.missing.length > 0 && <p class="bn-note">Not recorded: {model.missing.join(", ")}.</p>}
        <p class="bn-plot-actions">
          <button type="button" class="bn-quiet" onClick={saveCsv}>
            save as CSV
          </button>
          <button type="button" class="bn-quiet" onClick={saveSvg}>
            save as SVG
          </button>
          <button type="button" class="bn-quiet" onClick={savePng}>
            save as PNG
          </button>
          {comparable && (
            <button type="button" class="bn-quiet" aria-pressed={below} onClick={() => setBelow(!below)}>
              {below ? "without what is left" : "what is left, below"}
            </button>
          )}
          {onRemove && (
            <button type="button" class="bn-quiet" onClick={onRemove}>
              take this plot away
            </button>
          )}
        </p>
        {overlays.length > 0 && model.x.id === "t" && (
          <label class="bn-choose">
            <span>laid over</span>
            <select
              value={overlay ? overlay.label : ""}
              onChange={event =>
                setChosen(overlays.find(one => one.label === event.currentTarget.value) ?? null)
              }
            >
              <option value="">no data</option>
              {overlays.map(one => (
                <option key={one.label} value={one.label}>
                  {one.label}
                </option>
              ))}
            </select>
          </label>
        )}
      </figcaption>
    </figure>
  )
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
  const row = study.timeline.rowAt(clock.value.instant)
  const x = drawn.x(model.x.read(row))
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
  overlay,
}: {
  study: Study
  model: PlotModel
  clock: Signal<Clock>
  reference: boolean
  overlay: Overlay | null
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
      {overlay && (
        <li>
          <svg width="26" height="8" aria-hidden="true">
            <path class="bn-measured" d="M10 1l6 6M16 1l-6 6" />
          </svg>
          <span>{overlay.label}, measured</span>
        </li>
      )}
    </ul>
  )
}
