import { AstroTime, HelioState, Body as Planet } from "astronomy-engine"
import { describe, expect, it } from "vitest"
import { gravityForce, rungeKutta4, type System, vec3 } from "../../../src/physics/index.ts"
import { first } from "./one-body.ts"

const day = 86400
/** This library's own km in an astronomical unit: the older value that its data are in. */
const metresPerAu = 149597870690
const sun = 132712440041279420000

/** State relative to the Sun, m and m/s, `days` after 2025-01-01 (JDE 2460676.5). */
function state(planet: Planet, days: number) {
  const s = HelioState(planet, AstroTime.FromTerrestrialTime(2460676.5 - 2451545 + days))
  const speed = metresPerAu / day
  return {
    position: vec3(s.x, s.y, s.z).times(metresPerAu),
    momentum: vec3(s.vx, s.vy, s.vz).times(speed),
  }
}

/** G03 against a second ephemeris: the npm package astronomy-engine 2.1.19, a VSOP87 cut short (good to an arc minute by design). */
describe("G03 two-body motion against a second ephemeris", () => {
  // as in the published differences, without the planet's own mass
  const off = (planet: Planet, days: number) => {
    const law = ({ bodies: [b] }: System) => [
      gravityForce(b!.position, vec3(0, 0, 0), { mass: 1, massParameter: sun }),
    ]
    let now: System = { time: 0, bodies: [{ mass: 1, ...state(planet, 0) }] }
    for (let n = 0; n < days; n++) now = rungeKutta4(now, law, day)
    return first(now).position.subtract(state(planet, days).position).magnitude() / 1000
  }
  it.each([
    [10, 78],
    [30, 702],
    [100, 6582],
  ])("Mars after %d days: the published difference of %d km", (days, km) => {
    expect(Math.abs(off(Planet.Mars, days) / km - 1)).toBeLessThan(0.1)
  })
  it.each([
    [10, 423],
    [100, 3909],
  ])(
    "the Earth–Moon barycentre after %d days: %d km; the Earth alone would be off by 11 000 km in ten",
    (days, km) => {
      expect(Math.abs(off(Planet.EMB, days) / km - 1)).toBeLessThan(0.1)
      expect(off(Planet.Earth, 10)).toBeGreaterThan(9000)
    },
  )
})
