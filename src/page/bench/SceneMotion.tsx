import type { ReadonlySignal, Signal } from "@preact/signals"
import { useMemo } from "preact/hooks"
import type { Scene } from "../../worksheet/contract.ts"
import { ArrowMark } from "./ArrowMark.tsx"
import type { Clock } from "./clock.ts"
import { type Departure as FirstDeparture, speaksOf } from "./departures.ts"
import { nearness, toSpot, type View } from "./framing.ts"
import { type Box, placeLabels, type Wanted } from "./labels.ts"
import { linkPicture } from "./link.ts"
import { decimalsFor, fixed, thinSpace } from "./number.ts"
import {
  type BodyShape,
  bodyShape,
  dotsPath,
  endsOf,
  placeOf,
  spotOf,
  springEnds,
  wayPath,
} from "./picture.ts"
import { hatchedBoxes } from "./plane.ts"
import type { BodyColumns } from "./series.ts"
import type { Shown } from "./shown.ts"
import { springPath } from "./spring.ts"
import { type Strobe, trailOf } from "./strobe.ts"
import { labelOf, type Study } from "./study.ts"
import { type Moment, momentAt } from "./timeline.ts"
import { boxFaces, type Turn } from "./turn.ts"
import { type ArrowScales, arrowsOf } from "./vectors.ts"
import { timeDecimals } from "./words.ts"

interface WaysProps {
  readonly study: Study
  readonly ghost: Study | null
  readonly reference: Study | null
  readonly view: View
  readonly strobe: Strobe
  readonly shown: Signal<Shown>
}

/** Names and arrow names are written for this many bodies at most. */
const mostNamed = 3
/** px between the dots of a trail, at the mean */
const leastApart = 7

/** The ways: own as dots at equal times, reference in long dashes, the run before faintly. */
export function Ways({ study, ghost, reference, view, strobe, shown }: WaysProps) {
  const parts = study.bodies.length > 12 ? 1 : dotParts(study, strobe, view)
  const instants = trailOf(strobe, parts, study.timeline)
  return (
    <g>
      {shown.value.ghost &&
        ghost?.bodies.map(body => (
          <path key={body.name} class="bn-way-ghost" d={wayPath(ghost, body, view)} />
        ))}
      {study.bodies.map(body => (
        <g key={body.name}>
          <path class="bn-way" d={wayPath(study, body, view)} />
          <path class="bn-dots" d={dotsPath(study, body, view, instants)} />
        </g>
      ))}
      {shown.value.reference &&
        reference?.bodies.map(body => (
          <path key={body.name} class="bn-way-reference" d={wayPath(reference, body, view)} />
        ))}
    </g>
  )
}

/** Dots between two images: five, or fewer where they would run together into a line. */
function dotParts(study: Study, strobe: Strobe, view: View): number {
  const lengths = study.bodies.map(body => {
    const spots = strobe.instants.map(t => spotOf(study, body, momentAt(study.timeline, t), view))
    return spots.reduce((sum, spot, k) => {
      const before = spots[k - 1]
      return spot && before ? sum + Math.hypot(spot[0] - before[0], spot[1] - before[1]) : sum
    }, 0)
  })
  const apart = Math.max(0, ...lengths) / Math.max(1, strobe.instants.length - 1)
  return [5, 2].find(parts => apart / parts >= leastApart) ?? 1
}

interface StrobeProps {
  readonly study: Study
  readonly scene: Scene | null
  readonly view: View
  readonly strobe: Strobe
  readonly shown: Signal<Shown>
}

/** Images at equal times, as in a flash photograph; always in the document, for paper. */
export function StrobeImages({ study, scene, view, strobe, shown }: StrobeProps) {
  if (study.bodies.length > 12) return null
  const decimals = decimalsFor(strobe.interval)
  return (
    <g class={shown.value.strobe ? "bn-strobe" : "bn-strobe bn-paper-only"}>
      {study.bodies.map((body, k) => {
        const shape = bodyShape(scene, body, view, study.bodies.length)
        const spots = strobe.instants.map(t => spotOf(study, body, momentAt(study.timeline, t), view))
        return spots.map((spot, n) => {
          const before = spots[n - 1]
          if (!spot) return null
          const apart = !before || Math.hypot(spot[0] - before[0], spot[1] - before[1]) > 20
          return (
            <g key={n} transform={`translate(${spot[0]} ${spot[1]})`}>
              <Outline shape={shape} turn={view.turned?.turn} class="bn-image" />
              {k === 0 && apart && n > 0 && (
                <text class="bn-image-time" x={shape.halfWidth + 5} y={3}>
                  {fixed(strobe.instants[n] ?? 0, decimals)}
                </text>
              )}
            </g>
          )
        })
      })}
    </g>
  )
}

