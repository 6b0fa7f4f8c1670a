import { type Arrow, type ArrowScale, arrowPaths, depthRadius } from "./arrows.ts"

/** One arrow of the picture; the part along the line of sight as a dot or a cross in a circle, as textbooks have it. */
export function ArrowMark({ arrow, scale, named }: { arrow: Arrow; scale: ArrowScale; named: boolean }) {
  const { shaft, head, headOpen } = arrowPaths(arrow)
  const [x, y] = arrow.from
  const radius = depthRadius(arrow, scale)
  const d = radius * Math.SQRT1_2
  const [dx, dy] = [arrow.to[0] - x, arrow.to[1] - y]
  const length = Math.hypot(dx, dy) || 1
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
        <text
          class="bn-arrow-name"
          x={arrow.to[0] + (dx / length) * 6 + (Math.abs(dx) < length * 0.4 ? 8 : 0)}
          y={arrow.to[1] + (dy / length) * 8 + 4}
          text-anchor={dx < -0.4 * length ? "end" : "start"}
        >
          {arrow.name}
        </text>
      )}
    </g>
  )
}
