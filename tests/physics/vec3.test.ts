import { describe, expect, it } from "vitest"
import {
  across,
  along,
  angleBetween,
  asVec3,
  component,
  isVec3,
  momentumOf,
  rotate,
  unit,
  Vec3,
  vec3,
  weight,
} from "../../src/physics/index.ts"

const r = vec3(1.5, -2, 0.25)

describe("a vector", () => {
  it("has x, y, z as its own plain properties and nothing else", () => {
    expect(Object.keys(r)).toEqual(["x", "y", "z"])
    expect({ ...r }).toEqual({ x: 1.5, y: -2, z: 0.25 })
  })
  it("reads as text in a message and throws where a number is wanted", () => {
    expect(`${r}`).toBe("(1.5, -2, 0.25)")
    expect(String(r)).toBe("(1.5, -2, 0.25)")
    expect(() => Number(r)).toThrow("no single number")
    expect(() => (r as unknown as number) < 3).toThrow("no single number")
  })
  it("survives a structured copy and JSON, and every function takes what comes back", () => {
    for (const copy of [structuredClone(r), JSON.parse(JSON.stringify(r))] as unknown[]) {
      expect(copy instanceof Vec3).toBe(false)
      expect(isVec3(copy)).toBe(true)
      const back = asVec3(copy)
      expect(back.equals(r)).toBe(true)
      expect(back instanceof Vec3).toBe(true)
      const plain = copy as Vec3
      expect(momentumOf(2, plain).equals(momentumOf(2, r))).toBe(true)
      expect(weight(2, plain).equals(weight(2, r))).toBe(true)
      expect(r.add(plain).equals(r.times(2))).toBe(true)
      expect(r.equals(plain)).toBe(true)
    }
  })
  it("compares by value", () => {
    expect(vec3(0, 1, 2).equals(vec3(0, 1, 2))).toBe(true)
    expect(vec3(0, 1, 2).equals(vec3(-0, 1, 2))).toBe(true)
    expect(vec3(0, 1, 2).equals(vec3(0, 1, 2.0000000000000004))).toBe(false)
    expect(vec3(0, 1, 2).equals("(0, 1, 2)" as unknown as Vec3)).toBe(false)
  })
  it("is not changed by what is done with it", () => {
    const before = { ...r }
    r.add(r)
      .subtract(r)
      .times(3)
      .over(2)
      .cross(vec3(1, 1, 1))
      .negated()
    rotate(r, vec3(0, 0, 1), 2)
    expect({ ...r }).toEqual(before)
  })
})

describe("directions", () => {
  it("along and across make up the vector, at right angles to each other", () => {
    const n = vec3(0.3, 5, -1)
    const [a, b] = [along(r, n), across(r, n)]
    expect(a.add(b).subtract(r).magnitude()).toBeLessThan(1e-15)
    expect(Math.abs(a.dot(b))).toBeLessThan(1e-15)
    expect(Math.abs(a.magnitude() - Math.abs(component(r, n)))).toBeLessThan(1e-15)
  })
  it("the angle between nearly parallel vectors keeps its digits", () => {
    expect(angleBetween(vec3(1, 0, 0), vec3(1, 1e-9, 0))).toBe(1e-9)
    expect(angleBetween(vec3(1, 0, 0), vec3(-1, 0, 0))).toBe(Math.PI)
  })
  it("a rotation is right-handed, keeps lengths, and a quarter turn four times is none", () => {
    const quarter = (v: Vec3) => rotate(v, vec3(0, 0, 7), Math.PI / 2)
    expect(
      quarter(vec3(1, 0, 0))
        .subtract(vec3(0, 1, 0))
        .magnitude(),
    ).toBeLessThan(1e-15)
    expect(
      quarter(quarter(quarter(quarter(r))))
        .subtract(r)
        .magnitude(),
    ).toBeLessThan(4e-15)
  })
  it("a unit vector has length 1 for the shortest and the longest vectors", () => {
    for (const v of [
      vec3(5e-324, 5e-324, 0),
      vec3(1e-310, 0, 2e-310),
      vec3(1e308, 1e308, 1e308),
      vec3(1e-160, 3e-160, 0),
    ]) {
      expect(Math.abs(unit(v).magnitude() - 1)).toBeLessThan(4e-16)
    }
  })
})
