import { angularAt, hasMomentum } from "./angular.ts"
import { kinetic } from "./books.ts"
import { massOf } from "./mass.ts"
import type { PlotWish } from "./plot-model.ts"
import type { Component, Ink, Quantity } from "./quantities.ts"
import { type BodyColumns, valueAt } from "./series.ts"
import type { Study } from "./study.ts"
import { worksOf } from "./work.ts"

/** What the drawer of books plots beside what is recorded: an account of energy, and of angular momentum about a point. */
export interface Account {
  readonly quantities: readonly Quantity[]
  readonly wishes: readonly PlotWish[]
}

type Point = readonly [number, number, number]

/** The account of one body. */
export function accountOf(
  study: Study,
  body: BodyColumns,
  label: string,
  about: Point,
  own: readonly Quantity[],
): Account {
  const { recording, timeline } = study
  const name = body.name
  const quantities: Quantity[] = []
  const works = worksOf(recording, timeline, body)
  const mass = massOf(recording, timeline, body)
  const energy = [`${name}.kineticEnergy`]
  if (works && mass.kind === "found" && body.momentum !== null) {
    const { momentum } = body
    for (const [force, sums] of works.byForce)
      quantities.push(
        scalar(
          `${name}.minusWork.${force}`,
          `minus the work of ${force}`,
          "J",
          "energy",
          row => -(sums[row] ?? 0),
        ),
      )
    const all = [...works.byForce.values()]
    const left = (row: number) =>
      all.reduce((sum, sums) => sum - (sums[row] ?? 0), kinetic(recording, momentum, row, mass.mass))
    quantities.push(
      scalar(`${name}.left`, "sum of these: level while the books balance", "J", "scalar", left),
    )
    energy.push(...quantities.map(q => q.id))
  }
  if (hasMomentum(body)) quantities.push(...angularQuantities(study, [body], `${name}.about`, label, about))
  const has = (id: string) => [...own, ...quantities].some(q => q.id === id)
  const moving = movingParts(study, [...own, ...quantities])
  const sum = has(`${name}.netForce.x`) ? [`${name}.netForce`] : []
  const vectors = [`${name}.momentum`, ...sum, `${name}.about`].map(moving)
  return {
    quantities,
    wishes: [...vectors, ...(energy.every(has) ? [energy] : [])].map(y => ({ x: "t", y, caption: "" })),
  }
}

/** The account of all bodies together: what no force between them can change. */
export function accountOfAll(study: Study, bodies: readonly BodyColumns[], about: Point): Account {
  const { recording, timeline } = study
  const total = (k: number) => (row: number) =>
    sumOf(bodies.map(body => valueAt(recording, row, (body.momentum ?? 0) + k)))
  const quantities = [
    ...vector("all.momentum", "momentum of all bodies", "kg m/s", total),
    ...angularQuantities(study, bodies.filter(hasMomentum), "all.about", "all bodies", about),
  ]
  const masses = bodies.map(body => massOf(recording, timeline, body))
  if (masses.every(mass => mass.kind === "found")) {
    const energy = (row: number) =>
      bodies.reduce((sum, body, k) => {
        const mass = masses[k]
        return mass?.kind === "found" ? sum + kinetic(recording, body.momentum ?? 0, row, mass.mass) : sum
      }, 0)
    quantities.push(scalar("all.kineticEnergy", "kinetic energy of all bodies", "J", "energy", energy))
  }
  const moving = movingParts(study, quantities)
  const wishes = ["all.momentum", "all.about"].map(moving)
  if (quantities.some(q => q.id === "all.kineticEnergy")) wishes.push(["all.kineticEnergy"])
  return { quantities, wishes: wishes.map(y => ({ x: "t", y, caption: "" })) }
}

function angularQuantities(
  study: Study,
  bodies: readonly (BodyColumns & { readonly momentum: number })[],
  id: string,
  label: string,
  about: Point,
): Quantity[] {
  const read = (k: number) => (row: number) =>
    sumOf(bodies.map(body => angularAt(study.recording, body, about, row, k)))
  const [x, y, z] = about
  const point = x === 0 && y === 0 && z === 0 ? "the origin" : `(${x}, ${y})`
  return vector(id, `angular momentum of ${label} about ${point}`, "kg m^2/s", read)
}

/** What is left of parts that cancel is rounding below this share of them, and no quantity. */
const dust = 1e-11

function sumOf(parts: readonly number[]): number {
  const sum = parts.reduce((a, b) => a + b, 0)
  return Math.abs(sum) < dust * parts.reduce((a, b) => a + Math.abs(b), 0) ? 0 : sum
}

const scalar = (
  id: string,
  label: string,
  unit: string,
  ink: Ink,
  read: (row: number) => number,
): Quantity => ({
  id,
  label,
  short: label,
  unit,
  ink,
  component: null,
  read,
})

function vector(
  id: string,
  label: string,
  unit: string,
  read: (k: number) => (row: number) => number,
): Quantity[] {
  return (["x", "y", "z"] as readonly Component[]).map((component, k) => ({
    ...scalar(`${id}.${component}`, `${label}, ${component}`, unit, "momentum", read(k)),
    component,
  }))
}

/** Components of a vector that ever leave zero. If none does, the one a motion in the plane would have: x, but z of what turns. */
function movingParts({ recording }: Study, quantities: readonly Quantity[]) {
  return (name: string): string[] => {
    const parts = ["x", "y", "z"].map(k => `${name}.${k}`)
    const moving = parts.filter(id => {
      const read = quantities.find(q => q.id === id)?.read
      for (let row = 0; read && row < recording.rows; row++) if (read(row) !== 0) return true
      return false
    })
    return moving.length > 0 ? moving : [`${name}.${name.endsWith(".about") ? "z" : "x"}`]
  }
}
