import type { Signal } from "@preact/signals"
import { arrowPaths } from "./arrows.ts"
import { quantity } from "./number.ts"
import type { Shown } from "./shown.ts"
import type { Study } from "./study.ts"
import type { ArrowScales } from "./vectors.ts"

interface Props {
  readonly study: Study
  readonly ghost: boolean
  readonly reference: boolean
  readonly shown: Signal<Shown>
  readonly scales: ArrowScales
}

/** The key to the picture: each line with its name and its scale, and a press shows or hides it. */
export function Legend({ study, ghost, reference, shown, scales }: Props) {
  const forces = study.bodies.some(b => b.forces.length > 0)
  const several = study.bodies.some(b => b.forces.length > 1)
  const momentum = study.bodies.some(b => b.momentum !== null)
  const moving = study.timeline.unit === "s" && study.recording.rows > 1
  const entries: { key: keyof Shown; name: string; has: boolean; scale?: string }[] = [
    { key: "forces", name: several ? "forces" : "force", has: forces, ...scaleText(scales, "force", "N") },
    { key: "net", name: "net force", has: several },
    { key: "velocity", name: "velocity", has: moving, ...scaleText(scales, "velocity", "m/s") },
    { key: "momentum", name: "momentum", has: momentum, ...scaleText(scales, "momentum", "kg m/s") },
    { key: "strobe", name: "strobe images", has: study.bodies.length <= 12 },
    { key: "reference", name: "reference", has: reference },
    { key: "ghost", name: "run before", has: ghost },
  ]
  return (
    <ul class="bn-legend" aria-label="shown in the picture">
      {entries
        .filter(e => e.has)
        .map(({ key, name, scale }) => (
          <li key={key}>
            <button
              type="button"
              class="bn-legend-key"
              aria-pressed={shown.value[key]}
              onClick={() => {
                shown.value = { ...shown.value, [key]: !shown.value[key] }
              }}
            >
              <Sample kind={key} px={samplePx(scales, key)} />
              <span>{name}</span>
              {scale && shown.value[key] && <span class="bn-legend-scale">{scale}</span>}
            </button>
          </li>
        ))}
    </ul>
  )
}

/** The sample arrow is as long as the value beside it says. */
function samplePx(scales: ArrowScales, key: keyof Shown): number {
  const scale = key === "velocity" || key === "momentum" ? scales[key] : scales.force
  return Math.min(60, Math.max(16, scale?.px ?? 24))
}

function scaleText(scales: ArrowScales, key: keyof ArrowScales, unit: string): { scale?: string } {
  const scale = scales[key]
  return scale ? { scale: quantity(scale.value, unit, 1) } : {}
}

function Sample({ kind, px }: { kind: keyof Shown; px: number }) {
  const arrows = { forces: "force", net: "net", velocity: "velocity", momentum: "momentum" } as const
  if (kind === "strobe")
    return (
      <svg width="30" height="14" aria-hidden="true">
        {[6, 14, 22].map(cx => (
          <circle key={cx} class="bn-image" cx={cx} cy={7} r={5} />
        ))}
      </svg>
    )
  if (kind === "reference" || kind === "ghost")
    return (
      <svg width="30" height="14" aria-hidden="true">
        <path class={`bn-way-${kind}`} d="M1 7H29" />
      </svg>
    )
  const paths = arrowPaths({
    kind: arrows[kind],
    name: "",
    from: [1, 7],
    to: [1 + px, 7],
    broken: false,
    depth: 0,
    size: 1,
  })
  return (
    <svg class={`bn-arrow-${arrows[kind]}`} width={px + 3} height="14" aria-hidden="true">
      <path class="bn-shaft" d={paths.shaft} />
      <path class={paths.headOpen ? "bn-head-open" : "bn-head"} d={paths.head} />
    </svg>
  )
}
