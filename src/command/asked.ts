import { parseArgs } from "node:util"
import type { Problem } from "../cell/problem.ts"
import { suggest } from "../worksheet/index.ts"

/** An option of a command: `value` names what it takes, null for a switch. */
export interface OptionSpec {
  readonly value: string | null
  readonly says: string
  readonly many?: boolean
}

export interface CommandSpec {
  readonly name: string
  readonly usage: string
  readonly says: string
  readonly options: Readonly<Record<string, OptionSpec>>
  /** how many files or folders it takes */
  readonly takes: readonly [least: number, most: number]
  /** the same where the first of them is a word of the command's own, that word counted */
  readonly forms?: Readonly<
    Record<string, { readonly usage: string; readonly takes: readonly [least: number, most: number] }>
  >
  /** lines that its help says besides */
  readonly more?: readonly string[]
}

export interface Asked {
  readonly files: readonly string[]
  readonly json: boolean
  readonly help: boolean
  readonly values: Readonly<Record<string, readonly string[]>>
}

const everywhere: Record<string, OptionSpec> = {
  help: { value: null, says: "show this" },
  json: { value: null, says: "print the result as JSON" },
}

/** Reads a command's arguments; a wrong one comes back as a problem with the nearest right one. */
export function readAsked(spec: CommandSpec, args: readonly string[]): Asked | Problem {
  const specs = { ...spec.options, ...everywhere }
  const known = Object.keys(specs)
  const spread = spreadMany(spec, args)
  const { tokens, positionals } = parseArgs({
    args: spread,
    strict: false,
    allowPositionals: true,
    tokens: true,
    options: Object.fromEntries(
      known.map(name => [
        name,
        { type: specs[name]!.value === null ? ("boolean" as const) : ("string" as const), multiple: true },
      ]),
    ),
  })
  const values: Record<string, string[]> = {}
  for (const token of tokens) {
    if (token.kind !== "option") continue
    const option = Object.hasOwn(specs, token.name) ? specs[token.name] : undefined
    if (option === undefined)
      return wrong(
        spec,
        `“${token.rawName}” is not an option of “${spec.name}”.`,
        suggest(token.name, known).replace(/“(?=\w)/, "“--"),
      )
    if (option.value !== null && (token.value === undefined || token.value === ""))
      return wrong(
        spec,
        `“${token.rawName}” needs ${option.value} after it.`,
        `Write “--${token.name} ${option.value}”.`,
      )
    if (option.value === null && token.value !== undefined)
      return wrong(spec, `“${token.rawName}” takes no value.`, `Write “--${token.name}” alone.`)
    const list = (values[token.name] ??= [])
    if (list.length > 0 && !option.many)
      return wrong(spec, `“--${token.name}” stands there twice.`, "Keep one of them.")
    list.push(token.value ?? "")
  }
  const help = values.help !== undefined
  const [first] = positionals
  const form = first !== undefined && Object.hasOwn(spec.forms ?? {}, first) ? spec.forms![first] : undefined
  const [least, most] = form?.takes ?? spec.takes
  const usage = form?.usage ?? spec.usage
  if (!help && positionals.length < least)
    return wrong(
      spec,
      `“${form === undefined ? spec.name : `${spec.name} ${first}`}” was given no ${form === undefined ? "file" : "folder"}.`,
      `Write it as: ${usage}`,
    )
  if (!help && positionals.length > most)
    return wrong(
      spec,
      `“${spec.name}” was given ${positionals.length} files and takes ${most}.`,
      `Write it as: ${usage}`,
    )
  return { files: positionals, json: values.json !== undefined, help, values }
}

/** `--answers a b c` means `--answers a --answers b --answers c`. */
function spreadMany(spec: CommandSpec, args: readonly string[]): string[] {
  const result: string[] = []
  let current: string | null = null
  for (const arg of args) {
    if (arg.startsWith("-")) {
      const name = arg.replace(/^--/, "")
      current = spec.options[name]?.many ? name : null
      if (current === null) result.push(arg)
    } else if (current !== null) result.push(`--${current}=${arg}`)
    else result.push(arg)
  }
  return result
}

function wrong(spec: CommandSpec, text: string, todo: string): Problem {
  return { code: "asked-wrongly", text, todo: `${todo}\n    “deltasheet ${spec.name} --help” shows more.` }
}

export function helpOf(spec: CommandSpec): string {
  const rows = Object.entries({ ...spec.options, ...everywhere }).map(
    ([name, option]) => [`--${name}${option.value === null ? "" : ` ${option.value}`}`, option.says] as const,
  )
  const width = Math.max(...rows.map(([left]) => left.length))
  const more = (spec.more ?? []).map(line => `\n\n  ${line}`).join("")
  return `${spec.says}\n\n  ${spec.usage}${more}\n\n${rows.map(([left, right]) => `  ${left.padEnd(width)}  ${right}`).join("\n")}`
}
