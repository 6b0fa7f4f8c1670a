import type { Scene } from "../../worksheet/contract.ts"
import { axisTicks, scaleBar, seen, toX, toY, type View } from "./framing.ts"
import { axisPower, decimalsFor, fixed, lengthText, poweredUnit, thinSpace } from "./number.ts"
import { planePicture } from "./plane.ts"

/** What does not move: the field with its two axes, planes, and the scale bar. */
export function SceneGround({ view, scene }: { view: View; scene: Scene | null }) {
  const ticks = axisTicks(view)
  const power = axisPower(Math.max(...[...ticks.x, ...ticks.y].map(Math.abs)))
  const decimals = decimalsFor(ticks.step / 10 ** power)
  const unit = `${thinSpace}/${thinSpace}${poweredUnit(power, "m")}`
  const { margins, width, height } = view
  const [left, right, top, bottom] = [
    margins.left,
    width - margins.right,
    margins.top,
    height - margins.bottom,
  ]
  const labelled = (px: number, low: number, high: number) => px > low && px < high
  return (
    <g>
      <path class="bn-field" d={`M${left} ${top}V${bottom}H${right}`} />
      {ticks.x.map(x => (
        <g key={x} transform={`translate(${toX(view, x)} ${bottom})`}>
          <path class="bn-tick" d="M0 0v5" />
          {labelled(toX(view, x), left + 8, right - 8 * unit.length - 12) && (
            <text class="bn-axis-text" y={17} text-anchor="middle">
              {fixed(x / 10 ** power, decimals)}
            </text>
          )}
        </g>
      ))}
      {ticks.y.map(y => (
        <g key={y} transform={`translate(${left} ${toY(view, y)})`}>
          <path class="bn-tick" d="M0 0h-5" />
          {labelled(toY(view, y), top + 16, bottom + 1) && (
            <text class="bn-axis-text" x={-9} y={4} text-anchor="end">
              {fixed(y / 10 ** power, decimals)}
            </text>
          )}
        </g>
      ))}
      <text class="bn-axis-name" x={right} y={bottom + 17} text-anchor="end">
        <tspan class="bn-symbol">x</tspan>
        {unit}
      </text>
      <text class="bn-axis-name" x={left - 9} y={top + 6} text-anchor="end">
        <tspan class="bn-symbol">y</tspan>
        {unit}
      </text>
      {scene?.fixtures.map((fixture, k) => {
        if (fixture.kind !== "plane") return null
        const picture = planePicture(view, fixture.point, fixture.normal)
        if (!picture) return null
        return (
          <g key={k}>
            <path class="bn-hatching" d={picture.hatching} />
            <path class="bn-surface" d={picture.surface} />
            {fixture.label && (
              <text
                class="bn-fixture-name"
                x={picture.label[0]}
                y={clearOfAxis(picture.label[1] + 4, bottom)}
                text-anchor={picture.anchor}
              >
                {fixture.label}
              </text>
            )}
          </g>
        )
      })}
      <ScaleBar view={view} />
    </g>
  )
}

export function ScaleBar({ view }: { view: View }) {
  const length = scaleBar(view)
  const px = length * view.scale
  const x = view.width - view.margins.right - px - 4
  const y = view.margins.top + 12
  if (!(px < seen(view).right - seen(view).left * view.scale) && px > view.width) return null
  return (
    <g class="bn-scale-bar" transform={`translate(${x} ${y})`}>
      <path d={`M0 -4v8M0 0h${px}M${px} -4v8`} />
      <text x={px / 2} y={-7} text-anchor="middle">
        {lengthText(length)}
      </text>
    </g>
  )
}

/** A floor's label that would run into the axis below stands above the floor instead. */
function clearOfAxis(y: number, bottom: number): number {
  return y > bottom - 3 && y < bottom + 14 ? y - 32 : y
}
