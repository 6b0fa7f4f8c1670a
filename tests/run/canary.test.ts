import { describe, expect, it } from "vitest"
import { createCanary } from "../../src/run/canary.ts"

class Vec3 {
  readonly x: number
  readonly y: number
  readonly z: number
  constructor(x: number, y: number, z: number) {
    this.x = x
    this.y = y
    this.z = z
  }
}
Object.freeze(Vec3)
Object.freeze(Vec3.prototype)

/** A library whose functions can be bent from inside, as a flaw in the real one might allow. */
function library() {
  let bend = 0
  const shared = {
    Vec3,
    vec3: Object.freeze((x: number, y: number, z: number) => new Vec3(x + bend, y, z)),
    Math: Object.freeze({ sin: Math.sin, sqrt: Math.sqrt, exp: Math.exp }),
  }
  return { shared, bend: (by: number) => (bend = by) }
}

describe("the canary of a realm", () => {
  it("sings as long as nothing changed", () => {
    const canary = createCanary(library().shared)
    expect(canary.unchanged()).toBe(true)
    expect(canary.unchanged()).toBe(true)
  })

  it("notices a name that was added to the global object, or taken from it", () => {
    const canary = createCanary(library().shared)
    Reflect.set(globalThis, "leftBehind", 1)
    expect(canary.unchanged()).toBe(false)
    Reflect.deleteProperty(globalThis, "leftBehind")
    expect(canary.unchanged()).toBe(true)
  })

  it("notices a library that gives other bits", () => {
    const { shared, bend } = library()
    const canary = createCanary(shared)
    bend(1e-18)
    expect(canary.unchanged()).toBe(true)
    bend(1e-9)
    expect(canary.unchanged()).toBe(false)
  })
})
