import { readCsv } from "./csv.ts"

/*
 * A validator for the part of OneRoster 1.2 that holds marks: manifest, categories, lineItems, results; types GUID,
 * Date, Float; files in bulk mode. The standard is 1EdTech, “OneRoster: CSV Binding”, version 1.2 (final release
 * 19 September 2022; document 1.2.1 of 22 August 2023, www.imsglobal.org/spec/oneroster/v1p2/bind/csv). Its tables were
 * not at hand when this was written: columns, their order and which are required follow an independent open-source reader
 * of version 1.2, whose headers are said to stand in the binding's exact order. The rules of reference run only within
 * the set, since classes, schools and users are the receiver's.
 */

type Kind = "guid" | "date" | "float" | "text" | "empty" | "boolean" | "scoreStatus"
type Column = readonly [name: string, required: boolean, kind: Kind]

/** In bulk mode both must be blank. */
const common: readonly Column[] = [
  ["sourcedId", true, "guid"],
  ["status", false, "empty"],
  ["dateLastModified", false, "empty"],
]

const tables: Readonly<Record<string, readonly Column[]>> = {
  categories: [...common, ["title", true, "text"], ["weight", false, "float"]],
  lineItems: [
    ...common,
    ["title", true, "text"],
    ["description", false, "text"],
    ["assignDate", true, "date"],
    ["dueDate", true, "date"],
    ["classSourcedId", true, "guid"],
    ["categorySourcedId", true, "guid"],
    ["academicSessionSourcedId", true, "guid"],
    ["resultValueMin", false, "float"],
    ["resultValueMax", false, "float"],
    ["schoolSourcedId", true, "guid"],
  ],
  results: [
    ...common,
    ["lineItemSourcedId", true, "guid"],
    ["studentSourcedId", true, "guid"],
    ["scoreStatus", true, "scoreStatus"],
    ["score", false, "float"],
    ["scoreDate", true, "date"],
    ["comment", false, "text"],
    ["textScore", false, "text"],
    ["classSourcedId", false, "guid"],
    ["inProgress", false, "boolean"],
    ["incomplete", false, "boolean"],
    ["late", false, "boolean"],
    ["missing", false, "boolean"],
  ],
}

const dataFiles = (
  "academicSessions categories classes classResources courses courseResources demographics enrollments " +
  "lineItemLearningObjectiveIds lineItems lineItemScoreScales orgs resources resultLearningObjectiveIds results " +
  "resultScoreScales roles scoreScales userProfiles userResources users"
).split(" ")

const statuses = ["exempt", "fully graded", "not submitted", "partially graded", "submitted"]

function fits(kind: Kind, value: string): boolean {
  switch (kind) {
    case "guid":
      return /^[0-9A-Za-z./@_-]{1,255}$/.test(value)
    case "date":
      return (
        /^\d{4}-\d{2}-\d{2}$/.test(value) &&
        new Date(`${value}T00:00:00Z`).toISOString().slice(0, 10) === value
      )
    case "float":
      return /^-?\d+(\.\d+)?$/.test(value)
    case "boolean":
      return value === "true" || value === "false"
    case "scoreStatus":
      return statuses.includes(value)
    case "empty":
      return value === ""
    case "text":
      return true
  }
}

/** What is wrong with a set of files, by their names without folder; [] for a sound one. */
export function rosterFaults(files: ReadonlyMap<string, string>): string[] {
  const manifest = files.get("manifest.csv")
  if (manifest === undefined) return ["manifest.csv is missing"]
  const faults: string[] = []
  const read = new Map<string, string[][]>()
  for (const [name, text] of files) {
    if (text.startsWith("\ufeff")) faults.push(`${name} starts with a byte order mark`)
    try {
      read.set(name, readCsv(text))
    } catch (cause) {
      return [`${name}: ${String(cause)}`]
    }
  }
  const [head, ...properties] = read.get("manifest.csv")!
  if (head?.join() !== "propertyName,value") faults.push("manifest.csv has another header")
  const values = new Map(properties.map(([name, value]) => [name!, value!]))
  if (values.size !== properties.length) faults.push("manifest.csv has a property twice")
  if (values.get("manifest.version") !== "1.0") faults.push("manifest.version is not 1.0")
  if (values.get("oneroster.version") !== "1.2") faults.push("oneroster.version is not 1.2")
  for (const name of dataFiles) {
    const mode = values.get(`file.${name}`)
    if (mode === undefined) faults.push(`file.${name} is missing`)
    else if (!["absent", "bulk", "delta"].includes(mode)) faults.push(`file.${name} is ${mode}`)
    else if ((mode !== "absent") !== files.has(`${name}.csv`))
      faults.push(`file.${name} is ${mode}, which the set does not bear out`)
  }
  for (const name of values.keys())
    if (
      !["manifest.version", "oneroster.version", "source.systemName", "source.systemCode"].includes(name) &&
      !dataFiles.includes(name.replace(/^file\./, ""))
    )
      faults.push(`manifest.csv has the unknown property ${name}`)
  for (const [name, columns] of Object.entries(tables)) {
    const rows = read.get(`${name}.csv`)
    if (rows !== undefined) faults.push(...tableFaults(name, columns, rows))
  }
  return [...faults, ...referenceFaults(read)]
}

function tableFaults(name: string, columns: readonly Column[], rows: string[][]): string[] {
  const faults: string[] = []
  const [head, ...records] = rows
  if (head?.join() !== columns.map(([column]) => column).join()) return [`${name}.csv has another header`]
  const ids = new Set<string>()
  for (const [i, record] of records.entries()) {
    if (record.length !== columns.length) faults.push(`${name}.csv row ${i + 2} has ${record.length} fields`)
    for (const [c, [column, required, kind]] of columns.entries()) {
      const value = record[c] ?? ""
      if (value === "" && required) faults.push(`${name}.csv row ${i + 2}: ${column} is empty`)
      else if (value !== "" && !fits(kind, value))
        faults.push(`${name}.csv row ${i + 2}: ${column} is ${value.slice(0, 40)}`)
    }
    if (ids.has(record[0]!)) faults.push(`${name}.csv row ${i + 2}: its sourcedId stands there already`)
    ids.add(record[0]!)
  }
  return faults
}

function referenceFaults(read: ReadonlyMap<string, string[][]>): string[] {
  const column = (name: string, wanted: string): string[] => {
    const [head, ...rows] = read.get(`${name}.csv`) ?? []
    const at = head?.indexOf(wanted) ?? -1
    return at < 0 ? [] : rows.map(row => row[at] ?? "")
  }
  const lacking = (from: string, by: string, to: string): string[] => {
    const known = new Set(column(to, "sourcedId"))
    return column(from, by)
      .filter(id => !known.has(id))
      .map(id => `${from}.csv: ${by} ${id.slice(0, 40)} is not in ${to}.csv`)
  }
  const lowest = column("lineItems", "resultValueMin").map(Number)[0] ?? 0
  const highest = column("lineItems", "resultValueMax").map(Number)[0] ?? 0
  return [
    ...lacking("lineItems", "categorySourcedId", "categories"),
    ...lacking("results", "lineItemSourcedId", "lineItems"),
    ...column("results", "score")
      .filter(score => score !== "" && (Number(score) < lowest || Number(score) > highest))
      .map(score => `results.csv: a score of ${score} is outside the line item's values`),
  ]
}
