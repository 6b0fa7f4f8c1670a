import type { Signal } from "@preact/signals"
import { useMemo, useState } from "preact/hooks"
import type { Scene } from "../../worksheet/contract.ts"
import { ArrowMark } from "./ArrowMark.tsx"
import { arrowOf } from "./arrows.ts"
import type { Clock } from "./clock.ts"
import { decimalsFor, fixed, quantity } from "./number.ts"
import type { BodyColumns } from "./series.ts"
import { labelOf, type Study } from "./study.ts"
import { forceScale, netForceAt, type Triple, vectorAt } from "./vectors.ts"

const size = 150
const longest = 56
/** half length of the cross that shows the axes, px */
const axis = 34

/** The forces on one body at the instant shown, enlarged: a free-body diagram, with its values in a table. */
export function FreeBody({
  study,
  scene,
  clock,
}: {
  study: Study
  scene: Scene | null
  clock: Signal<Clock>
}) {
  const pushed = useMemo(() => study.bodies.filter(b => b.forces.length > 0), [study])
  const [name, setName] = useState(pushed[0]?.name ?? "")
  const body = pushed.find(b => b.name === name) ?? pushed[0]
  if (!body) return null
  return (
    <Diagram
      key={body.name}
      study={study}
      scene={scene}
      clock={clock}
      pushed={pushed}
      body={body}
      setName={setName}
    />
  )
}

interface DiagramProps {
  readonly study: Study
  readonly scene: Scene | null
  readonly clock: Signal<Clock>
  readonly pushed: readonly BodyColumns[]
  readonly body: BodyColumns
  readonly setName: (name: string) => void
}

function Diagram({ study, scene, clock, pushed, body, setName }: DiagramProps) {
  const row = study.timeline.rowAt(clock.value.instant)
  const forces = body.forces.map(f => ({ name: f.name, vector: vectorAt(study, row, f.column) }))
  const net = netForceAt(study, body, row)
  const scale = useMemo(() => forceScale(study, body, longest), [study, body])
  const decimals = decimalsOrNone(
    Math.max(...forces.flatMap(f => f.vector.map(Math.abs)), ...net.map(Math.abs)) / 300,
  )
  const label = labelOf(scene, body.name)
  const space = forces.some(f => f.vector[2] !== 0)
  return (
    <figure class="bn-free">
      <figcaption>
        {pushed.length > 1 ? (
          <label>
            <span>forces on </span>
            <select value={body.name} onChange={event => setName(event.currentTarget.value)}>
              {pushed.map(b => (
                <option key={b.name} value={b.name}>
                  {labelOf(scene, b.name)}
                </option>
              ))}
            </select>
          </label>
        ) : (
          `forces on ${label}`
        )}
      </figcaption>
      <svg
        class="bn-free-picture"
        width={size}
        height={size}
        viewBox={`${-size / 2} ${-size / 2} ${size} ${size}`}
        aria-hidden="true"
      >
        <path class="bn-free-axis" d={`M${-axis} 0H${axis}M0 ${-axis}V${axis}`} />
        {forces.map(f => {
          const arrow = scale && arrowOf("force", f.name, [0, 0], f.vector, scale, longest)
          return arrow && scale && <ArrowMark key={f.name} arrow={arrow} scale={scale} named={true} />
        })}
        <circle class="bn-free-body" r={4} />
      </svg>
      <table>
        <thead>
          <tr>
            <th scope="col">N</th>
            <th scope="col">x</th>
            <th scope="col">y</th>
            {space && <th scope="col">z</th>}
          </tr>
        </thead>
        <tbody>
          {forces.map(f => (
            <ForceRow key={f.name} name={f.name} vector={f.vector} decimals={decimals} space={space} />
          ))}
          {forces.length > 1 && <ForceRow name="net" vector={net} decimals={decimals} space={space} sum />}
        </tbody>
      </table>
      {scale && (
        <p class="bn-free-scale">
          <svg width={scale.px + 2} height="8" aria-hidden="true">
            <path d={`M1 1v6M1 4h${scale.px}M${scale.px + 1} 1v6`} />
          </svg>
          {quantity(scale.value, "N", 1)}
        </p>
      )}
    </figure>
  )
}

function ForceRow({
  name,
  vector,
  decimals,
  space,
  sum = false,
}: {
  name: string
  vector: Triple
  decimals: number
  space: boolean
  sum?: boolean
}) {
  return (
    <tr class={sum ? "bn-sum" : ""}>
      <th scope="row">{name}</th>
      {vector.slice(0, space ? 3 : 2).map((part, k) => (
        <td key={k}>{fixed(part, decimals)}</td>
      ))}
    </tr>
  )
}

/** Forces that are all zero need no decimals. */
function decimalsOrNone(step: number): number {
  return step > 0 ? decimalsFor(step) : 0
}
