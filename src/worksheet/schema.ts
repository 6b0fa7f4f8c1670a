import * as v from "valibot"
import { mapping } from "./yaml-block.ts"

/*
 * The keys of every YAML block of a worksheet, with what each may hold. Unknown keys are refused by `mapping`
 * with the nearest known word; messages that begin with "=" are shown as they stand.
 */

const name = v.pipe(
  v.string(),
  v.regex(/^[A-Za-z][A-Za-z0-9_]*$/, "=A name has letters, digits and _, a letter first."),
)
const text = v.pipe(v.string(), v.trim())
const line = v.pipe(v.string(), v.trim(), v.minLength(1, "=The text is empty."))
const finite = v.pipe(v.number(), v.finite("=The number must be finite."))
const positive = v.pipe(
  finite,
  v.check(n => n > 0, "=The number must be greater than 0."),
)
const points = v.pipe(
  finite,
  v.minValue(0, "=Points cannot be negative."),
  v.maxValue(1000, "=Points go up to 1000."),
)
const pair = v.tuple([finite, finite])
const spot = v.union([pair, v.tuple([finite, finite, finite])])

export const frontMatterSchema = mapping({
  title: line,
  id: v.pipe(
    v.string(),
    v.regex(
      /^[a-z][a-z0-9-]{0,63}$/,
      "=An id has small letters, digits and hyphens, a letter first, at most 64 signs.",
    ),
  ),
  version: v.pipe(
    v.number(),
    v.integer("=The version is a whole number."),
    v.minValue(1, "=The version starts at 1."),
  ),
  summary: v.optional(text, ""),
  timeStep: v.optional(name, "dt"),
  reference: v.optional(v.picklist(["shown", "tried", "hidden"]), "shown"),
  lesson: v.optional(
    v.pipe(v.number(), v.integer("=The lesson is a whole number."), v.minValue(1, "=Lessons count from 1.")),
  ),
  parameters: v.optional(
    v.record(
      name,
      mapping({
        label: line,
        unit: v.optional(v.union([v.string(), v.literal(1)]), "1"),
        value: finite,
        range: pair,
        vary: v.optional(v.boolean(), false),
      }),
    ),
    {},
  ),
})

/** A fixed place, or the body that it goes along with. */
const end = v.union([spot, name])

export const sceneSchema = mapping({
  cell: name,
  view: v.optional(v.picklist(["side", "top", "space"]), "side"),
  bodies: v.optional(
    v.record(
      name,
      mapping({
        shape: v.optional(v.picklist(["disc", "box"]), "disc"),
        width: positive,
        height: v.optional(positive),
        label: v.optional(text, ""),
      }),
    ),
    {},
  ),
  planes: v.optional(v.array(mapping({ point: spot, normal: spot, label: v.optional(text, "") })), []),
  springs: v.optional(
    v.array(
      mapping({
        from: end,
        to: end,
        restLength: positive,
        label: v.optional(text, ""),
      }),
    ),
    [],
  ),
  struts: v.optional(v.array(mapping({ from: end, to: end, label: v.optional(text, "") })), []),
  ropes: v.optional(
    v.array(mapping({ from: end, to: end, length: positive, label: v.optional(text, "") })),
    [],
  ),
})

const seriesName = v.pipe(
  v.string(),
  v.regex(
    /^[A-Za-z][A-Za-z0-9_]*(\.[A-Za-z][A-Za-z0-9_]*)*$/,
    "=A series is named like key.position or key.position.y.",
  ),
)

export const plotSchema = mapping({
  cell: name,
  x: v.optional(seriesName, "t"),
  y: v.pipe(v.array(seriesName), v.minLength(1, "=A plot needs at least one series under y.")),
  caption: v.optional(text, ""),
})

