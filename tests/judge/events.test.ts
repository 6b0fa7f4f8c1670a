import { describe, expect, it } from "vitest"
import { eventsOf, matchEvents } from "../../src/judge/events.ts"
import { trackOf } from "../../src/judge/track.ts"
import { bounce, type Method, type Scene, simulate } from "./steppers.ts"

const track = (scene: Scene, method: Method = "momentum first") =>
  trackOf(simulate(scene, method), "body0.position")!

/** Falls from 0.5 m with g = 9.80665: the first contact at √(2 H / g), and half a period of contact √(m / k) π. */
const impact = Math.sqrt(1 / 9.80665)
const halfPeriod = Math.PI * Math.sqrt(0.2 / 2000)

describe("events of a motion", () => {
  it("are its contacts, with instant, place and speeds before and after (CHECKS I08, K03)", () => {
    const [first] = eventsOf(track(bounce())).filter(event => event.kind === "contact")
    expect(first!.from).toBeGreaterThan(impact - 0.01)
    expect(first!.from).toBeLessThan(impact + 0.01)
    expect(first!.to - first!.from).toBeGreaterThan(0.8 * halfPeriod)
    expect(first!.to - first!.from).toBeLessThan(1.3 * halfPeriod)
    expect(first!.before).toBeCloseTo(Math.sqrt(2 * 9.80665 * 0.5), 1)
    expect(first!.after).toBeCloseTo(first!.before, 1)
  })

  it("are its turning points", () => {
    const tops = eventsOf(track(bounce())).filter(
      event => event.kind === "turning point" && event.place[1]! > 0.3,
    )
    expect(tops.length).toBe(2)
    expect(tops[0]!.t).toBeCloseTo(2 * impact + halfPeriod, 1)
    expect(tops[0]!.place[1]).toBeCloseTo(0.5, 2)
  })

  it("match one by one: a bounce some steps late is a little late, not wrong", () => {
    const { pairs, missing, extra } = matchEvents(track(bounce(), "velocity Verlet"), track(bounce()))
    expect(missing).toEqual([])
    expect(extra).toEqual([])
    for (const pair of pairs) {
      expect(Math.abs(pair.late)).toBeLessThan(0.005)
      expect(Math.abs(pair.faster)).toBeLessThan(0.02)
    }
  })

  it("tell a wrong law by the speed after, and a floor that is not there by the contact that is missing", () => {
    const damped: Scene = {
      ...bounce(),
      force: (r, p) => [0, -0.2 * 9.80665 + (r[1]! < 0 ? Math.max(0, -2000 * r[1]! - 8 * (p[1]! / 0.2)) : 0)],
    }
    const { pairs } = matchEvents(track(damped), track(bounce()))
    expect(pairs.find(pair => pair.reference.kind === "contact")!.faster).toBeLessThan(-0.2)
    const falls: Scene = { ...bounce(), force: () => [0, -0.2 * 9.80665] }
    expect(matchEvents(track(falls), track(bounce())).missing.some(event => event.kind === "contact")).toBe(
      true,
    )
  })
})
