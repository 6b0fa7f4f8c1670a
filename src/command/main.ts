import { nearest } from "../worksheet/index.ts"
import { type Asked, type CommandSpec, helpOf, readAsked } from "./asked.ts"
import { check, checkSpec } from "./check.ts"
import { grade, gradeSpec } from "./grade.ts"
import { publish, publishSpec } from "./publish.ts"
import { run, runSpec } from "./run.ts"
import { out, refuse } from "./say.ts"
import { serve, serveSpec } from "./serve.ts"

/** How a command ends: 0 fine, 1 something was found wanting, 2 could not be read or was asked wrongly, 130 stopped by hand. */
export type ExitCode = 0 | 1 | 2 | 130

export interface Command {
  readonly spec: CommandSpec
  act(asked: Asked, home: string): Promise<ExitCode>
}

const commands: readonly Command[] = [
  { spec: serveSpec, act: serve },
  { spec: checkSpec, act: check },
  { spec: runSpec, act: run },
  { spec: publishSpec, act: publish },
  { spec: gradeSpec, act: grade },
]

const overview = `Deltasheet: worksheets for mechanics that compute.

${commands.map(({ spec }) => `  deltasheet ${spec.name.padEnd(8)}  ${spec.says}`).join("\n")}

“deltasheet COMMAND --help” shows how to use one.`

/**
 * The command line: reads what was asked and hands over. Never throws; what goes wrong is said in words.
 *
 * @param home the project's folder, where dist/ is
 */
export async function main(args: readonly string[], home: string): Promise<ExitCode> {
  const [name, ...rest] = args
  const json = rest.includes("--json")
  if (name === undefined || name === "--help" || name === "help") {
    out(overview)
    return name === undefined ? 2 : 0
  }
  const command = commands.find(({ spec }) => spec.name === name)
  if (command === undefined) {
    const near = nearest(
      name,
      commands.map(({ spec }) => spec.name),
    )
    const known = commands.map(({ spec }) => spec.name).join(", ")
    const problem = {
      code: "asked-wrongly",
      text: `“${name}” is not a command.`,
      todo: near ? `Did you mean “${near}”?` : `The commands are: ${known}.`,
    }
    return refuse({ json }, [problem])
  }
  const asked = readAsked(command.spec, rest)
  if ("code" in asked) return refuse({ json }, [asked])
  if (asked.help) {
    out(helpOf(command.spec))
    return 0
  }
  try {
    return await command.act(asked, home)
  } catch (cause) {
    const problem = {
      code: "unexpected",
      text: `“${name}” stopped at something unforeseen: ${cause instanceof Error ? cause.message : String(cause)}.`,
      todo: "Nothing was changed that is not said above. Please report it with the worksheet that led to it.",
    }
    return refuse(asked, [problem])
  }
}
