/** What a realm must look like after a run, taken before the first: used to tell whether a program changed it. */
export interface Canary {
  unchanged(): boolean
}

/**
 * Looks at three things: that the language's own prototypes and the library's classes are frozen still and hold the
 * very values they held; that no name was added to or taken from the realm's global object; and that a few
 * library calls give the bits they gave.
 */
export function createCanary(library: Readonly<Record<string, unknown>>): Canary {
  const names = Reflect.ownKeys(globalThis)
  const watched = watchedObjects(library).map(object => ({
    object,
    prototype: Object.getPrototypeOf(object) as unknown,
    members: Reflect.ownKeys(object).map(key => {
      const { value, get } = Object.getOwnPropertyDescriptor(object, key)!
      return { key, value: value as unknown, get }
    }),
  }))
  const bits = libraryBits(library)

  return {
    unchanged() {
      const now = Reflect.ownKeys(globalThis)
      if (now.length !== names.length || now.some((name, i) => name !== names[i])) return false
      for (const { object, prototype, members } of watched) {
        if (!Object.isFrozen(object) || Object.getPrototypeOf(object) !== prototype) return false
        for (const { key, value, get } of members) {
          // A frozen value need only be read; what computes it must still be the same function.
          if (get === undefined && Object.is(Reflect.get(object, key), value)) continue
          const after = Object.getOwnPropertyDescriptor(object, key)
          if (after === undefined || !Object.is(after.value, value) || after.get !== get) return false
        }
      }
      return libraryBits(library) === bits
    },
  }
}

function watchedObjects(library: Readonly<Record<string, unknown>>): object[] {
  const found = new Set<object>()
  const add = (value: unknown): void => {
    if ((typeof value !== "object" || value === null) && typeof value !== "function") return
    found.add(value)
    const prototype = (value as { prototype?: unknown }).prototype
    if (typeof value === "function" && typeof prototype === "object" && prototype !== null)
      found.add(prototype)
  }
  for (const value of [
    Object,
    Function.prototype,
    Array,
    Number,
    String,
    Boolean,
    RegExp,
    Map,
    Set,
    Error,
    Promise,
    JSON,
  ])
    add(value)
  add(Object.getPrototypeOf([][Symbol.iterator]()))
  for (const value of Object.values(library)) add(value)
  return [...found].filter(object => Object.isFrozen(object))
}

type Call = (...values: unknown[]) => unknown

/** A few sums over what the library offers, as text; enough to notice a forged vector or a bent Math. */
function libraryBits(library: Readonly<Record<string, unknown>>): string {
  const { vec3, Math: math } = library as { vec3?: Call; Math?: Record<string, Call> }
  const v = vec3?.(0.1, 0.2, 0.3) as { x: number; y: number; z: number } | undefined
  return [
    v?.x,
    v?.y,
    v?.z,
    math?.sin?.(0.7),
    math?.sqrt?.(2),
    math?.exp?.(0.3),
    String(v?.constructor === library.Vec3),
  ].join()
}
