/**
 * Longest text that one call of the language may make, in UTF-16 units: far beyond any cell's needs, far below what
 * brings down a browser's tab when such texts are doubled a few times.
 */
export const longestText = 16_777_216

type Maker = (this: unknown, ...given: unknown[]) => unknown

/** As the engine says it of its own, much larger limit. */
const tooLong = (): RangeError => new RangeError("Invalid string length")

/**
 * Bounds the functions that make long texts out of short ones. Called before the realm is hardened; `+` needs no
 * bound, since the engine joins texts lazily and has a limit of its own.
 */
export function limitText(): void {
  wrap(String.prototype, "repeat", (text, count) => String(text).length * Number(count))
  wrap(String.prototype, "padStart", (_, length) => Number(length))
  wrap(String.prototype, "padEnd", (_, length) => Number(length))
  for (const name of ["concat", "replace", "replaceAll"]) wrap(String.prototype, name, () => 0)
  wrap(Array.prototype, "join", () => 0)
  wrap(JSON, "stringify", () => 0)
}

/** @param expected length of the text that a call would make, as far as it can be told beforehand */
function wrap(holder: object, name: string, expected: (self: unknown, first: unknown) => number): void {
  const plain = Reflect.get(holder, name) as Maker
  const bounded = {
    [name](this: unknown, ...given: unknown[]): unknown {
      if (expected(this, given[0]) > longestText) throw tooLong()
      const text = Reflect.apply(plain, this, given)
      if (typeof text === "string" && text.length > longestText) throw tooLong()
      return text
    },
  }[name]!
  Object.defineProperty(bounded, "length", { value: plain.length, configurable: true })
  Object.defineProperty(holder, name, {
    value: bounded,
    writable: true,
    enumerable: false,
    configurable: true,
  })
}
