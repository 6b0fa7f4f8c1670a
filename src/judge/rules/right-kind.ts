import { seriesOf } from "../../worksheet/series.ts"
import { type Asked, type Finding, found } from "../finding.ts"
import { capital, spoken } from "../quantity.ts"
import { columnsOf } from "../track.ts"

const kindOf = (dim: number): string => (dim === 3 ? "vector" : "number")

/**
 * A finding where a series that the rule reads is recorded as a vector and should be a number, or the other way round, at
 * any time step; null where all are what they should be, or are not there, which each rule says in words of its own.
 */
export function wrongKind({ check, student, reference }: Asked): Finding | null {
  for (const { name, as } of seriesOf(check.rule)) {
    const right = as === "vector" ? 3 : as === "component" ? 1 : dimOf(reference.runs[0], check.cell, name)
    if (right === null) continue
    for (const recordings of student.runs) {
      const dim = dimOf(recordings, check.cell, name)
      if (dim === null || dim === right) continue
      const what = spoken(name).name
      return found({
        met: false,
        departsAt: 0,
        wrong: `${capital(what)} is recorded as a ${kindOf(dim)}, but it is a ${kindOf(right)}.`,
        look: "Look at the line with record, and at what your lines put into that name.",
      })
    }
  }
  return null
}

function dimOf(recordings: Asked["student"]["runs"][number] | undefined, cell: string, name: string) {
  const recording = recordings?.find(one => one.cell === cell)
  return recording === undefined ? null : (columnsOf(recording, name)?.dim ?? null)
}
