import type { CellSource } from "../cell/contract.ts"

/** A named quantity of the front matter: a slider on the bench; with `vary`, drawn per student. */
export interface Parameter {
  readonly name: string
  readonly label: string
  /** SI Brochure grammar; "1" for a pure number */
  readonly unit: string
  readonly value: number
  readonly range: readonly [number, number]
  readonly vary: boolean
}

/** How one recorded body is drawn. Lengths in m. */
export interface SceneBody {
  readonly body: string
  readonly shape: "disc" | "box"
  readonly width: number
  readonly height: number
  readonly label: string
}

/** x, y and, where a scene is seen in space, z (0 if left out); m. */
export type Spot = readonly [number, number] | readonly [number, number, number]

/** A fixed thing in the picture. `normal` points out of the solid side. */
export type SceneFixture =
  | {
      readonly kind: "plane"
      readonly point: Spot
      readonly normal: Spot
      readonly label: string
    }
  | {
      readonly kind: "spring"
      readonly from: Spot | string
      readonly to: Spot | string
      readonly restLength: number
      readonly label: string
    }
  /** keeps its ends apart and together: a rod */
  | {
      readonly kind: "strut"
      readonly from: Spot | string
      readonly to: Spot | string
      readonly label: string
    }
  /** straight when its ends are its length apart, hanging in a bow while they are nearer */
  | {
      readonly kind: "rope"
      readonly from: Spot | string
      readonly to: Spot | string
      readonly length: number
      readonly label: string
    }

/** From where a scene is seen: from the side (y is up), from above (x east, y north, say), or turnable in space. */
export type SceneView = "side" | "top" | "space"

export interface Scene {
  readonly cell: string
  /** "side" if left out */
  readonly view?: SceneView
  readonly bodies: readonly SceneBody[]
  readonly fixtures: readonly SceneFixture[]
}

/** A plot the author fixed: series components such as `key.position.y` over time `t` or another series. */
export interface PlotBlock {
  readonly name: string
  readonly cell: string
  readonly x: string
  readonly y: readonly string[]
  readonly caption: string
}

export interface DataBlock {
  readonly name: string
  readonly columns: readonly { readonly name: string; readonly unit: string }[]
  readonly rows: readonly (readonly number[])[]
}

/** Without its answer: what a student sees. */
export interface Question {
  readonly name: string
  readonly kind: "choice" | "number" | "text"
  readonly ask: string
  /** `ask` as HTML with its equations set */
  readonly askHtml: string
  readonly choices: readonly { readonly key: string; readonly html: string; readonly text: string }[]
  readonly unit: string
  readonly points: number
}

/** What makes the answer of a question right; stays with the author. */
export interface QuestionKey {
  readonly name: string
  readonly answer: string | number | null
  /** relative, for numbers */
  readonly tolerance: number
  /** significant figures that the number must be given with; null where they do not matter */
  readonly figures: number | null
  readonly why: string
}

/** Something that happens to a body at an instant. */
export type Happening = "contact begins" | "contact ends" | "turning" | "rest"

/** What moves the position in each step: the momentum of its end, or that of its start. */
export type SteppingOrder = "momentum first" | "position first"

