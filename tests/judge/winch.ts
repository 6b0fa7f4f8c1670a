import { parseWorksheet, type Worksheet } from "../../src/worksheet/index.ts"

/** A crate that is pulled by a winch against friction; invented. Parts of it are replaced by the tests. */
export const winch = `---
title: The winch
id: winch
version: 1
timeStep: dt
parameters:
  mass: { label: mass, unit: kg, value: 20, range: [10, 40], vary: true }
  pull: { label: pull of the winch, unit: N, value: 60, range: [40, 90], vary: true }
---

\`\`\`ts cell haul
const dt: Scalar<'s'> = 0.005
let r: Vec3<'m'> = vec3(0, 0, 0)
let p: Vec3<'kg m/s'> = vec3(0, 0, 0)
let t: Scalar<'s'> = 0
let n = 0
while (t < 1) {
  let Fnet: Vec3<'N'> = vec3(0, 0, 0)
  // blank net: The net force of winch and drag.
  Fnet = vec3(pull, 0, 0) - 15 * p / mass
  // end blank
  // blank update: First the momentum, then the position.
  p = p + Fnet * dt
  r = r + (p / mass) * dt
  // end blank
  n = n + 1
  t = n * dt
  record(t, { crate: { position: r, momentum: p, forces: { net: Fnet } } })
}
\`\`\`

\`\`\`yaml check hauls
cell: haul
compare: crate.position
points: 3
draws: 5
hint: Watch the first steps.
slips: { mass-missing: Does a heavy crate move as fast as a light one? }
\`\`\`

\`\`\`yaml check books
cell: haul
law: momentum
body: crate
points: 1
\`\`\`
`

export function readSheet(text: string): Worksheet {
  const result = parseWorksheet(text, "winch.md")
  if (!result.ok) throw new Error(JSON.stringify(result.problems, null, 1))
  return result.worksheet
}
