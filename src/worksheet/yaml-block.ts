import * as v from "valibot"
import { isMap, isNode, isScalar, LineCounter, parseDocument, visit } from "yaml"
import { suggest } from "./nearest.ts"
import { type Findings, report } from "./source.ts"
import { yamlFaultWords } from "./yaml-words.ts"

/** A stretch of YAML inside the worksheet: `line` is the file's line of its first line. */
export interface YamlBlock {
  readonly text: string
  readonly line: number
  /** how messages name it: `front matter`, `check update` */
  readonly what: string
}

type Schema = v.GenericSchema

/**
 * Reads YAML against a schema. Every fault is reported with the file's line, what it is and the nearest
 * known word; null when there was one.
 */
export function readYaml<S extends Schema>(
  findings: Findings,
  block: YamlBlock,
  schema: S,
): { value: v.InferOutput<S>; lineOf: (...path: (string | number)[]) => number } | null {
  const counter = new LineCounter()
  const document = parseDocument(block.text, { lineCounter: counter, prettyErrors: false, uniqueKeys: true })
  const lineAt = (offset: number): number => block.line + Math.max(counter.linePos(offset).line, 1) - 1
  const lines = block.text.split("\n")
  for (const error of document.errors) {
    const line = lineAt(error.pos[0])
    report(
      findings,
      line,
      error.code === "DUPLICATE_KEY"
        ? {
            code: "duplicate-name",
            text: `The ${block.what} has the same key twice.`,
            todo: "Keep one of the two.",
          }
        : {
            code: "yaml-syntax",
            ...yamlFaultWords(block.what, error.code, error.message, lines[line - block.line] ?? ""),
          },
    )
  }
  if (document.errors.length > 0) return null
  let raw: unknown
  try {
    raw = document.toJS({ maxAliasCount: 20 })
  } catch {
    report(findings, block.line, {
      code: "yaml-syntax",
      text: `The ${block.what} refers to another place (a text that begins with * or &), which cannot be followed.`,
      todo: "Put a text that begins with * or & in quotes; write values out instead of using YAML aliases.",
    })
    return null
  }
  const lineOf = (...path: (string | number)[]): number => {
    for (let length = path.length; length > 0; length--) {
      const parent = length === 1 ? document.contents : document.getIn(path.slice(0, length - 1), true)
      if (isMap(parent)) {
        const pair = parent.items.find(
          item => isNode(item.key) && String(item.key) === String(path[length - 1]),
        )
        if (pair && isNode(pair.key) && pair.key.range) return lineAt(pair.key.range[0])
      }
      const node = document.getIn(path.slice(0, length), true)
      if (isNode(node) && node.range) return lineAt(node.range[0])
    }
    return block.line
  }
  const result = v.safeParse(schema, raw ?? {})
  if (result.success) return { value: result.output, lineOf }
  const split = partedByComma(document.contents)
  for (const issue of result.issues) {
    const path = (issue.path ?? []).map(item => item.key as string | number)
    const words = describe(block, issue, path)
    const key = String(path.at(-1) ?? "")
    report(
      findings,
      lineOf(...path),
      split.has(key)
        ? {
            ...words,
            text: `In the ${block.what}, a comma between { } begins a new key, so “${key}” stands there as one.`,
            todo: "Put a text that holds a comma in quotes.",
          }
        : words,
    )
  }
  return null
}

/** Keys without a colon between { }: what is left of a text that holds a comma. */
function partedByComma(contents: unknown): ReadonlySet<string> {
  const found = new Set<string>()
  if (isNode(contents))
    visit(contents, {
      Map: (_, map) => {
        if (!map.flow) return
        for (const pair of map.items)
          if (isNode(pair.key) && (pair.value === null || (isScalar(pair.value) && pair.value.source === "")))
            found.add(String(pair.key))
      },
    })
  return found
}

function describe(
  block: YamlBlock,
  issue: v.BaseIssue<unknown>,
  path: readonly (string | number)[],
): { code: string; text: string; todo: string } {
  const name = path.join(".") || block.what
  const inside = path.length > 1 ? ` (under “${path.slice(0, -1).join(".")}”)` : ""
  if (issue.type === "strict_object" && issue.expected === "never") {
    const last = String(path.at(-1) ?? "")
    const known = knownKeys(issue)
    return {
      code: "unknown-key",
      text: `The ${block.what} has an unknown key “${last}”${inside}.`,
      todo: suggest(last, known),
    }
  }
  if (issue.type === "strict_object" && issue.received === "undefined") {
    return {
      code: "missing-key",
      text: `The ${block.what} has no “${name}”.`,
      todo: `Add a line “${String(path.at(-1))}: …”.`,
    }
  }
  const said =
    issue.type === "check" || issue.message.startsWith("=") ? issue.message.replace(/^=/, "") : null
  return {
    code: "wrong-value",
    text: said ?? `“${name}” of the ${block.what} is ${shown(issue.input)}.`,
    todo: said ? "Change the value." : `It should be ${expectedWords(issue.expected)}.`,
  }
}

/** valibot keeps the schema's entries on the object schema that raised the issue. */
function knownKeys(issue: v.BaseIssue<unknown>): string[] {
  const requirement = (issue as { requirement?: unknown }).requirement
  if (Array.isArray(requirement)) return requirement.map(String)
  const message = issue.message
  const match = /^keys:(.*)$/.exec(message)
  return match?.[1] ? match[1].split(",") : []
}

/** A strict object whose issues carry the list of known keys, so that a misspelt one can be named. */
export function mapping<T extends v.ObjectEntries>(entries: T) {
  return v.strictObject(entries, `keys:${Object.keys(entries).join(",")}`)
}

function shown(input: unknown): string {
  if (input === null || input === undefined) return "empty"
  const text = typeof input === "string" ? `“${input}”` : JSON.stringify(input)
  return text.length > 60 ? `${text.slice(0, 57)}…` : text
}

function expectedWords(expected: string | null): string {
  if (expected === null) return "something else"
  const words: Record<string, string> = {
    number: "a number",
    string: "text (in quotes if it has special signs)",
    boolean: "true or false",
    Array: "a list [ … ]",
    Object: "a group of keys",
    integer: "a whole number",
  }
  return expected
    .replace(/[()]/g, "")
    .split(" | ")
    .map(word => words[word] ?? word.replace(/"/g, "“"))
    .join(" or ")
}
