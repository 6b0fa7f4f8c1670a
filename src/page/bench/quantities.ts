import { angularAt, hasMomentum } from "./angular.ts"
import { rangeOf } from "./events.ts"
import { massOf } from "./mass.ts"
import { type BodyColumns, lengthAt, valueAt } from "./series.ts"
import type { Study } from "./study.ts"
import { worksOf } from "./work.ts"

export type Ink = "position" | "velocity" | "momentum" | "force" | "net" | "energy" | "scalar"
export type Component = "x" | "y" | "z" | "size"

/** Something recorded, or one step from it, that can be plotted and tabled: a number for each row. */
export interface Quantity {
  /** as a worksheet names it: `key.position.y`, `energy`, `t` */
  readonly id: string
  /** in words, without unit */
  readonly label: string
  /** short, for the end of a line: `y`, `weight y` */
  readonly short: string
  readonly unit: string
  readonly ink: Ink
  readonly component: Component | null
  readonly read: (row: number) => number
}

const origin = [0, 0, 0] as const

type Units = Readonly<Record<string, string>>
const components: readonly Component[] = ["x", "y", "z", "size"]

/** Time, and then everything recorded, body by body; velocity and kinetic energy where momentum and motion give a mass. */
export function quantitiesOf(study: Study, units: Units, label: (body: string) => string): Quantity[] {
  const { recording, timeline, bodies } = study
  const time: Quantity = {
    id: "t",
    label: timeline.unit === "s" ? "time" : "row",
    short: "t",
    unit: timeline.unit === "s" ? "s" : "",
    ink: "scalar",
    component: null,
    read: timeline.at,
  }
  const out = [time, ...bodies.flatMap(body => bodyQuantities(study, body, units, label(body.name)))]
  const taken = new Set(out.map(q => q.id))
  for (const series of recording.series) {
    const unit = units[series.name] ?? ""
    if (series.kind === "scalar") {
      const read = (row: number) => valueAt(recording, row, series.column)
      out.push({
        id: series.name,
        label: series.name,
        short: series.name,
        unit,
        ink: /energy/i.test(series.name) ? "energy" : "scalar",
        component: null,
        read,
      })
    } else if (!taken.has(`${series.name}.x`))
      out.push(
        ...vector(study, series.name, series.name, series.name, series.column, unit, inkOf(series.name)),
      )
  }
  return out
}

export function quantityNamed(quantities: readonly Quantity[], id: string): Quantity | null {
  return quantities.find(q => q.id === id) ?? null
}

/** The coordinate that a plot without instructions shows: the one that the first body moves along most. */
export function mainQuantity(study: Study, quantities: readonly Quantity[]): Quantity | null {
  const [body] = study.bodies
  if (!body) return quantities.find(q => q.id !== "t") ?? null
  const of = (axis: string) => quantityNamed(quantities, `${body.name}.position.${axis}`)
  const [alongX, alongY] = [0, 1].map(k => rangeOf(study.recording, body.position + k))
  const [x, y] = [of("x"), of("y")]
  return (alongX ?? 0) > (alongY ?? 0) ? x : y
}

function bodyQuantities(study: Study, body: BodyColumns, units: Units, label: string): Quantity[] {
  const name = body.name
  const unit = (series: string, usual: string) => units[`${name}.${series}`] ?? usual
  const out = vector(
    study,
    `${name}.position`,
    `position of ${label}`,
    "",
    body.position,
    unit("position", "m"),
    "position",
  )
  if (body.momentum !== null) {
    const momentum = body.momentum
    out.push(
      ...vector(
        study,
        `${name}.momentum`,
        `momentum of ${label}`,
        "p",
        momentum,
        unit("momentum", "kg m/s"),
        "momentum",
      ),
    )
    const mass = massOf(study.recording, study.timeline, body)
    if (mass.kind === "found") {
      const read = (k: number) => (row: number) => valueAt(study.recording, row, momentum + k) / mass.mass
      out.push(...derived(`${name}.velocity`, `velocity of ${label}`, "v", "m/s", "velocity", read))
      const energy = (row: number) => lengthAt(study.recording, row, momentum) ** 2 / (2 * mass.mass)
      out.push({
        id: `${name}.kineticEnergy`,
        label: `kinetic energy of ${label}`,
        short: "K",
        unit: "J",
        ink: "energy",
        component: null,
        read: energy,
      })
    }
  }
  if (hasMomentum(body)) {
    const read = (k: number) => (row: number) => angularAt(study.recording, body, origin, row, k)
    const angular = derived(
      `${name}.angularMomentum`,
      `angular momentum of ${label} about the origin`,
      "L",
      "kg m^2/s",
      "momentum",
      read,
    )
    out.push(...angular)
  }
  for (const force of body.forces) {
    const read = (row: number) =>
      worksOf(study.recording, study.timeline, body)?.byForce.get(force.name)?.[row] ?? Number.NaN
    out.push({
      id: `${name}.work.${force.name}`,
      label: `work of ${force.name} on ${label}`,
      short: `W ${force.name}`,
      unit: "J",
      ink: "energy",
      component: null,
      read,
    })
  }
  for (const force of body.forces) {
    const series = `forces.${force.name}`
    out.push(
      ...vector(
        study,
        `${name}.${series}`,
        `${force.name} on ${label}`,
        force.name,
        force.column,
        unit(series, "N"),
        "force",
      ),
    )
  }
  if (body.forces.length > 1) {
    const read = (k: number) => (row: number) =>
      body.forces.reduce((sum, force) => sum + valueAt(study.recording, row, force.column + k), 0)
    out.push(...derived(`${name}.netForce`, `net force on ${label}`, "net", "N", "net", read))
  }
  return out
}

function vector(
  study: Study,
  id: string,
  label: string,
  short: string,
  column: number,
  unit: string,
  ink: Ink,
): Quantity[] {
  return derived(id, label, short, unit, ink, k => row => valueAt(study.recording, row, column + k))
}

function derived(
  id: string,
  label: string,
  short: string,
  unit: string,
  ink: Ink,
  read: (k: number) => (row: number) => number,
): Quantity[] {
  const [x, y, z] = [read(0), read(1), read(2)]
  return components.map((component, k) => ({
    id: `${id}.${component}`,
    label: component === "size" ? `size of ${label}` : `${label}, ${component}`,
    short: component === "size" ? `|${short || "r"}|` : `${short} ${component}`.trim(),
    unit,
    ink,
    component,
    read: component === "size" ? row => Math.hypot(x(row), y(row), z(row)) : read(k),
  }))
}

function inkOf(series: string): Ink {
  return series.includes(".forces.") ? "force" : "scalar"
}
