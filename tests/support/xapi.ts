/*
 * A validator for statements whose actor is an account and whose object is an activity, written from the tables and
 * requirements of “Experience API”, version 1.0.3, part two: Experience API Data (Advanced Distributed Learning
 * Initiative, github.com/adlnet/xAPI-Spec, xAPI-Data.md): 2.2 formatting, 2.4.1 to 2.4.7, 4.2 language maps, 4.5 timestamps.
 * Verbs and types of activities are held against the ADL vocabulary (adlnet.gov/expapi), its names from memory.
 */

const verbs = (
  "answered asked attempted attended commented completed exited experienced failed imported initialized interacted " +
  "launched mastered passed preferred progressed registered responded resumed scored shared suspended terminated voided"
).split(" ")
const activityTypes = (
  "assessment course file interaction lesson link media meeting module objective performance profile question " +
  "simulation cmi.interaction"
).split(" ")
const interactionTypes =
  "true-false choice fill-in long-fill-in matching performance sequencing likert numeric other".split(" ")

const uuidForm = /^[0-9a-f]{8}-[0-9a-f]{4}-[1-8][0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/i
/** RFC 5646, as far as its token lengths go */
const languageForm = /^[A-Za-z]{2,8}(-[A-Za-z0-9]{1,8})*$/
/** ISO 8601 as RFC 3339 has it, to the millisecond at least */
const timestampForm = /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2}\.\d{3,}(Z|[+-]\d{2}:\d{2})$/

type Json = Record<string, unknown>
const isObject = (value: unknown): value is Json =>
  typeof value === "object" && value !== null && !Array.isArray(value)