interface MovingProps {
  readonly study: Study
  readonly scene: Scene | null
  readonly ghost: Study | null
  readonly reference: Study | null
  readonly view: View
  readonly scales: ArrowScales
  readonly clock: Signal<Clock>
  readonly shown: ReadonlySignal<Shown>
}

/** Everything that stands elsewhere at another instant. Drawn anew each frame: some hundred elements at most. */
export function Moving({ study, scene, ghost, reference, view, scales, clock, shown }: MovingProps) {
  const { instant } = clock.value
  const show = shown.value
  const moment = momentAt(study.timeline, instant)
  const longest = Math.min(view.width, view.height) * 0.42
  const few = study.bodies.length <= mostNamed
  const names = few ? bodyNamesAt(study, scene, moment, view) : []
  const named = few ? [...names, ...springNamesAt(study, scene, moment, view)] : []
  const bodyNames = names.length
  const hatched = useMemo(() => (few && !view.turned ? hatchedBoxes(scene, view) : []), [few, scene, view])
  return (
    <g>
      {show.ghost && ghost && (
        <Shadows study={ghost} scene={scene} view={view} instant={instant} kind="ghost" />
      )}
      {show.reference && reference && (
        <Shadows study={reference} scene={scene} view={view} instant={instant} kind="reference" />
      )}
      {scene?.fixtures.map((fixture, k) => {
        if (fixture.kind === "rope" || fixture.kind === "strut") {
          const link = linkPicture(fixture, study, moment, view, scene.view ?? "side")
          return (
            link && (
              <g key={k}>
                <path class={linkClass(fixture.kind, link.slack)} d={link.d} />
                {typeof fixture.from !== "string" && <Anchor at={link.from} />}
                {typeof fixture.to !== "string" && <Anchor at={link.to} />}
              </g>
            )
          )
        }
        if (fixture.kind !== "spring") return null
        const ends = springEnds(fixture, study, moment)
        if (!ends) return null
        const [[x0, y0], [x1, y1]] = [toSpot(view, ...ends.from), toSpot(view, ...ends.to)]
        return (
          <g key={k}>
            <path class="bn-spring" d={springPath([x0, y0], [x1, y1], fixture.restLength * view.scale)} />
            {typeof fixture.from !== "string" && <Anchor at={[x0, y0]} />}
            {typeof fixture.to !== "string" && <Anchor at={[x1, y1]} />}
          </g>
        )
      })}
      {farthestFirst(study, moment, view).map(body => {
        const spot = spotOf(study, body, moment, view)
        if (!spot) return null
        const shape = bodyShape(scene, body, view, study.bodies.length)
        return (
          <g key={body.name} transform={`translate(${spot[0]} ${spot[1]})`}>
            <Outline shape={shape} turn={view.turned?.turn} class="bn-body" />
            <circle class="bn-centre" r={1.5} />
          </g>
        )
      })}
      {study.bodies.map(body => {
        const spot = spotOf(study, body, moment, view)
        if (!spot) return null
        const turn = view.turned?.turn
        return arrowsOf(study, body, moment.row, spot, scales, show, longest, turn).map(arrow => {
          const scale = arrow.kind === "force" || arrow.kind === "net" ? scales.force : scales[arrow.kind]
          return (
            scale && <ArrowMark key={`${body.name} ${arrow.name}`} arrow={arrow} scale={scale} named={few} />
          )
        })
      })}
      {few &&
        placeLabels(named, fieldOf(view), hatched).map(({ text, x, y }, k) => (
          <text key={k} class={k < bodyNames ? "bn-body-name" : "bn-fixture-name"} x={x} y={y}>
            {text}
          </text>
        ))}
    </g>
  )
}

const Anchor = ({ at: [x, y] }: { at: readonly [number, number] }) => (
  <circle class="bn-anchor" cx={x} cy={y} r={2.5} />
)

const linkClass = (kind: "rope" | "strut", slack: boolean): string =>
  kind === "strut" ? "bn-strut" : slack ? "bn-rope bn-rope-slack" : "bn-rope"

/** Where texts of the picture may stand. */
function fieldOf({ width, height, margins }: View): Box {
  return { left: margins.left + 4, top: 0, right: width, bottom: height - margins.bottom }
}

function bodyNamesAt(study: Study, scene: Scene | null, moment: Moment, view: View): Wanted[] {
  return study.bodies.flatMap(body => {
    const spot = spotOf(study, body, moment, view)
    if (!spot) return []
    const { halfWidth, halfHeight } = bodyShape(scene, body, view, 1)
    return [{ text: labelOf(scene, body.name), x: spot[0], y: spot[1], halfWidth, halfHeight }]
  })
}

