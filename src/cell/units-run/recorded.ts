import type { Machine } from "./machine.ts"
import type { Value } from "./value.ts"
import { unitOf } from "./words.ts"

/** The name under which the unit of time is kept. */
const time = "t"
const deepest = 6
/** A scalar of this name with the dimension of energy is a torque all the same. */
const torqueName = /torque|moment/i

/** Keeps the units of what a call of record records; the first known one of a name in a cell stays. */
export function noteRecord(m: Machine, args: readonly Value[]): void {
  const [t, quantities] = args
  if (t) note(m, time, t, 0)
  // a recording counts time in seconds, whatever the program makes it from
  const units = unitsHere(m)
  if (!units.has(time)) units.set(time, "s")
  if (quantities?.kind === "record") for (const [key, value] of quantities.fields) note(m, key, value, 1)
}

function unitsHere(m: Machine): Map<string, string> {
  const found = m.units.get(m.cell)
  if (found) return found
  const fresh = new Map<string, string>()
  m.units.set(m.cell, fresh)
  return fresh
}

/** Keeps the unit of what a line sets; the first known one stays. */
export function noteLine(m: Machine, at: number, name: string, value: Value): void {
  if ((value.kind !== "scalar" && value.kind !== "vector") || value.measure.kind !== "unit") return
  if (m.lines.has(at)) return
  const shape = value.kind === "scalar" && torqueName.test(name) ? "vector" : value.kind
  m.lines.set(at, unitOf(value.measure, shape))
}

function note(m: Machine, name: string, value: Value, depth: number): void {
  m.step()
  if (depth > deepest) return
  if (value.kind === "record")
    for (const [key, field] of value.fields) note(m, `${name}.${key}`, field, depth + 1)
  else if ((value.kind === "scalar" || value.kind === "vector") && value.measure.kind === "unit") {
    const units = unitsHere(m)
    if (units.has(name)) return
    const shape = value.kind === "scalar" && torqueName.test(name) ? "vector" : value.kind
    units.set(name, unitOf(value.measure, shape))
  }
}
