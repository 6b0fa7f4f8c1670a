import type { Compiled } from "../cell/contract.ts"
import type { StudentSheet } from "../worksheet/contract.ts"

/**
 * What a page loads for one worksheet, and all that `publish` writes of it: made by the author's machine,
 * plain JSON, holding no answer. `reference` is the packed form of Reference (see judge/pack.ts).
 */
export interface Edition {
  readonly format: "deltasheet-edition/1"
  readonly sheet: StudentSheet
  /** the program with its blanks as the student finds them, compiled, so that the first motion needs no compiler */
  readonly starter: Compiled
  readonly reference: unknown
  /** units of the recorded series by cell and name, as the units run found them in the author's answers: label the axes */
  readonly units: Readonly<Record<string, Readonly<Record<string, string>>>>
}

/** One card of the shelf. The strobe picture shows the reference's bodies at equal times. */
export interface ShelfCard {
  readonly id: string
  readonly title: string
  readonly version: number
  readonly summary: string
  /** its place in a course; null for none */
  readonly lesson: number | null
  readonly cells: number
  readonly blanks: number
  readonly questions: number
  readonly points: number
  readonly strobe: Strobe | null
}

/** Images of bodies at equal times, in m; y up. */
export interface Strobe {
  readonly interval: number
  readonly bodies: readonly {
    readonly name: string
    readonly radius: number
    /** width and height of a body drawn as a box, m */
    readonly box?: readonly [number, number]
    readonly points: readonly (readonly [number, number])[]
  }[]
  readonly planes: readonly {
    readonly point: readonly [number, number]
    readonly normal: readonly [number, number]
  }[]
}

/** data/shelf.json */
export interface Shelf {
  readonly format: "deltasheet-shelf/1"
  readonly title: string
  readonly cards: readonly ShelfCard[]
}
