import { cpSync, readdirSync, readFileSync } from "node:fs"
import { join, resolve } from "node:path"
import type { Problem } from "../cell/problem.ts"
import type { Shelf } from "../judge/edition.ts"
import type { Asked, CommandSpec } from "./asked.ts"
import { inCourse, type MadeEdition, makeEdition } from "./edition.ts"
import { fileProblem, readWorksheet, writeWhole } from "./files.ts"
import type { ExitCode } from "./main.ts"
import { picturesOf } from "./pictures.ts"
import { count, out, refuse } from "./say.ts"
import { createTools } from "./tools.ts"

export const publishSpec: CommandSpec = {
  name: "publish",
  usage: "deltasheet publish FILE... --out DIR",
  says: "make a folder of static files for students; it holds no answer",
  takes: [1, 500],
  options: {
    out: { value: "DIR", says: "the folder; files of an earlier edition in it are replaced" },
    title: { value: "TEXT", says: "what the shelf is called; “Worksheets” without it" },
  },
}

export async function publish(asked: Asked, home: string): Promise<ExitCode> {
  const folder = asked.values.out?.[0]
  if (folder === undefined)
    return refuse(
      asked,
      [{ code: "asked-wrongly", text: "No folder was named.", todo: `Write it as: ${publishSpec.usage}` }],
      2,
    )
  const problems: Problem[] = []
  const worksheets = asked.files.flatMap(file => {
    const read = readWorksheet(file)
    if (read.ok) return [read.value]
    problems.push(...read.problems)
    return []
  })
  if (problems.length > 0) return refuse(asked, problems, 2)
  const repeated = worksheets.find((w, i) => worksheets.findIndex(other => other.sheet.id === w.sheet.id) < i)
  if (repeated)
    return refuse(
      asked,
      [
        {
          code: "duplicate-name",
          text: `Two worksheets have the id “${repeated.sheet.id}”; one of them is “${repeated.file}”.`,
          todo: "Give each worksheet an id of its own.",
        },
      ],
      2,
    )
  const tools = createTools(join(home, "dist", "runner.js"), 1)
  try {
    const made: MadeEdition[] = []
    for (const worksheet of worksheets) {
      const result = await makeEdition(worksheet, tools)
      if (result.ok) made.push(result.made)
      else problems.push(...result.problems)
    }
    const pictures = new Map<string, Uint8Array>()
    for (const picture of worksheets.flatMap(picturesOf)) {
      if ("problem" in picture) {
        problems.push(picture.problem)
        continue
      }
      try {
        pictures.set(picture.address, readFileSync(picture.path))
      } catch (cause) {
        problems.push(fileProblem(picture.path, cause))
      }
    }
    if (problems.length > 0) return refuse(asked, problems, 1)
    try {
      writeFolder(join(home, "dist", "page"), resolve(folder), made, asked.values.title?.[0] ?? "Worksheets")
      for (const [address, bytes] of pictures) writeWhole(join(resolve(folder), address), bytes)
    } catch (cause) {
      return refuse(asked, [fileProblem(folder, cause, "write")], 2)
    }
    if (asked.json)
      out(
        JSON.stringify(
          {
            out: folder,
            worksheets: made.map(({ edition: { sheet } }) => ({
              id: sheet.id,
              version: sheet.version,
              digest: sheet.digest,
            })),
          },
          null,
          2,
        ),
      )
    else
      out(
        `${count(made.length, "worksheet")} published in ${folder}. Copy the folder to any web server; open index.html there.`,
      )
    return 0
  } finally {
    await tools.close()
  }
}

/** The page as built, with the editions and the shelf beside it. */
function writeFolder(page: string, folder: string, made: readonly MadeEdition[], title: string): void {
  for (const name of readdirSync(page)) cpSync(join(page, name), join(folder, name), { recursive: true })
  for (const { edition } of made)
    writeWhole(join(folder, "data", `${edition.sheet.id}.json`), JSON.stringify(edition))
  const shelf: Shelf = { format: "deltasheet-shelf/1", title, cards: inCourse(made.map(({ card }) => card)) }
  writeWhole(join(folder, "data", "shelf.json"), JSON.stringify(shelf))
}
