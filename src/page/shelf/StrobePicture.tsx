import { useId } from "preact/hooks"
import type { Strobe } from "../../judge/edition.ts"
import { lengthText } from "../bench/number.ts"
import { frameStrobe, halvesOf, planeEdge } from "./frame.ts"

const width = 320
const height = 168
/** a body smaller than this on the card would not be seen */
const leastHalf = 2

/** The reference's bodies at equal times, to scale, as a flash photograph shows them. */
export function StrobePicture({ strobe, title }: { strobe: Strobe; title: string }) {
  const hatch = useId()
  const frame = frameStrobe(strobe, width, height, 14, 20)
  const seconds = String(Number(strobe.interval.toPrecision(3)))
  return (
    <svg
      class="strobe"
      viewBox={`0 0 ${width} ${height}`}
      role="img"
      aria-label={`${title}: ${strobe.bodies.map(body => body.name).join(", ")} every ${seconds} seconds`}
    >
      <defs>
        <pattern id={hatch} width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <line x1="0" y1="0" x2="0" y2="5" class="strobe-hatch" />
        </pattern>
      </defs>
      {strobe.planes.map(plane => {
        const edge = planeEdge(plane, frame, width, height)
        if (!edge) return null
        const length = Math.hypot(...plane.normal)
        const [nx, ny] = [(-plane.normal[0] / length) * 7, (plane.normal[1] / length) * 7]
        const { x1, y1, x2, y2 } = edge
        return (
          <g key={`${plane.point} ${plane.normal}`}>
            <path
              d={`M${x1} ${y1}L${x2} ${y2}L${x2 + nx} ${y2 + ny}L${x1 + nx} ${y1 + ny}Z`}
              fill={`url(#${hatch})`}
            />
            <line x1={x1} y1={y1} x2={x2} y2={y2} class="strobe-edge" />
          </g>
        )
      })}
      {strobe.bodies.map(body => (
        <g key={body.name}>
          <polyline
            class="strobe-trail"
            points={body.points
              .map(([x, y]) => `${frame.x(x).toFixed(1)},${frame.y(y).toFixed(1)}`)
              .join(" ")}
          />
          {body.points.map(([x, y], i) => {
            const [halfWidth, halfHeight] = halvesOf(body).map(half =>
              Math.max(leastHalf, half * frame.scale),
            )
            const kind = i === body.points.length - 1 ? "strobe-last" : "strobe-image"
            return body.box ? (
              <rect
                key={i}
                class={kind}
                x={(frame.x(x) - halfWidth!).toFixed(1)}
                y={(frame.y(y) - halfHeight!).toFixed(1)}
                width={(2 * halfWidth!).toFixed(1)}
                height={(2 * halfHeight!).toFixed(1)}
              />
            ) : (
              <circle
                key={i}
                class={kind}
                cx={frame.x(x).toFixed(1)}
                cy={frame.y(y).toFixed(1)}
                r={halfWidth!.toFixed(1)}
              />
            )
          })}
        </g>
      ))}
      <g class="strobe-scale" transform={`translate(${width - 10 - frame.bar.length} 16)`}>
        <path d={`M0 -3V0H${frame.bar.length.toFixed(1)}V-3`} />
        <text x={frame.bar.length / 2} y="13">
          {lengthText(frame.bar.metres)}
        </text>
      </g>
    </svg>
  )
}
