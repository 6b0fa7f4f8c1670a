import {
  accessSync,
  closeSync,
  constants,
  existsSync,
  openSync,
  readdirSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from "node:fs"
import { dirname, join } from "node:path"
import type { ReportPiece } from "../report/index.ts"
import { makeFolder, writeAll } from "./files.ts"

/** Files that come whole, in one piece, and are too many to be held open. */
const comesWhole = (name: string): boolean => name.startsWith("students/")
/**
 * A page that an earlier marking wrote (src/report/file-name.ts); earlier versions gave it eight digits, and left it half written
 * beside its place when they were killed.
 */
const ownPage = /^[a-z0-9-]+-(?:[0-9a-f]{8}){1,2}\.html(\.[0-9a-f]{8}\.part)?$/
/** Holds what is being written. One that was killed leaves it behind; the next to write takes it away. */
const unfinished = ".deltasheet-unfinished"

/**
 * Writes report files as their pieces come, all in a folder beside their places, and moves them there when all have
 * come: on a disk that fills up, every file of an earlier marking stays. Pages of students who are no longer among
 * the files are taken away.
 *
 * @throws what the system says; what was half written is taken away
 */
export async function writePieces(
  folder: string,
  pieces: AsyncIterable<ReportPiece>,
  { keepPages = false }: { readonly keepPages?: boolean } = {},
): Promise<string[]> {
  const open = new Map<string, number>()
  const names = new Set<string>()
  const stage = join(folder, unfinished)
  rmSync(stage, { recursive: true, force: true })
  try {
    for await (const { name, text } of pieces) {
      const beside = join(stage, name)
      if (!names.has(name)) makeFolder(dirname(beside))
      names.add(name)
      if (comesWhole(name)) {
        writeFileSync(beside, text)
        continue
      }
      let file = open.get(name)
      if (file === undefined) open.set(name, (file = openSync(beside, "w")))
      writeAll(file, Buffer.from(text))
    }
    for (const [name, file] of open) {
      open.delete(name)
      closeSync(file)
    }
    for (const name of names) makeWay(join(folder, name))
    for (const name of names) renameSync(join(stage, name), join(folder, name))
    if (!keepPages) removeOthers(folder, names)
    return [...names]
  } finally {
    for (const file of open.values()) closeSync(file)
    rmSync(stage, { recursive: true, force: true })
  }
}

/** Finds out whether a file can be moved to its place while nothing has been moved yet. */
function makeWay(place: string): void {
  const folder = dirname(place)
  makeFolder(folder)
  accessSync(folder, constants.W_OK)
  if (statSync(place, { throwIfNoEntry: false })?.isDirectory())
    throw Object.assign(new Error(`“${place}” is a folder`), {
      code: "EISDIR",
      syscall: "rename",
      path: place,
    })
}

function removeOthers(folder: string, names: ReadonlySet<string>): void {
  const students = join(folder, "students")
  if (!existsSync(students)) return
  for (const name of readdirSync(students))
    if (ownPage.test(name) && !names.has(`students/${name}`)) rmSync(join(students, name))
}
