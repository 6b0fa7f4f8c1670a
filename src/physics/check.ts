import { PhysicsError } from "./problem.ts"

/** The door of the library: what comes in is checked here once, in words of mechanics; below it nothing is checked again. */

interface Components {
  readonly x: number
  readonly y: number
  readonly z: number
}

/** The value itself if it is a finite number; else an error that names the quantity. */
export function checkedNumber(value: unknown, name: string): number {
  if (typeof value === "number") {
    if (Number.isFinite(value)) return value
    throw new PhysicsError(
      "not-finite",
      `${capital(name)} is ${value}.`,
      Number.isNaN(value)
        ? "NaN comes from 0/0, from the root of a negative number, or from a variable that was never given a number: print the quantities that go into it."
        : "Something was divided by zero or grew without bound: print the quantities that go into it, or take a smaller time step.",
      value,
    )
  }
  if (value === undefined) throw missing(name)
  if (isComponents(value)) {
    throw new PhysicsError(
      "not-a-number",
      `${capital(name)} must be a single number, and a vector ${shown(value)} was given.`,
      "Use one component such as v.x, or the magnitude.",
      value,
    )
  }
  throw new PhysicsError(
    "not-a-number",
    `${capital(name)} must be a number, and ${shown(value)} was given.`,
    "Write a number, or a variable that holds one.",
    value,
  )
}

/** The value itself if it is an object with finite numbers x, y and z. */
export function checkedVector(value: unknown, name: string): Components {
  if (isComponents(value)) {
    if (value.x - value.x === 0 && value.y - value.y === 0 && value.z - value.z === 0) return value
    throw new PhysicsError(
      "not-finite",
      `${capital(name)} is ${shown(value)}.`,
      "A component is not a finite number: look for a division by zero, or for a step so large that the motion grew without bound.",
      value,
    )
  }
  if (value === undefined) throw missing(name)
  throw new PhysicsError(
    "not-a-vector",
    `${capital(name)} must be a vector, and ${shown(value)} was given.`,
    typeof value === "number"
      ? "Say in which direction it points: write vec3(x, y, z)."
      : "Write vec3(x, y, z), or a variable that holds a vector.",
    value,
  )
}

/** A number above zero, such as a mass or a time step. */
export function checkedPositive(value: unknown, name: string): number {
  if (typeof value === "number" && value > 0 && value < Number.POSITIVE_INFINITY) return value
  const number = checkedNumber(value, name)
  throw new PhysicsError(
    "not-positive",
    `${capital(name)} is ${number}; it must be greater than zero.`,
    `Give ${name} a positive number.`,
    value,
  )
}

/** A number from `least` to `most`, both allowed. */
export function checkedRange(value: unknown, name: string, least: number, most: number): number {
  if (typeof value === "number" && value >= least && value <= most && value < Number.POSITIVE_INFINITY)
    return value
  const number = checkedNumber(value, name)
  const allowed =
    most === Number.POSITIVE_INFINITY
      ? `it must not be below ${least}`
      : `it must lie from ${least} to ${most}`
  throw new PhysicsError(
    "out-of-range",
    `${capital(name)} is ${number}; ${allowed}.`,
    "Check its sign and its unit.",
    value,
  )
}

/** A number that is zero or more, such as a stiffness or a friction coefficient. */
export function checkedAmount(value: unknown, name: string): number {
  return checkedRange(value, name, 0, Number.POSITIVE_INFINITY)
}

/** An options object with no key but the known ones; a misspelt one is named with the nearest that exists. */
export function checkedOptions(options: unknown, of: string, known: Readonly<Record<string, string>>): void {
  if (typeof options !== "object" || options === null) {
    throw new PhysicsError(
      options === undefined ? "missing-option" : "not-a-number",
      options === undefined
        ? `${of} needs its quantities by name, and none were given.`
        : `${of} takes its last quantities by name, and ${shown(options)} was given.`,
      `Write ${of}(…, { ${Object.keys(known).slice(0, 2).join(": …, ")}: … }).`,
      options,
    )
  }
  for (const key in options) {
    if (known[key] === undefined) throw unknownOption(key, of, Object.keys(known), options)
  }
}

