import { type Arrow, type ArrowScale, arrowPaths, depthRadius } from "./arrows.ts"

/** One arrow of the picture; the part along the line of sight as a dot or a cross in a circle, as textbooks have it. */
export function ArrowMark({ arrow, scale, named }: { arrow: Arrow; scale: ArrowScale; named: boolean }) {
  const { shaft, head, headOpen } = arrowPaths(arrow)
  const [x, y] = arrow.from
  const radius = depthRadius(arrow, scale)
  const d = radius * Math.SQRT1_2
  const [dx, dy] = [arrow.to[0] - x, arrow.to[1] - y]
  const length = Math.hypot(dx, dy) || 1
  const name = nameAt(arrow, dx / length, dy / length)
  return (
    <g class={`bn-arrow bn-arrow-${arrow.kind}`}>
      {shaft && <path class="bn-shaft" d={shaft} />}
      {head && <path class={headOpen ? "bn-head-open" : "bn-head"} d={head} />}
      {arrow.depth !== 0 && (
        <g transform={`translate(${x} ${y})`}>
          <circle class="bn-depth" r={radius} />
          {arrow.depth > 0 ? (
            <circle class="bn-head" r={1.8} />
          ) : (
            <path class="bn-shaft" d={`M${-d} ${-d}L${d} ${d}M${-d} ${d}L${d} ${-d}`} />
          )}
        </g>
      )}
      {named && length > 14 && (
        <text class="bn-arrow-name" x={name.x} y={name.y} text-anchor={name.anchor}>
          {arrow.name}
        </text>
      )}
    </g>
  )
}

/** Beside the tip: on the right of a steep arrow, but the sum's on the left, as it often lies along one of its parts. */
function nameAt(arrow: Arrow, ux: number, uy: number) {
  const steep = Math.abs(ux) < 0.4
  const left = steep ? arrow.kind === "net" : ux < 0
  const aside = steep ? 8 : 6 * Math.abs(ux)
  return {
    x: arrow.to[0] + (left ? -aside : aside),
    y: arrow.to[1] + uy * 8 + 4,
    anchor: left ? "end" : "start",
  } as const
}
