import type { Recording } from "../run/contract.ts"
import type { Runs } from "./finding.ts"
import type { Ladder } from "./limit.ts"
import { type Track, trackOf } from "./track.ts"

/** A series of one cell at every factor that has it; null when not even the given step has. */
export function ladderOf({ factors, runs }: Runs, cell: string, path: string): Ladder | null {
  const tracks: Track[] = []
  const kept: number[] = []
  for (const [i, recordings] of runs.entries()) {
    const track = trackOf(
      recordings.find(recording => recording.cell === cell),
      path,
    )
    if (track === null) break
    tracks.push(track)
    kept.push(factors[i]!)
  }
  return tracks.length === 0 ? null : { factors: kept, tracks }
}

/** The recording of a cell at the given step. */
export const recordingOf = ({ runs }: Runs, cell: string): Recording | undefined =>
  runs[0]?.find(recording => recording.cell === cell)

/** Whether a reference's motion in a cell is chaotic. */
export const isSensitive = ({ sensitive }: Runs, cell: string): boolean =>
  sensitive?.some(one => one.cell === cell) ?? false