/** Faults of one statement; [] for a sound one. */
export function statementFaults(statement: unknown): string[] {
  if (!isObject(statement)) return ["a statement is no object"]
  const faults: string[] = []
  const say = (fault: string): number => faults.push(fault)
  const keys = (where: string, value: Json, allowed: readonly string[], required: readonly string[]) => {
    for (const key of Object.keys(value)) if (!allowed.includes(key)) say(`${where} has the key ${key}`)
    for (const key of required) if (!(key in value)) say(`${where} lacks ${key}`)
    if (Object.keys(value).length === 0) say(`${where} is empty`)
  }
  const object = (where: string, value: unknown): value is Json => {
    if (isObject(value)) return true
    say(`${where} is no object`)
    return false
  }
  const text = (where: string, value: unknown): void => {
    if (typeof value !== "string") say(`${where} is no text`)
  }
  const iri = (where: string, value: unknown): void => {
    if (typeof value !== "string" || !/^[a-z][a-z0-9+.-]*:\S+$/i.test(value) || !URL.canParse(value))
      say(`${where} is no IRI with a scheme`)
  }
  const languageMap = (where: string, value: unknown): void => {
    if (!object(where, value)) return
    keys(where, value, Object.keys(value), [])
    for (const [key, words] of Object.entries(value)) {
      if (!languageForm.test(key)) say(`${where} has the language ${key}`)
      text(`${where}.${key}`, words)
    }
  }
  const activity = (where: string, value: unknown): void => {
    if (!object(where, value)) return
    keys(where, value, ["objectType", "id", "definition"], ["id"])
    if ("objectType" in value && value.objectType !== "Activity") say(`${where}.objectType is not Activity`)
    iri(`${where}.id`, value.id)
    if (!("definition" in value) || !object(`${where}.definition`, value.definition)) return
    const { definition } = value
    keys(
      `${where}.definition`,
      definition,
      "name description type moreInfo extensions interactionType correctResponsesPattern choices scale source target steps".split(
        " ",
      ),
      [],
    )
    for (const key of ["name", "description"])
      if (key in definition) languageMap(`${where}.definition.${key}`, definition[key])
    if ("type" in definition) {
      iri(`${where}.definition.type`, definition.type)
      const name = String(definition.type).replace("http://adlnet.gov/expapi/activities/", "")
      if (!activityTypes.includes(name)) say(`${where}.definition.type is unknown to the vocabulary`)
    }
    const kind = definition.interactionType
    if (kind !== undefined && !interactionTypes.includes(String(kind)))
      say(`${where}.definition.interactionType is ${String(kind)}`)
    const components = definition.choices
    if (components === undefined) return
    if (kind !== "choice" && kind !== "sequencing") say(`${where}.definition.choices goes with choice only`)
    if (!Array.isArray(components)) {
      say(`${where}.definition.choices is no list`)
      return
    }
    const ids = components.map(component => (isObject(component) ? component.id : undefined))
    if (new Set(ids).size !== ids.length) say(`${where}.definition.choices has an id twice`)
    for (const component of components)
      if (object(`${where} choice`, component)) {
        keys(`${where} choice`, component, ["id", "description"], ["id"])
        text(`${where} choice id`, component.id)
        if ("description" in component) languageMap(`${where} choice description`, component.description)
      }
  }

  keys(
    "the statement",
    statement,
    "id actor verb object result context timestamp stored authority version attachments".split(" "),
    ["actor", "verb", "object"],
  )
  if (hasNull(statement)) say("a null stands in the statement")
  if ("id" in statement && !uuidForm.test(String(statement.id))) say("id is no UUID")
  if (object("actor", statement.actor)) {
    keys("actor", statement.actor, ["objectType", "name", "account"], ["account"])
    if ((statement.actor.objectType ?? "Agent") !== "Agent") say("actor.objectType is not Agent")
    if (object("actor.account", statement.actor.account)) {
      keys("actor.account", statement.actor.account, ["homePage", "name"], ["homePage", "name"])
      iri("actor.account.homePage", statement.actor.account.homePage)
      text("actor.account.name", statement.actor.account.name)
    }
  }
  if (object("verb", statement.verb)) {
    keys("verb", statement.verb, ["id", "display"], ["id"])
    iri("verb.id", statement.verb.id)
    if (!verbs.includes(String(statement.verb.id).replace("http://adlnet.gov/expapi/verbs/", "")))
      say("verb.id is unknown to the vocabulary")
    if ("display" in statement.verb) languageMap("verb.display", statement.verb.display)
  }
  activity("object", statement.object)
  if ("result" in statement && object("result", statement.result)) {
    const { result } = statement
    keys("result", result, "score success completion response duration extensions".split(" "), [])
    for (const key of ["success", "completion"])
      if (key in result && typeof result[key] !== "boolean") say(`result.${key} is neither true nor false`)
    if ("response" in result) text("result.response", result.response)
    if ("score" in result && object("result.score", result.score)) {
      const { score } = result
      keys("result.score", score, ["scaled", "raw", "min", "max"], [])
      for (const key of Object.keys(score))
        if (typeof score[key] !== "number") say(`result.score.${key} is no number`)
      const { scaled, raw, min, max } = score as Record<string, number | undefined>
      if (scaled !== undefined && !(scaled >= -1 && scaled <= 1)) say("scaled is outside −1 to 1")
      if (min !== undefined && max !== undefined && !(min < max)) say("min is not less than max")
      if (raw !== undefined && ((min !== undefined && raw < min) || (max !== undefined && raw > max)))
        say("raw is outside min to max")
    }
  }
  if ("context" in statement && object("context", statement.context)) {
    const { context } = statement
    keys(
      "context",
      context,
      "registration instructor team contextActivities revision platform language statement extensions".split(
        " ",
      ),
      [],
    )
    if ("platform" in context) text("context.platform", context.platform)
    if ("language" in context && !languageForm.test(String(context.language)))
      say("context.language is no language")
    if ("contextActivities" in context && object("contextActivities", context.contextActivities))
      for (const [key, list] of Object.entries(context.contextActivities)) {
        if (!["parent", "grouping", "category", "other"].includes(key)) say(`contextActivities has ${key}`)
        if (!Array.isArray(list)) say(`contextActivities.${key} is no list`)
        else for (const item of list) activity(`contextActivities.${key}`, item)
      }
  }
  if ("timestamp" in statement) {
    const { timestamp } = statement
    if (
      typeof timestamp !== "string" ||
      !timestampForm.test(timestamp) ||
      Number.isNaN(Date.parse(timestamp))
    )
      say("timestamp is no timestamp to the millisecond")
  }
  return faults
}

function hasNull(value: unknown): boolean {
  if (value === null) return true
  return typeof value === "object" && Object.values(value as object).some(hasNull)
}