/** The rule of a check, as the student may know it: nothing here gives an answer away. */
export type CheckRule =
  /** the series follows the reference to the same limit */
  | { readonly kind: "compare"; readonly series: string; readonly tolerance: number | null }
  /** each step changes the momentum of the bodies together by the sum of the forces on them times the step */
  | {
      readonly kind: "law"
      readonly law: "momentum"
      readonly bodies: readonly string[]
      /** forces that act from outside (`body.forces.name`), so that the others must cancel; null: all that are recorded */
      readonly external: readonly string[] | null
      readonly tolerance: number
    }
  /** the same for the angular momentum about a point and the torques about it */
  | {
      readonly kind: "law"
      readonly law: "angular momentum"
      readonly bodies: readonly string[]
      readonly external: readonly string[] | null
      /** m */
      readonly about: readonly [number, number, number]
      readonly tolerance: number
    }
  /** the energy of the bodies changes by the work of forces */
  | {
      readonly kind: "law"
      readonly law: "energy"
      readonly bodies: readonly string[]
      /** a recorded energy; null: the kinetic energy, found from position and momentum */
      readonly energy: string | null
      /** forces whose work changes it (`body.forces.name`); null: all that are recorded on the bodies */
      readonly work: readonly string[] | null
      /** part of the largest kinetic energy */
      readonly tolerance: number
    }
  /** a component has a value at an instant, the reference's own if none is given */
  | {
      readonly kind: "value"
      readonly series: string
      readonly at: number | "end"
      readonly value: number | null
      readonly tolerance: number
    }
  /** a component never leaves a band (a floor force that never pulls) */
  | {
      readonly kind: "stays"
      readonly series: string
      readonly above: number | null
      readonly below: number | null
    }
  /** from an instant on the body's momentum is exactly zero */
  | { readonly kind: "rests"; readonly body: string; readonly from: number }
  /** something happens when it should: at the given time, or at the reference's own */
  | {
      readonly kind: "happens"
      readonly event: Happening
      /** a force for a contact, a component for a turning, a body for rest */
      readonly of: string
      /** which one of its kind, from 1 */
      readonly count: number
      /** s; null for the reference's own time */
      readonly at: number | null
      /** s; null for a hundredth of the reference's time */
      readonly within: number | null
    }
  /** the series closes on the reference's limit with a power of the time step not below `order` */
  | { readonly kind: "converges"; readonly series: string; readonly order: number }
  /** the units run over the student's program raises no alarm in the cell */
  | { readonly kind: "units" }
  /** the lines of the cell's blanks name all of these things */
  | { readonly kind: "uses"; readonly names: readonly string[] }
  /** … or none of these */
  | { readonly kind: "avoids"; readonly names: readonly string[] }
  /** each step takes momentum and position in the order that is asked for */
  | { readonly kind: "stepper"; readonly order: SteppingOrder; readonly body: string }

export interface Check {
  readonly name: string
  readonly cell: string
  readonly rule: CheckRule
  readonly points: number
  /** what it looks at, in words: shown to the student before the run */
  readonly says: string
  /** the teacher's words when it is not met; "" for our own */
  readonly hint: string
  /** the teacher's words for a given slip, by slip name */
  readonly slips: Readonly<Record<string, string>>
  /** hidden parameter draws when marking, 0 to 20 */
  readonly draws: number
}

/** The handout, in document order. Cells, scenes and plots are named; their content is beside. */
export type Block =
  | { readonly kind: "prose"; readonly html: string }
  | { readonly kind: "cell"; readonly name: string }
  | { readonly kind: "plot"; readonly name: string }
  | { readonly kind: "data"; readonly name: string }
  | { readonly kind: "question"; readonly name: string }

/** When a student sees the author's motion: always, once each blank of its cell has been tried, or never. */
export type ReferenceShown = "shown" | "tried" | "hidden"

/** Everything a student may have. Holds no answer of a blank and no key of a question. */
export interface StudentSheet {
  readonly id: string
  readonly title: string
  readonly version: number
  /** digest of the task (id, version, parameters, given lines, blank and question names), not of prose or answers */
  readonly digest: string
  readonly summary: string
  /** its place in a course: the shelf shows the lowest first; null for none */
  readonly lesson: number | null
  readonly timeStep: string
  /** "shown" if left out */
  readonly reference?: ReferenceShown
  readonly parameters: readonly Parameter[]
  readonly blocks: readonly Block[]
  readonly cells: readonly CellSource[]
  readonly scenes: readonly Scene[]
  readonly plots: readonly PlotBlock[]
  readonly data: readonly DataBlock[]
  readonly questions: readonly Question[]
  readonly checks: readonly Check[]
}

/** The author's worksheet: the student's sheet, and what only the author and the marker have. */
export interface Worksheet {
  readonly file: string
  readonly sheet: StudentSheet
  /** the author's text of each blank */
  readonly answers: Readonly<Record<string, string>>
  readonly keys: readonly QuestionKey[]
  /** for problems: where a named thing stands in the file, 1-based line */
  readonly lines: Readonly<Record<string, number>>
  /** addresses of the pictures that the prose shows, as written */
  readonly images: readonly string[]
}

/** deltasheet-answers/1, read and checked. */
export interface AnswerFile {
  readonly format: "deltasheet-answers/1"
  readonly worksheet: { readonly id: string; readonly version: number; readonly digest: string }
  readonly student: { readonly id: string; readonly name: string }
  readonly seed: number
  readonly answers: Readonly<Record<string, string>>
  readonly questions: Readonly<Record<string, string | number | null>>
  readonly savedAt: string
}
