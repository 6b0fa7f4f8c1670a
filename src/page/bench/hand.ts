import { computed, type Signal } from "@preact/signals"
import { useEffect } from "preact/hooks"
import { type Clock, shownInstant, stepRows } from "./clock.ts"
import type { BenchHand } from "./contract.ts"
import { decimalsFor, fixed, thinSpace } from "./number.ts"
import type { Study } from "./study.ts"
import { meanStep } from "./timeline.ts"

/** Tells the page which motion and row the bench shows, for as long as it shows it. */
export function useHand(
  hand: Signal<BenchHand | null> | undefined,
  study: Study,
  clock: Signal<Clock>,
): void {
  useEffect(() => {
    if (!hand) return
    const { timeline } = study
    const decimals = Math.min(6, decimalsFor(meanStep(timeline)))
    const own: BenchHand = {
      cell: study.recording.cell,
      rows: timeline.rows,
      row: computed(() => timeline.rowAt(clock.value.instant)),
      time: computed(() =>
        timeline.unit === "s" ? `${fixed(shownInstant(clock.value, timeline), decimals)}${thinSpace}s` : "",
      ),
      step: by => {
        clock.value = stepRows(clock.peek(), timeline, by)
      },
    }
    hand.value = own
    return () => {
      if (hand.peek() === own) hand.value = null
    }
  }, [hand, study, clock])
}
