import type { Signal } from "@preact/signals"
import { useMemo, useRef } from "preact/hooks"
import {
  type Clock,
  changeSpeed,
  paceOf,
  pageBy,
  ruler,
  seekRow,
  shownInstant,
  speeds,
  speedText,
  stepRows,
  stepTo,
  togglePlay,
} from "./clock.ts"
import { type Marks, marksOf, wordsAt } from "./marks.ts"
import { decimalsFor, fixed, poweredUnit, thinSpace } from "./number.ts"
import { useWidth } from "./size.ts"
import type { Study } from "./study.ts"
import { meanStep } from "./timeline.ts"

interface Props {
  readonly study: Study
  readonly departsAt: number | null
  readonly clock: Signal<Clock>
  readonly label: (body: string) => string
}

const inset = 14
const height = 58
/** y of the ruler's edge, and of the lanes of marks above it, px */
const edge = 26
const lane = 15

/** Time as a graduated scale: a hairline to be moved along it, marks where something happens, and the keys of play. */
export function TimeBar({ study, departsAt, clock, label }: Props) {
  const marks = useMemo(() => marksOf(study, departsAt, label), [study, departsAt, label])
  const { timeline } = study
  const set = (next: Clock) => {
    clock.value = next
  }
  const onKeyDown = (event: KeyboardEvent) => {
    const act = keyAction(event, study, marks, clock.value)
    if (!act) return
    event.preventDefault()
    set(act)
  }
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: keys pressed on any control inside reach the one clock
    <div class="bn-time" onKeyDown={onKeyDown}>
      <Ruler study={study} clock={clock} marks={marks} label={label} />
      <div class="bn-keys">
        <button
          type="button"
          class="bn-key bn-key-play"
          onClick={() => set(togglePlay(clock.value, timeline))}
          aria-pressed={clock.value.playing}
        >
          {clock.value.playing ? "pause" : "play"}
        </button>
        <fieldset class="bn-pair">
          <legend>row</legend>
          <button
            type="button"
            class="bn-key"
            aria-label="−1 row"
            onClick={() => set(stepRows(clock.value, timeline, -1))}
          >
            −1
          </button>
          <button
            type="button"
            class="bn-key"
            aria-label="+1 row"
            onClick={() => set(stepRows(clock.value, timeline, 1))}
          >
            +1
          </button>
        </fieldset>
        <fieldset class="bn-pair">
          <legend>mark</legend>
          <button
            type="button"
            class="bn-key"
            aria-label="to the mark before"
            disabled={marks.instants.length === 0}
            onClick={() => set(stepTo(clock.value, marks.instants, -1))}
          >
            before
          </button>
          <button
            type="button"
            class="bn-key"
            aria-label="to the next mark"
            disabled={marks.instants.length === 0}
            onClick={() => set(stepTo(clock.value, marks.instants, 1))}
          >
            next
          </button>
        </fieldset>
        <button
          type="button"
          class="bn-key"
          aria-pressed={clock.value.loop}
          onClick={() => set({ ...clock.value, loop: !clock.value.loop })}
        >
          loop
        </button>
        <SpeedScale clock={clock} pace={paceOf(timeline)} />
      </div>
    </div>
  )
}

