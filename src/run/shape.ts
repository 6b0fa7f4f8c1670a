import { inSeconds } from "./limits.ts"
import { stop } from "./stop.ts"

/** Bounds on what one record may hold. Far above any worksheet; they keep a hostile one small. */
export const maxSeries = 256
export const maxDepth = 6
export const maxName = 60

/** One quantity of one call of record, as read: its dotted name and its one or three numbers. */
export interface Quantity {
  readonly name: string
  readonly kind: "vector" | "scalar"
  readonly values: readonly number[]
}

const components = ["x", "y", "z"] as const
/** Letters, digits, _ and $ of any script, as in a name of the language; so no dots, blanks, marks or pictures. */
const plainName = /^[\p{ID_Start}_$][\p{ID_Continue}$]*$/u
const reserved = new Set(["__proto__", "prototype", "constructor"])

/** A value in a few words, for a message; never calls anything of the value's own. */
export function seen(value: unknown): string {
  switch (typeof value) {
    case "undefined":
      return "nothing (undefined)"
    case "string":
      return "a text"
    case "number":
    case "boolean":
      return String(value)
    case "object":
      return value === null ? "null" : "an object of another kind"
    default:
      return `a ${typeof value}`
  }
}

export const shortName = (name: string): string => (name.length > 40 ? `${name.slice(0, 40)}…` : name)

/**
 * Reads what a call of record was given, each value once, and says in words what cannot be kept.
 * Slow and thorough: used for the first record of a cell, and for any that the quick way does not know.
 */
export function survey(quantities: unknown, time: number, vectorPrototype: object): Quantity[] {
  const found: Quantity[] = []
  const at = `At t = ${inSeconds(time)}`

  const visit = (value: unknown, path: string, depth: number): void => {
    if (typeof value === "number") {
      if (!Number.isFinite(value)) throw notFinite(path, String(value), time)
      found.push({ name: path, kind: "scalar", values: [value] })
      return
    }
    if (typeof value !== "object" || value === null) throw notANumber(path, value, at)
    const prototype = Object.getPrototypeOf(value)
    if (prototype === vectorPrototype) {
      const vector = value as Record<(typeof components)[number], unknown>
      const values = components.map(c => {
        const component = vector[c]
        if (typeof component !== "number") throw notANumber(`${path}.${c}`, component, at)
        return component
      })
      if (!values.every(Number.isFinite)) throw notFinite(path, `(${values.join(", ")})`, time)
      found.push({ name: path, kind: "vector", values })
      return
    }
    if (prototype !== Object.prototype && prototype !== null) throw notANumber(path, value, at)
    if (depth >= maxDepth)
      throw stop(
        "record-shape",
        `${at}, record found groups within groups more than ${maxDepth} deep, at "${shortName(path)}".`,
        "Give record at most a few levels, such as { key: { position: r } }.",
      )
    const group = value as Record<string, unknown>
    let members = 0
    for (const key in group) {
      checkName(key, path)
      members++
      if (members > maxSeries || found.length >= maxSeries)
        throw stop(
          "record-shape",
          `${at}, record was given more than ${maxSeries} quantities.`,
          "Record only what is to be drawn or checked.",
        )
      visit(group[key], path === "" ? key : `${path}.${key}`, depth + 1)
    }
    if (members === 0)
      throw stop(
        "record-shape",
        path === ""
          ? `${at}, record was given no quantity.`
          : `${at}, record was given the empty group "${shortName(path)}".`,
        "Give each quantity by a name, such as { key: { position: r } }.",
      )
  }

  if (
    typeof quantities !== "object" ||
    quantities === null ||
    Object.getPrototypeOf(quantities) === vectorPrototype
  )
    throw stop(
      "record-shape",
      `${at}, record was given ${quantities !== null && typeof quantities === "object" ? "a bare vector" : seen(quantities)} where the quantities belong.`,
      "Give each quantity by a name, such as record(t, { key: { position: r } }).",
    )
  visit(quantities, "", 0)
  return found
}

function checkName(key: string, path: string): void {
  if (key.length <= maxName && plainName.test(key) && !reserved.has(key)) return
  const where = path === "" ? "" : ` in "${shortName(path)}"`
  throw stop(
    "record-shape",
    key.length > maxName
      ? `A name given to record${where} is ${key.length} characters long; ${maxName} is the most.`
      : `record cannot keep a quantity under the name ${JSON.stringify(shortName(key))}${where}.`,
    "Use a short name of letters and digits that starts with a letter, such as position.",
  )
}

function notANumber(path: string, value: unknown, at: string) {
  return stop(
    "record-value",
    `${at}, "${shortName(path)}" is ${seen(value)}, and record keeps numbers and vectors.`,
    "Check the line that sets it; give record a number, a vec3 or a group of these.",
  )
}

function notFinite(path: string, value: string, time: number) {
  return stop(
    "record-value",
    `At t = ${inSeconds(time)}, "${shortName(path)}" is ${value}.`,
    "Look for a division by zero, a square root of a negative number, or a time step so long that the motion grows without bound.",
  )
}
