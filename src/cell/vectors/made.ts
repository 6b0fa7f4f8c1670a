import type { Emitter } from "../emit/emitter.ts"

/** The texts of a vector's three components. */
export interface Parts {
  readonly x: string
  readonly y: string
  readonly z: string
}

/** A vector put together from its components. */
export const made = (e: Emitter, { x, y, z }: Parts): string =>
  `new ${e.o.hidden.of("Vec3")}(${x}, ${y}, ${z})`
