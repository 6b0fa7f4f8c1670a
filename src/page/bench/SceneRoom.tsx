import type { ReadonlySignal, Signal } from "@preact/signals"
import { useMemo } from "preact/hooks"
import type { Scene } from "../../worksheet/contract.ts"
import type { Box3 } from "./box.ts"
import type { Clock } from "./clock.ts"
import { toSpot, type View } from "./framing.ts"
import { axisPower, decimalsFor, fixed, poweredUnit, thinSpace } from "./number.ts"
import { placeOf, wayPath } from "./picture.ts"
import { planeOutline, roomOf } from "./room.ts"
import { ScaleBar } from "./SceneGround.tsx"
import type { Study } from "./study.ts"
import { momentAt } from "./timeline.ts"

/** What does not move in a picture in space: the floor's grid, three axes, planes, and the shadow of the way on the floor. */
export function SceneRoom({
  view,
  scene,
  study,
  box,
}: {
  view: View
  scene: Scene | null
  study: Study
  box: Box3
}) {
  const room = useMemo(() => roomOf(view, box), [view, box])
  const power = axisPower(Math.max(...[...box.low, ...box.high].map(Math.abs)))
  const decimals = decimalsFor(room.step / 10 ** power)
  const unit = `${thinSpace}/${thinSpace}${poweredUnit(power, "m")}`
  return (
    <g>
      <path class="bn-room-grid" d={room.grid} />
      {scene?.fixtures.map((fixture, k) => {
        const outline = fixture.kind === "plane" ? planeOutline(view, box, fixture) : null
        return (
          outline && (
            <g key={k}>
              <path class="bn-room-plane" d={outline.d} />
              {fixture.label && (
                <text
                  class="bn-fixture-name"
                  x={outline.label[0] - 6}
                  y={outline.label[1] - 8}
                  text-anchor="end"
                >
                  {fixture.label}
                </text>
              )}
            </g>
          )
        )
      })}
      {study.bodies.map(body => (
        <path key={body.name} class="bn-room-shadow" d={wayPath(study, body, view, box.low[1])} />
      ))}
      {room.axes.map(axis => (
        <g key={axis.name}>
          <path class="bn-field" d={axis.line} />
          {axis.ticks.map(({ value, at }) => (
            <text
              key={value}
              class="bn-axis-text"
              x={at[0] + axis.aside[0]}
              y={at[1] + axis.aside[1]}
              text-anchor={axis.anchor}
            >
              {fixed(value / 10 ** power, decimals)}
            </text>
          ))}
          {axis.ticks.length > 0 && (
            <text class="bn-axis-name" x={axis.titleAt[0]} y={axis.titleAt[1]} text-anchor={axis.anchor}>
              <tspan class="bn-symbol">{axis.name}</tspan>
              {unit}
            </text>
          )}
        </g>
      ))}
      <ScaleBar view={view} />
    </g>
  )
}

/** Plumb lines from the bodies to the floor: they tell how high and how far back a body is. */
export function Plumbs({
  study,
  view,
  box,
  clock,
}: {
  study: Study
  view: View
  box: Box3
  clock: Signal<Clock> | ReadonlySignal<Clock>
}) {
  if (study.bodies.length > mostPlumbed) return null
  const moment = momentAt(study.timeline, clock.value.instant)
  return (
    <g>
      {study.bodies.map(body => {
        const [x, y, z] = placeOf(study, body, moment)
        const [[px, py], [fx, fy]] = [toSpot(view, x, y, z), toSpot(view, x, box.low[1], z)]
        if (![px, py, fx, fy].every(Number.isFinite)) return null
        return (
          <g key={body.name}>
            <path class="bn-room-plumb" d={`M${px} ${py}L${fx} ${fy}`} />
            <circle class="bn-room-foot" cx={fx} cy={fy} r={2} />
          </g>
        )
      })}
    </g>
  )
}

/** More plumb lines than these hide what they should show. */
const mostPlumbed = 8
