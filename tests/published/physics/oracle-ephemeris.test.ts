import vsopEarth from "astronomia/data/vsop87Bearth"
import vsopJupiter from "astronomia/data/vsop87Bjupiter"
import vsopMars from "astronomia/data/vsop87Bmars"
import vsopMercury from "astronomia/data/vsop87Bmercury"
import vsopSaturn from "astronomia/data/vsop87Bsaturn"
import vsopUranus from "astronomia/data/vsop87Buranus"
import vsopVenus from "astronomia/data/vsop87Bvenus"
import { Planet } from "astronomia/planetposition"
import { describe, expect, it } from "vitest"
import {
  astronomicalUnit,
  type Body,
  gravityForce,
  pairForces,
  rungeKutta4,
  type System,
  type Vec3,
  vec3,
} from "../../../src/physics/index.ts"

const day = 86400
const sun = 132712440041279420000
const startDate = 2460676.5

/** Sun over planet, from memory (IAU working values); the Earth with its Moon. */
const ratios = {
  Mercury: 6023600,
  Venus: 408523.72,
  Earth: 328900.56,
  Mars: 3098703.6,
  Jupiter: 1047.3486,
  Saturn: 3497.9,
  Uranus: 22902.98,
}
type Name = keyof typeof ratios
const series: Record<Name, InstanceType<typeof Planet>> = {
  Mercury: new Planet(vsopMercury),
  Venus: new Planet(vsopVenus),
  Earth: new Planet(vsopEarth),
  Mars: new Planet(vsopMars),
  Jupiter: new Planet(vsopJupiter),
  Saturn: new Planet(vsopSaturn),
  Uranus: new Planet(vsopUranus),
}

/** Place relative to the Sun, m, in the ecliptic of date J2000. */
function place(name: Name, date: number): Vec3 {
  const { lon, lat, range } = series[name].position2000(date)
  const r = range * astronomicalUnit
  return vec3(r * Math.cos(lat) * Math.cos(lon), r * Math.cos(lat) * Math.sin(lon), r * Math.sin(lat))
}

/** Velocity from five places half a day apart. */
function velocity(name: Name, date: number): Vec3 {
  const at = (k: number) => place(name, date + k / 2)
  return at(1)
    .subtract(at(-1))
    .times(8)
    .subtract(at(2).subtract(at(-2)))
    .over(12 * (day / 2))
}

function twoBodyError(name: Name, date: number, days: number): number {
  const law = ({ bodies: [b] }: System) => [
    gravityForce(b!.position, vec3(0, 0, 0), { mass: 1, massParameter: sun * (1 + 1 / ratios[name]) }),
  ]
  let now: System = {
    time: 0,
    bodies: [{ mass: 1, position: place(name, date), momentum: velocity(name, date) }],
  }
  for (let n = 0; n < days; n++) now = rungeKutta4(now, law, day)
  return now.bodies[0]!.position.subtract(place(name, date + days)).magnitude() / 1000
}

/** G03: VSOP87 (P. Bretagnon and G. Francou, Astron. Astrophys. 202, 309 (1988)) in the npm package astronomia 4.2.0. */
describe("G03 Mars over 100 days against an ephemeris", () => {
  it("two bodies, Sun and Mars: within 15 000 km after 100 days, from several starting dates", () => {
    const errors = [0, 200, 400, 600].map(shift => twoBodyError("Mars", startDate + shift, 100))
    for (const error of errors) expect(error).toBeLessThan(15_000)
    expect(errors[0]).toBeGreaterThan(5000)
    expect(errors[0]).toBeLessThan(6000)
  })
  it.each([
    [10, 56],
    [30, 492],
    [100, 5548],
  ])(
    "two bodies after %d days: the published difference of %d km, which is the pull of the other planets",
    (days, km) => {
      expect(Math.abs(twoBodyError("Mars", startDate, days) / km - 1)).toBeLessThan(0.05)
    },
  )
  it("with six planets as perturbers Mars is within 50 km after 100 days", () => {
    const names = Object.keys(ratios) as Name[]
    const bodies: Body[] = [{ mass: 1, position: vec3(0, 0, 0), momentum: vec3(0, 0, 0) }]
    for (const name of names) {
      const mass = 1 / ratios[name]
      bodies.push({ mass, position: place(name, startDate), momentum: velocity(name, startDate).times(mass) })
    }
    // masses in units of the Sun's, so that GM of each is known without G
    const law = (s: System) =>
      pairForces(s.bodies, (a, b) =>
        gravityForce(a.position, b.position, { mass: a.mass, massParameter: sun * b.mass }),
      )
    let now: System = { time: 0, bodies }
    for (let n = 0; n < 200; n++) now = rungeKutta4(now, law, day / 2)
    const mars = 1 + names.indexOf("Mars")
    const got = now.bodies[mars]!.position.subtract(now.bodies[0]!.position)
    const error = got.subtract(place("Mars", startDate + 100)).magnitude() / 1000
    expect(error).toBeLessThan(50)
  })
})
