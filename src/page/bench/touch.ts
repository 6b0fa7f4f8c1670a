import type { RefObject } from "preact"
import { useEffect, useRef } from "preact/hooks"
import { pan, toX, toY, type View, zoom } from "./framing.ts"

type Spot = readonly [x: number, y: number]

/** Two fingers may bring a picture this much nearer or further at one time. */
const mostAtOnce = 20

/** The view after two fingers went from one pair of spots to another, px: what lay between them lies between them still. */
export function pinched(view: View, from: readonly [Spot, Spot], to: readonly [Spot, Spot]): View {
  const apart = ([a, b]: readonly [Spot, Spot]) => Math.hypot(a[0] - b[0], a[1] - b[1])
  const middle = ([a, b]: readonly [Spot, Spot]): Spot => [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2]
  const wanted = apart(from) > 0 ? apart(to) / apart(from) : 1
  const factor = Math.min(mostAtOnce, Math.max(1 / mostAtOnce, wanted))
  const [start, end] = [middle(from), middle(to)]
  const about: Spot = [
    view.centre[0] + (start[0] - toX(view, view.centre[0])) / view.scale,
    view.centre[1] - (start[1] - toY(view, view.centre[1])) / view.scale,
  ]
  return pan(zoom(view, factor, about), end[0] - start[0], end[1] - start[1])
}

/**
 * Fingers on a picture: two bring it nearer and move it; one turns a picture in space, or moves one that was brought nearer. One
 * finger on a picture that shows the whole motion scrolls the page, as anywhere.
 */
export function useTouches(
  picture: RefObject<SVGSVGElement | null>,
  view: View,
  set: (view: View) => void,
  turn: ((dx: number, dy: number) => void) | null,
  held: boolean,
): void {
  const now = useRef({ view, set, turn, held })
  now.current = { view, set, turn, held }
  useEffect(() => {
    const element = picture.current
    if (!element) return
    let begun: { readonly spots: readonly Spot[]; readonly view: View } | null = null
    const spotsOf = (event: TouchEvent): Spot[] => {
      const { left, top } = element.getBoundingClientRect()
      return [...event.touches].slice(0, 2).map(touch => [touch.clientX - left, touch.clientY - top] as const)
    }
    const begin = (event: TouchEvent): void => {
      begun = event.touches.length === 0 ? null : { spots: spotsOf(event), view: now.current.view }
    }
    const move = (event: TouchEvent): void => {
      const spots = spotsOf(event)
      if (!begun || spots.length !== begun.spots.length) return
      const [a, b] = spots
      const [from, other] = begun.spots
      if (!a || !from) return
      const { turn: turning, held: near, set: show } = now.current
      if (b && other) {
        event.preventDefault()
        show(pinched(begun.view, [from, other], [a, b]))
      } else if (turning) {
        if (event.cancelable) event.preventDefault()
        turning(a[0] - from[0], a[1] - from[1])
        begun = { spots, view: begun.view }
      } else if (near) {
        event.preventDefault()
        show(pan(begun.view, a[0] - from[0], a[1] - from[1]))
      }
    }
    element.addEventListener("touchstart", begin, { passive: true })
    element.addEventListener("touchmove", move, { passive: false })
    element.addEventListener("touchend", begin, { passive: true })
    element.addEventListener("touchcancel", begin, { passive: true })
    return () => {
      element.removeEventListener("touchstart", begin)
      element.removeEventListener("touchmove", move)
      element.removeEventListener("touchend", begin)
      element.removeEventListener("touchcancel", begin)
    }
  }, [picture])
}