export const questionSchema = mapping({
  ask: line,
  kind: v.picklist(["choice", "number", "text"]),
  choices: v.optional(v.record(v.string(), v.union([v.string(), v.number()]))),
  answer: v.optional(v.union([v.number(), v.string()])),
  unit: v.optional(v.string(), "1"),
  tolerance: v.optional(
    v.pipe(
      finite,
      v.minValue(0, "=A tolerance cannot be negative."),
      v.maxValue(1, "=A tolerance is a fraction, at most 1."),
    ),
    0.02,
  ),
  figures: v.optional(
    v.pipe(
      v.number(),
      v.integer("=Significant figures are a whole number."),
      v.minValue(1, "=At least 1 significant figure."),
      v.maxValue(12, "=At most 12 significant figures."),
    ),
  ),
  points: v.optional(points, 0),
  why: v.optional(text, ""),
})

const forceName = v.pipe(
  v.string(),
  v.regex(
    /^[A-Za-z][A-Za-z0-9_]*(\.[A-Za-z][A-Za-z0-9_]*)*\.forces\.[A-Za-z][A-Za-z0-9_]*$/,
    "=A force is named like key.forces.weight.",
  ),
)
const oneOrMore = <T extends typeof seriesName | typeof forceName>(item: T) =>
  v.pipe(
    v.union([item, v.array(item)]),
    v.transform((given): string[] => (Array.isArray(given) ? given : [given])),
  )
const codeName = v.pipe(
  v.string(),
  v.regex(
    /^[A-Za-z_$][A-Za-z0-9_$]*(\.[A-Za-z_$][A-Za-z0-9_$]*)*$/,
    "=What is used is named as in the program: rungeKutta4, Math.atan2, for.",
  ),
)
const codeNames = v.pipe(
  v.union([codeName, v.pipe(v.array(codeName), v.minLength(1, "=The list is empty."))]),
  v.transform((given): string[] => (Array.isArray(given) ? given : [given])),
)

export const checkSchema = mapping({
  cell: name,
  points,
  compare: v.optional(seriesName),
  law: v.optional(v.picklist(["momentum", "angular momentum", "energy"])),
  body: v.optional(oneOrMore(seriesName)),
  external: v.optional(oneOrMore(forceName)),
  about: v.optional(spot),
  energy: v.optional(seriesName),
  work: v.optional(oneOrMore(forceName)),
  value: v.optional(seriesName),
  at: v.optional(v.union([finite, v.literal("end")])),
  equals: v.optional(finite),
  stays: v.optional(seriesName),
  above: v.optional(finite),
  below: v.optional(finite),
  rests: v.optional(seriesName),
  from: v.optional(v.pipe(finite, v.minValue(0, "=A time cannot be negative."))),
  happens: v.optional(v.picklist(["contact begins", "contact ends", "turning", "rest"])),
  of: v.optional(seriesName),
  count: v.optional(
    v.pipe(v.number(), v.integer("=A count is a whole number."), v.minValue(1, "=Counts start at 1.")),
  ),
  within: v.optional(positive),
  converges: v.optional(seriesName),
  order: v.optional(v.pipe(positive, v.maxValue(6, "=Orders go up to 6."))),
  units: v.optional(v.picklist(["agree"])),
  uses: v.optional(codeNames),
  avoids: v.optional(codeNames),
  stepper: v.optional(v.picklist(["momentum first", "position first"])),
  tolerance: v.optional(v.pipe(positive, v.maxValue(1, "=A tolerance is a fraction, at most 1."))),
  says: v.optional(text, ""),
  hint: v.optional(text, ""),
  slips: v.optional(v.record(v.string(), text), {}),
  draws: v.optional(
    v.pipe(
      v.number(),
      v.integer("=Draws are a whole number."),
      v.minValue(0, "=Draws cannot be negative."),
      v.maxValue(20, "=At most 20 draws."),
    ),
    0,
  ),
})

export type CheckYaml = v.InferOutput<typeof checkSchema>
export type QuestionYaml = v.InferOutput<typeof questionSchema>
export type SceneYaml = v.InferOutput<typeof sceneSchema>
