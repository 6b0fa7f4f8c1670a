import { type Signal, useComputed } from "@preact/signals"
import { useMemo, useRef, useState } from "preact/hooks"
import type { Scene as SceneBlock } from "../../worksheet/contract.ts"
import type { Clock } from "./clock.ts"
import { type Extent, pan, seen, sizeOf, type View, viewOf, zoom } from "./framing.ts"
import { quantity } from "./number.ts"
import { sceneExtent } from "./picture.ts"
import { SceneGround } from "./SceneGround.tsx"
import { Departure, Moving, StrobeImages, Ways } from "./SceneMotion.tsx"
import type { Shown } from "./shown.ts"
import { useWidth } from "./size.ts"
import { strobeOf } from "./strobe.ts"
import type { Study } from "./study.ts"
import type { ArrowScales } from "./vectors.ts"

const margins = { left: 46, right: 14, top: 26, bottom: 26 }
/** A picture keeps its scale while the motion fits and fills at least this part of it, so that runs compare by eye. */
const leastFill = 0.55
const aspect = 0.64

interface Props {
  readonly study: Study
  readonly scene: SceneBlock | null
  readonly ghost: Study | null
  readonly reference: Study | null
  readonly departsAt: number | null
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
  departsAt,
  scales,
  clock,
  shown,
  describedBy,
}: Props) {
  const box = useRef<HTMLDivElement>(null)
  const width = useWidth(box, 560)
  const height = Math.round(Math.min(420, Math.max(264, width * aspect)))
  const framed = useMemo(() => sceneExtent(study, scene, reference), [study, scene, reference])
  const held = useRef<Extent>(framed.extent)
  held.current = keepFraming(held.current, framed.extent)
  const whole = useMemo(
    () => viewOf(padded(held.current), width, height, margins),
    [held.current, width, height],
  )
  const [chosen, setChosen] = useState<View | null>(null)
  const view = chosen ? { ...chosen, width, height } : whole
  const strobe = useMemo(() => strobeOf(study.timeline), [study])
  const moves = useMoves(view, setChosen)
  const arrows = useComputed(() => shown.value)
  return (
    <div class="bn-scene" ref={box}>
      <svg
        class="bn-picture"
        width={width}
        height={height}
        viewBox={`0 0 ${width} ${height}`}
        role="img"
        tabindex={0}
        aria-label="Side view of the motion, to scale. Arrow keys move it, plus and minus zoom, 0 shows the whole motion."
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
        <SceneGround view={view} scene={scene} />
        <g clip-path="url(#bn-field-clip)">
          <Ways study={study} ghost={ghost} reference={reference} view={view} strobe={strobe} shown={shown} />
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
          {departsAt !== null && (
            <Departure study={study} reference={reference} departsAt={departsAt} view={view} />
          )}
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
      {framed.cut && study.extent && (
        <p class="bn-note">
          The motion leaves this picture: it reaches {quantity(sizeOf(study.extent), "m")} far.
        </p>
      )}
    </div>
  )
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

function useMoves(view: View, set: (view: View | null) => void) {
  const drag = useRef<{ x: number; y: number; view: View } | null>(null)
  const step = 32
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
      const move = event.ctrlKey || event.metaKey || event.altKey ? undefined : keys[event.key]
      if (!move) return
      event.preventDefault()
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
      if (Math.hypot(dx, dy) > 3) set(pan(from.view, dx, dy))
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
