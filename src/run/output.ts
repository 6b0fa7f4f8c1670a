/** What a program prints, as lines of text of bounded length in all. Never calls what it should show. */
export interface Output {
  print(...values: unknown[]): void
  /** a cell begins */
  enterCell(): void
  /** drops what was printed since the cell began */
  forget(): void
  lines(): string[]
}

const maxEntries = 20
const maxShownDepth = 3
const maxLine = 2000

/** @param maxCharacters kept in all; what is printed after that is dropped, and a last line says so */
export function createOutput(maxCharacters: number, vectorPrototype: object): Output {
  const kept: string[] = []
  let left = maxCharacters
  let full = false
  let before = 0
  return {
    enterCell() {
      before = kept.length
    },
    forget() {
      kept.length = before
    },
    print(...values) {
      if (full) return
      const shown: string[] = []
      for (let i = 0; i < values.length && i < maxEntries; i++)
        shown.push(
          typeof values[i] === "string" ? clip(values[i] as string) : show(values[i], vectorPrototype, 0),
        )
      const line = clip(shown.join(" "))
      // An empty line costs as well, or a flood of them would not end.
      if (line.length + 1 > left) {
        full = true
        kept.push(`(printed more than ${maxCharacters} characters; the rest was not kept)`)
        return
      }
      left -= line.length + 1
      kept.push(line)
    },
    lines: () => kept.slice(),
  }
}

const clip = (text: string): string => (text.length > maxLine ? `${text.slice(0, maxLine)}…` : text)

function show(value: unknown, vectorPrototype: object, depth: number): string {
  if (typeof value === "string") return JSON.stringify(clip(value))
  if (typeof value === "symbol") return "a symbol"
  if (typeof value === "function") return "a function"
  if (typeof value === "bigint") return "a whole number of any length"
  if (typeof value !== "object" || value === null) return String(value)
  try {
    return showObject(value, vectorPrototype, depth)
  } catch {
    // A proxy may refuse to be looked at.
    return "an object that cannot be shown"
  }
}

function showObject(value: object, vectorPrototype: object, depth: number): string {
  const member = (key: string): string => {
    const property = Object.getOwnPropertyDescriptor(value, key)
    if (property === undefined) return "nothing"
    return "value" in property ? show(property.value, vectorPrototype, depth + 1) : "computed on demand"
  }
  const prototype = Object.getPrototypeOf(value)
  if (prototype === vectorPrototype) return `(${member("x")}, ${member("y")}, ${member("z")})`
  if (value instanceof Error) return `an error: ${member("message")}`
  if (depth >= maxShownDepth) return "…"
  if (Array.isArray(value)) {
    const length = Math.min(value.length, maxEntries)
    const items = Array.from({ length }, (_, i) => member(String(i)))
    return `[${items.join(", ")}${value.length > length ? ", …" : ""}]`
  }
  const keys = Object.keys(value)
  const items = keys.slice(0, maxEntries).map(key => `${clip(key)}: ${member(key)}`)
  return items.length === 0 ? "{}" : `{ ${items.join(", ")}${keys.length > maxEntries ? ", …" : ""} }`
}
