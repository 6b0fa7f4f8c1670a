import { type Signal, useComputed } from "@preact/signals"
import { useMemo, useRef, useState } from "preact/hooks"
import type { Scene as SceneBlock } from "../../worksheet/contract.ts"
import { hasDepth, middleOf, sceneBox, seenExtent } from "./box.ts"
import type { Clock } from "./clock.ts"
import type { Departure as FirstDeparture } from "./departures.ts"
import { type Extent, pan, seen, sizeOf, type View, viewOf, zoom } from "./framing.ts"
import { quantity } from "./number.ts"
import { sceneExtent } from "./picture.ts"
import { SceneGround } from "./SceneGround.tsx"
import { Departure, Moving, StrobeImages, Ways } from "./SceneMotion.tsx"
import { Plumbs, SceneRoom } from "./SceneRoom.tsx"
import type { Shown } from "./shown.ts"
import { useWidth } from "./size.ts"
import { strobeOf } from "./strobe.ts"
import type { Study } from "./study.ts"
import { useTouches } from "./touch.ts"
import { type Bearing, bearingWords, firstBearing, fromAbove, turnedBy, turnOf } from "./turn.ts"
import type { ArrowScales } from "./vectors.ts"

const margins = { left: 46, right: 14, top: 26, bottom: 26 }
/** A picture keeps its scale while the motion fits and fills at least this part of it, so that runs compare by eye. */
const leastFill = 0.55
const aspect = 0.64
/** degrees that an arrow key turns a picture in space, and a px of dragging */
const turnStep = 10
const degreesPerPx = 0.4

interface Props {
  readonly study: Study
  readonly scene: SceneBlock | null
  readonly ghost: Study | null
  readonly reference: Study | null
  readonly departure: FirstDeparture | null
  readonly scales: ArrowScales
  readonly clock: Signal<Clock>
  readonly shown: Signal<Shown>
  readonly describedBy: string
}

/** The side view to scale. It moves and zooms by keys and pointer; without either it keeps the whole motion in view. */
export function Scene({
  study,
  scene,
  ghost,
  reference,
  departure,
  scales,
  clock,
  shown,
  describedBy,
}: Props) {
  const box = useRef<HTMLDivElement>(null)
  const width = useWidth(box, 560)
  const height = Math.round(Math.min(420, Math.max(264, width * aspect)))
  const [bearing, setBearing] = useState<Bearing | null>(scene?.view === "space" ? firstBearing : null)
  const deep = useMemo(() => scene?.view === "space" || hasDepth(study), [scene, study])
  const inSpace = deep && bearing !== null
  const box3 = useMemo(
    () => (inSpace ? sceneBox(study, scene, reference) : null),
    [inSpace, study, scene, reference],
  )
  const framed = useMemo(
    () =>
      box3 && bearing
        ? { extent: seenExtent(box3, turnOf(bearing)), cut: false }
        : sceneExtent(study, scene, reference),
    [study, scene, reference, box3, bearing],
  )
  const held = useRef<Extent>(framed.extent)
  const heldInSpace = useRef(inSpace)
  held.current = heldInSpace.current === inSpace ? keepFraming(held.current, framed.extent) : framed.extent
  heldInSpace.current = inSpace
  const whole = useMemo(
    () => viewOf(padded(held.current), width, height, margins),
    [held.current, width, height],
  )
  const [chosen, setChosen] = useState<View | null>(null)
  const view = useMemo<View>(() => {
    const flat = chosen ? { ...chosen, width, height } : whole
    return box3 && bearing ? { ...flat, turned: { turn: turnOf(bearing), about: middleOf(box3) } } : flat
  }, [chosen, whole, width, height, box3, bearing])
  const strobe = useMemo(() => strobeOf(study.timeline), [study])
  const turning = inSpace
    ? (azimuth: number, elevation: number) => setBearing(b => b && turnedBy(b, azimuth, elevation))
    : null
  const see = (from: Bearing | null) => {
    setBearing(from)
    setChosen(null)
  }
  const moves = useMoves(view, setChosen, turning)
  const picture = useRef<SVGSVGElement>(null)
  const turnByFinger = turning && ((dx: number, dy: number) => turning(-dx * degreesPerPx, dy * degreesPerPx))
  useTouches(picture, view, setChosen, turnByFinger, chosen !== null)
  const arrows = useComputed(() => shown.value)
  return (
    <div class="bn-scene" ref={box}>
      <svg
        ref={picture}
        class={chosen ? "bn-picture bn-picture-near" : "bn-picture"}
        width={width}
        height={height}
        viewBox={`0 0 ${width} ${height}`}
        role="img"
        tabindex={0}
        aria-label={
          inSpace
            ? `The motion in space, to scale, ${bearingWords(bearing)}. Arrow keys turn it, plus and minus zoom, 0 shows the whole motion.`
            : `${scene?.view === "top" ? "The motion seen from above" : "Side view of the motion"}, to scale. Arrow keys move it, plus and minus zoom, 0 shows the whole motion.`
        }
        aria-describedby={describedBy}
        onKeyDown={moves.onKeyDown}
        onPointerDown={moves.onPointerDown}
        onPointerMove={moves.onPointerMove}
        onPointerUp={moves.onPointerUp}
        onWheel={moves.onWheel}
      >
        <clipPath id="bn-field-clip">
          <rect x={margins.left} y={0} width={width - margins.left} height={height - margins.bottom} />
        </clipPath>
        {box3 ? (
          <SceneRoom view={view} scene={scene} study={study} box={box3} />
        ) : (
          <SceneGround view={view} scene={scene} />
        )}
        <g clip-path="url(#bn-field-clip)">
          <Ways study={study} ghost={ghost} reference={reference} view={view} strobe={strobe} shown={shown} />
          {box3 && <Plumbs study={study} view={view} box={box3} clock={clock} />}
          <StrobeImages study={study} scene={scene} view={view} strobe={strobe} shown={shown} />
          <Moving
            study={study}
            scene={scene}
            ghost={ghost}
            reference={reference}
            view={view}
            scales={scales}
            clock={clock}
            shown={arrows}
          />
          {departure && <Departure study={study} reference={reference} departure={departure} view={view} />}
        </g>
      </svg>
      <div class="bn-zoom">
        <button type="button" aria-label="zoom in" onClick={() => setChosen(zoom(view, 1.25, view.centre))}>
          +
        </button>
        <button type="button" aria-label="zoom out" onClick={() => setChosen(zoom(view, 0.8, view.centre))}>
          −
        </button>
        <button type="button" disabled={chosen === null} onClick={() => setChosen(null)}>
          whole
        </button>
      </div>
      {deep && (
        <fieldset class="bn-views">
          <legend>seen</legend>
          {views.map(([name, from]) => (
            <button
              key={name}
              type="button"
              class="bn-key"
              aria-pressed={sameView(bearing, from)}
              onClick={() => see(from)}
            >
              {name}
            </button>
          ))}
        </fieldset>
      )}
      {framed.cut && study.extent && (
        <p class="bn-note">
          The motion leaves this picture: it reaches {quantity(sizeOf(study.extent), "m")} far.
        </p>
      )}
    </div>
  )
}