/** Names of springs, struts and ropes, but of those that a plane's label names already. */
function springNamesAt(study: Study, scene: Scene | null, moment: Moment, view: View): Wanted[] {
  const fixtures = scene?.fixtures ?? []
  const planes = fixtures.filter(f => f.kind === "plane").map(f => f.label)
  return fixtures.flatMap(fixture => {
    if (fixture.kind === "plane" || !fixture.label || planes.includes(fixture.label)) return []
    const ends =
      fixture.kind === "spring" ? springEnds(fixture, study, moment) : endsOf(fixture, study, moment)
    if (!ends) return []
    const [[x0, y0], [x1, y1]] = [toSpot(view, ...ends.from), toSpot(view, ...ends.to)]
    return [
      {
        text: fixture.label,
        x: (x0 + x1) / 2,
        y: (y0 + y1) / 2,
        halfWidth: Math.max(2, Math.abs(x1 - x0) / 2 - 12),
        halfHeight: Math.max(8, Math.abs(y1 - y0) / 2 - 12),
      },
    ]
  })
}

function Shadows({
  study,
  scene,
  view,
  instant,
  kind,
}: {
  study: Study
  scene: Scene | null
  view: View
  instant: number
  kind: "ghost" | "reference"
}) {
  return (
    <g>
      {study.bodies.map(body => {
        const spot = spotOf(study, body, momentAt(study.timeline, instant), view)
        if (!spot) return null
        return (
          <g key={body.name} transform={`translate(${spot[0]} ${spot[1]})`}>
            <Outline
              shape={bodyShape(scene, body, view, study.bodies.length)}
              turn={view.turned?.turn}
              class={`bn-shadow-${kind}`}
            />
          </g>
        )
      })}
    </g>
  )
}

/** In a picture in space the far bodies are drawn first, so that near ones hide them. */
function farthestFirst(study: Study, moment: Moment, view: View): readonly BodyColumns[] {
  if (!view.turned) return study.bodies
  const near = new Map(study.bodies.map(b => [b, nearness(view, ...placeOf(study, b, moment))]))
  return [...study.bodies].sort((a, b) => (near.get(a) ?? 0) - (near.get(b) ?? 0))
}

/** A body about its centre. In space a disc is a ball, and a box is as deep as it is wide. */
function Outline({ shape, turn, class: name }: { shape: BodyShape; turn?: Turn | undefined; class: string }) {
  const { halfWidth, halfHeight } = shape
  if (turn && shape.shape === "disc") return <circle class={name} r={Math.max(halfWidth, halfHeight)} />
  if (turn)
    return (
      <g>
        {boxFaces(turn, halfWidth, halfHeight).map((d, k) => (
          <path key={k} class={name} d={d} />
        ))}
      </g>
    )
  if (shape.shape === "disc") return <ellipse class={name} rx={halfWidth} ry={halfHeight} />
  return <rect class={name} x={-halfWidth} y={-halfHeight} width={2 * halfWidth} height={2 * halfHeight} />
}

/** Where the motion first leaves the reference: marked at the body that is farther off then, of those that were looked at. */
export function Departure({
  study,
  reference,
  departure,
  view,
}: {
  study: Study
  reference: Study | null
  departure: FirstDeparture
  view: View
}) {
  const { instant } = departure
  const moment = momentAt(study.timeline, instant)
  const gap = (name: string, spot: readonly [number, number]) => {
    const other = reference?.bodies.find(b => b.name === name)
    const there = other && reference && spotOf(reference, other, momentAt(reference.timeline, instant), view)
    return there ? Math.hypot(there[0] - spot[0], there[1] - spot[1]) : 0
  }
  const meant = study.bodies.filter(body => speaksOf(departure, body.name))
  const spots = (meant.length > 0 ? meant : study.bodies)
    .map(body => ({ name: body.name, spot: spotOf(study, body, moment, view) }))
    .flatMap(({ name, spot }) => (spot ? [{ spot, gap: gap(name, spot) }] : []))
  const [farthest] = spots.sort((a, b) => b.gap - a.gap)
  if (!farthest) return null
  const [x, y] = farthest.spot
  const left = x > view.width * 0.62
  const side = left ? -1 : 1
  const up = y > view.height / 2 ? -1 : 1
  const decimals = timeDecimals(study.timeline)
  return (
    <g class="bn-departure" transform={`translate(${x} ${y})`}>
      <circle r={6} />
      <path d={`M-10 0h20M0 -10v20M${side * 5} ${up * 5}L${side * 22} ${up * 26}h${side * 8}`} />
      <text x={side * 33} y={up * 26 + 4} text-anchor={left ? "end" : "start"}>
        {`departs ${fixed(instant, decimals)}${thinSpace}s`}
      </text>
    </g>
  )
}
