import { closeSync, existsSync, openSync, readdirSync, renameSync, rmSync, writeSync } from "node:fs"
import { dirname, join } from "node:path"
import type { ReportPiece } from "../report/index.ts"
import { makeFolder, writeWhole } from "./files.ts"

/** Files that come whole, in one piece, and are too many to be held open. */
const comesWhole = (name: string): boolean => name.startsWith("students/")
/**
 * A page that an earlier marking wrote (src/report/file-name.ts), or half wrote when it was killed; earlier versions gave it eight
 * digits.
 */
const ownPage = /^[a-z0-9-]+-(?:[0-9a-f]{8}){1,2}\.html(\.[0-9a-f]{8}\.part)?$/

/**
 * Writes report files as their pieces come, each beside its place, and moves them there when all have come: a report
 * is whole or is the one before. Pages of students who are no longer among the files are taken away.
 *
 * @throws what the system says; what was half written is taken away
 */
export async function writePieces(
  folder: string,
  pieces: AsyncIterable<ReportPiece>,
  { keepPages = false }: { readonly keepPages?: boolean } = {},
): Promise<string[]> {
  const open = new Map<string, number>()
  const parts = new Set<string>()
  const names = new Set<string>()
  const beside = (name: string): string => `${join(folder, name)}.${process.pid}.part`
  try {
    for await (const { name, text } of pieces) {
      names.add(name)
      if (comesWhole(name)) {
        writeWhole(join(folder, name), text)
        continue
      }
      let file = open.get(name)
      if (file === undefined) {
        makeFolder(dirname(join(folder, name)))
        parts.add(name)
        open.set(name, (file = openSync(beside(name), "w")))
      }
      writeSync(file, text)
    }
    for (const name of [...parts]) {
      closeSync(open.get(name)!)
      open.delete(name)
      renameSync(beside(name), join(folder, name))
      parts.delete(name)
    }
    if (!keepPages) removeOthers(folder, names)
    return [...names]
  } finally {
    for (const file of open.values()) closeSync(file)
    for (const name of parts) rmSync(beside(name), { force: true })
  }
}

function removeOthers(folder: string, names: ReadonlySet<string>): void {
  const students = join(folder, "students")
  if (!existsSync(students)) return
  for (const name of readdirSync(students))
    if (ownPage.test(name) && !names.has(`students/${name}`)) rmSync(join(students, name))
}