function Ruler({ study, clock, marks, label }: Omit<Props, "departsAt"> & { marks: Marks }) {
  const box = useRef<HTMLDivElement>(null)
  const width = useWidth(box, 560)
  const { timeline } = study
  const ticks = useMemo(() => ruler(timeline, width), [timeline, width])
  const span = timeline.end - timeline.start
  const x = (t: number) => inset + (span > 0 ? ((t - timeline.start) / span) * (width - 2 * inset) : 0)
  const instant = shownInstant(clock.value, timeline)
  const decimals = Math.min(6, Math.max(decimalsFor(meanStep(timeline)), decimalsFor(ticks.step)))
  const tickDecimals = decimalsFor(ticks.step)
  const row = timeline.rowAt(instant)
  const seconds = timeline.unit === "s"
  const time = seconds ? `${fixed(instant, decimals)}${thinSpace}s` : `row ${row + 1}`
  // while it plays, words would flash by
  const here = clock.value.playing ? "" : wordsAt(study, instant, label)
  const grab = (event: PointerEvent) => {
    const left = box.current?.getBoundingClientRect().left ?? 0
    const part = (event.clientX - left - inset) / Math.max(1, width - 2 * inset)
    clock.value = seekRow(clock.value, timeline, timeline.start + part * span)
  }
  const major = new Set(ticks.major)
  return (
    <>
      <p class="bn-readout">
        <output class="bn-instant">{time}</output>
        <span class="bn-row">
          {seconds && `row ${fixed(row + 1, 0)} of ${fixed(timeline.rows, 0)}`}
          {marks.left > 0 && `, ${fixed(marks.left, 0)} more marks not drawn`}
        </span>
        <span class="bn-here">{here}</span>
      </p>
      <div
        class="bn-ruler"
        ref={box}
        role="slider"
        tabIndex={0}
        aria-label="instant shown"
        aria-valuemin={timeline.start}
        aria-valuemax={timeline.end}
        aria-valuenow={instant}
        aria-valuetext={here ? `${time}, ${here}` : time}
        onPointerDown={event => {
          ;(event.currentTarget as Element).setPointerCapture(event.pointerId)
          grab(event)
        }}
        onPointerMove={event => event.buttons > 0 && grab(event)}
      >
        <svg width={width} height={height} viewBox={`0 0 ${width} ${height}`} aria-hidden="true">
          {marks.stretches.map((s, k) => (
            <g key={k} class="bn-stretch">
              <title>{s.words}</title>
              <path
                d={`M${x(s.from)} ${lane - 5}v10M${x(s.from)} ${lane}H${x(s.to)}M${x(s.to)} ${lane - 5}v10`}
              />
            </g>
          ))}
          {marks.marks.map((mark, k) => (
            <g
              key={k}
              class={`bn-mark bn-mark-${mark.kind}`}
              transform={`translate(${x(mark.instant)} ${lane})`}
            >
              <title>{mark.words}</title>
              <path d={markShapes[mark.kind]} />
            </g>
          ))}
          <path class="bn-edge" d={`M${inset} ${edge}H${width - inset}`} />
          {ticks.minor.map(t => (
            <path key={t} class="bn-graduation" d={`M${x(t)} ${edge}v${major.has(t) ? 12 : 6}`} />
          ))}
          {ticks.major.map((t, k) => (
            <text key={t} class="bn-graduation-text" x={x(t)} y={edge + 26} text-anchor="middle">
              {fixed(seconds ? t : t + 1, tickDecimals)}
              {k === 0 && <tspan>{seconds ? `${thinSpace}s` : ""}</tspan>}
            </text>
          ))}
          <g class="bn-hair" transform={`translate(${x(instant)} 0)`}>
            <path d={`M0 2V${edge + 14}`} />
            <path class="bn-hair-index" d={`M-5 0H5L0 8Z`} />
          </g>
        </svg>
      </div>
    </>
  )
}

/** Marks around their instant: open triangles at turning points, a filled block at rest, a crossed ring at the departure. */
const markShapes = {
  "turn-high": "M-4.5 4L0 -4L4.5 4Z",
  "turn-low": "M-4.5 -4L0 4L4.5 -4Z",
  rest: "M-3.5 -4H3.5V4H-3.5Z",
  departure: "M-4.5 0a4.5 4.5 0 1 0 9 0a4.5 4.5 0 1 0 -9 0M-8 0H8M0 -8V8",
}

function SpeedScale({ clock, pace }: { clock: Signal<Clock>; pace: number }) {
  const times =
    pace === 1 || pace === 60 ? "" : `×${thinSpace}${poweredUnit(Math.round(Math.log10(pace)), "")}`

  return (
    <fieldset class="bn-speed">
      <legend>speed{times && ` ${times}`}</legend>
      {speeds.map(speed => (
        <label key={speed}>
          <input
            type="radio"
            name="bench-speed"
            checked={clock.value.speed === speed}
            aria-label={`${speedText(speed)} ${times} times real time`.replace("  ", " ")}
            onChange={() => {
              clock.value = { ...clock.value, speed }
            }}
          />
          <span aria-hidden="true">{speedText(speed)}</span>
        </label>
      ))}
    </fieldset>
  )
}

/** What a key does to the clock; null for a key that is not ours here. */
function keyAction(event: KeyboardEvent, study: Study, marks: Marks, clock: Clock): Clock | null {
  if (event.ctrlKey || event.metaKey || event.altKey) return null
  const { timeline } = study
  const target = event.target as HTMLElement
  const onRuler = target.getAttribute("role") === "slider"
  const span = timeline.end - timeline.start
  switch (event.key) {
    case " ":
      return onRuler ? togglePlay(clock, timeline) : null
    case "l":
      return { ...clock, loop: !clock.loop }
    case "+":
    case "=":
      return changeSpeed(clock, 1)
    case "-":
      return changeSpeed(clock, -1)
  }
  if (!onRuler) return null
  switch (event.key) {
    case "ArrowRight":
    case "ArrowUp":
      return event.shiftKey ? stepTo(clock, marks.instants, 1) : stepRows(clock, timeline, 1)
    case "ArrowLeft":
    case "ArrowDown":
      return event.shiftKey ? stepTo(clock, marks.instants, -1) : stepRows(clock, timeline, -1)
    case "PageUp":
      return pageBy(clock, timeline, span / 20)
    case "PageDown":
      return pageBy(clock, timeline, -span / 20)
    case "Home":
      return seekRow(clock, timeline, timeline.start)
    case "End":
      return seekRow(clock, timeline, timeline.end)
    default:
      return null
  }
}
