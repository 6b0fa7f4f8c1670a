import { type Signal, signal } from "@preact/signals"
import { useEffect, useMemo } from "preact/hooks"
import { advance, type Clock, firstSpeed, seek, seekRow } from "./clock.ts"
import type { Timeline } from "./timeline.ts"

/** Longest stretch of real time that one frame may advance, s: after a pause of the page, play goes on where it was. */
const longestFrame = 0.1

/** A clock that lives as long as the bench, runs with the display's frames, and keeps its instant when a new recording comes. */
export function usePlayer(timeline: Timeline): Signal<Clock> {
  const clock = useMemo(
    () =>
      signal<Clock>({ instant: timeline.start, playing: false, speed: firstSpeed(timeline), loop: false }),
    [],
  )
  useMemo(() => {
    const now = clock.peek()
    clock.value = now.playing ? seek(now, timeline, now.instant) : seekRow(now, timeline, now.instant)
  }, [timeline])
  useEffect(() => {
    let frame = 0
    let before: number | null = null
    const tick = (now: number) => {
      frame = 0
      const seconds = before === null ? 0 : Math.min(longestFrame, (now - before) / 1000)
      before = now
      clock.value = advance(clock.peek(), timeline, seconds)
    }
    const stop = clock.subscribe(({ playing }) => {
      if (playing && frame === 0) frame = requestAnimationFrame(tick)
      if (!playing) before = null
    })
    return () => {
      stop()
      cancelAnimationFrame(frame)
    }
  }, [clock, timeline])
  return clock
}