/** An array, such as a list of bodies. */
export function checkedList<T>(value: readonly T[], name: string): readonly T[] {
  if (Array.isArray(value)) return value
  if (value === undefined) throw missing(name)
  throw new PhysicsError(
    "not-a-list",
    `${capital(name)} must be a list, and ${shown(value)} was given.`,
    "Put it in square brackets: [a, b].",
    value,
  )
}

/** Called with more or fewer arguments than a function takes. */
export function wrongCount(of: string, wanted: number, given: number): never {
  throw new PhysicsError(
    "wrong-argument-count",
    `${of} takes ${wanted} ${wanted === 1 ? "argument" : "arguments"}, and ${given} ${given === 1 ? "was" : "were"} given.`,
    given < wanted
      ? "Add what is missing, in the order of the reference page."
      : "Take out what is too many.",
    given,
  )
}

/** An object whose `kind` is none of those known. */
export function unknownKind(value: unknown, what: string, kinds: readonly string[]): PhysicsError {
  const given = typeof value === "object" && value !== null ? (value as { kind?: unknown }).kind : value
  const near = typeof given === "string" ? nearest(given, kinds) : undefined
  return new PhysicsError(
    "unknown-choice",
    `There is no ${what} of kind "${String(given)}".`,
    near === undefined ? `The kinds are ${kinds.join(", ")}.` : `Did you mean "${near}"?`,
    value,
  )
}

/** The known word with the fewest changed letters, if it is near at all. */
export function nearest(word: string, known: readonly string[]): string | undefined {
  let best: string | undefined
  let least = Math.max(2, Math.floor(word.length / 2)) + 1
  for (const candidate of known) {
    const distance = editDistance(word.toLowerCase(), candidate.toLowerCase())
    if (distance < least) {
      least = distance
      best = candidate
    }
  }
  return best
}

/** A value as it is named in a message, short. */
export function shown(value: unknown): string {
  if (isComponents(value)) return `(${figures(value.x)}, ${figures(value.y)}, ${figures(value.z)})`
  if (typeof value === "number") return figures(value)
  if (typeof value === "string")
    return value.length > 40 ? `the text "${value.slice(0, 40)}…"` : `the text "${value}"`
  if (Array.isArray(value)) return "a list"
  if (typeof value === "function") return "a function"
  if (typeof value === "object" && value !== null) {
    const keys = Object.keys(value).slice(0, 4).join(", ")
    return keys === "" ? "an object without properties" : `an object with ${keys}`
  }
  return String(value)
}

/** Six figures say which value it is; the rest of a binary number says nothing more. */
function figures(value: number): string {
  return String(Number(value.toPrecision(6)))
}

function isComponents(value: unknown): value is Components {
  if (typeof value !== "object" || value === null) return false
  const v = value as Record<string, unknown>
  return typeof v.x === "number" && typeof v.y === "number" && typeof v.z === "number"
}

function missing(name: string): PhysicsError {
  return new PhysicsError(
    "missing-option",
    `${capital(name)} is missing.`,
    `Give ${name}, or check the name of the variable that should hold it.`,
    undefined,
  )
}

function unknownOption(key: string, of: string, known: readonly string[], options: unknown): PhysicsError {
  const near = nearest(key, known)
  return new PhysicsError(
    "unknown-option",
    `${of} knows no quantity called "${key}".`,
    near === undefined ? `It knows ${known.join(", ")}.` : `Did you mean "${near}"?`,
    (options as Record<string, unknown>)[key],
  )
}

function editDistance(a: string, b: string): number {
  let row = Array.from({ length: b.length + 1 }, (_, j) => j)
  for (let i = 1; i <= a.length; i++) {
    const next = [i]
    for (let j = 1; j <= b.length; j++) {
      const change = a[i - 1] === b[j - 1] ? 0 : 1
      next.push(Math.min(row[j]! + 1, next[j - 1]! + 1, row[j - 1]! + change))
    }
    row = next
  }
  return row[b.length]!
}

/** A sentence's first letter; a symbol of the formula, such as v, stays as the formula has it. */
function capital(text: string): string {
  if (text.length === 1) return text
  return text.charAt(0).toUpperCase() + text.slice(1)
}