const views: readonly (readonly [name: string, from: Bearing | null])[] = [
  ["from the side", null],
  ["in space", firstBearing],
  ["from above", fromAbove],
]

/** Turned by hand, a picture in space stays "in space" until it is seen straight from above. */
function sameView(now: Bearing | null, from: Bearing | null): boolean {
  if (now === null || from === null) return now === from
  return (now.elevation === fromAbove.elevation) === (from === fromAbove)
}

/** Room for hatching, labels and arrows around the motion. */
function padded(extent: Extent): Extent {
  const by = sizeOf(extent) * 0.11
  return {
    left: extent.left - by,
    right: extent.right + by,
    bottom: extent.bottom - by,
    top: extent.top + by,
  }
}

function keepFraming(held: Extent, next: Extent): Extent {
  const inside =
    next.left >= held.left && next.right <= held.right && next.bottom >= held.bottom && next.top <= held.top
  return inside && sizeOf(next) >= leastFill * sizeOf(held) ? held : next
}

/** Keys and pointer. In space they turn the picture (`turn`, degrees), in the side view they move it. */
function useMoves(
  view: View,
  set: (view: View | null) => void,
  turn: ((azimuth: number, elevation: number) => void) | null,
) {
  const drag = useRef<{ x: number; y: number; view: View } | null>(null)
  const step = 32
  const turns: Record<string, readonly [azimuth: number, elevation: number]> = {
    ArrowLeft: [turnStep, 0],
    ArrowRight: [-turnStep, 0],
    ArrowUp: [0, -turnStep],
    ArrowDown: [0, turnStep],
  }
  const keys: Record<string, () => View | null> = {
    ArrowLeft: () => pan(view, step, 0),
    ArrowRight: () => pan(view, -step, 0),
    ArrowUp: () => pan(view, 0, step),
    ArrowDown: () => pan(view, 0, -step),
    "+": () => zoom(view, 1.25, view.centre),
    "=": () => zoom(view, 1.25, view.centre),
    "-": () => zoom(view, 0.8, view.centre),
    "0": () => null,
  }
  return {
    onKeyDown(event: KeyboardEvent) {
      if (event.ctrlKey || event.metaKey || event.altKey) return
      const by = turn && turns[event.key]
      const move = keys[event.key]
      if (!by && !move) return
      event.preventDefault()
      if (by) return turn(...by)
      if (!move) return
      set(move())
    },
    onPointerDown(event: PointerEvent) {
      if (event.pointerType === "touch" || event.button !== 0) return
      drag.current = { x: event.clientX, y: event.clientY, view }
      ;(event.currentTarget as Element).setPointerCapture(event.pointerId)
    },
    onPointerMove(event: PointerEvent) {
      const from = drag.current
      if (!from) return
      const [dx, dy] = [event.clientX - from.x, event.clientY - from.y]
      if (turn) {
        turn(-dx * degreesPerPx, dy * degreesPerPx)
        drag.current = { x: event.clientX, y: event.clientY, view }
      } else if (Math.hypot(dx, dy) > 3) set(pan(from.view, dx, dy))
    },
    onPointerUp() {
      drag.current = null
    },
    onWheel(event: WheelEvent) {
      if (!event.ctrlKey) return
      event.preventDefault()
      const { left, right, top, bottom } = seen(view)
      const about = [(left + right) / 2, (top + bottom) / 2] as const
      set(zoom(view, event.deltaY < 0 ? 1.1 : 1 / 1.1, about))
    },
  }
}
