import { createHash } from "node:crypto"
import { readFileSync } from "node:fs"
import { join } from "node:path"
import * as v from "valibot"
import type { Problem } from "../../cell/problem.ts"
import type { ReportSubject } from "../../report/index.ts"
import { fileProblem, writeWhole } from "../files.ts"
import type { Share } from "./share.ts"

/** deltasheet-share/1: what the joining of shares must know of one. Written when all of the share is marked. */
export interface ShareFile {
  readonly format: "deltasheet-share/1"
  readonly share: Share
  readonly worksheet: { readonly id: string; readonly version: number; readonly digest: string }
  /** digests of the worksheet with its checks and answers, and of the program that marked */
  readonly marks: string
  readonly program: string
  /** digest of the names of all files of the class, in their order, and of which of them count */
  readonly roll: string
  /** files of the whole class */
  readonly files: number
  /** places of this share's files */
  readonly places: readonly number[]
  readonly subject: ReportSubject
}

const whole = v.pipe(v.number(), v.integer(), v.minValue(0))
const schema = v.object({
  format: v.literal("deltasheet-share/1"),
  share: v.object({ k: whole, n: whole }),
  worksheet: v.object({ id: v.string(), version: v.number(), digest: v.string() }),
  marks: v.string(),
  program: v.string(),
  roll: v.string(),
  files: whole,
  places: v.array(whole),
  subject: v.looseObject({
    sheet: v.looseObject({}),
    keys: v.array(v.unknown()),
    reference: v.array(v.unknown()),
  }),
})

const nameIn = (marking: string): string => join(marking, "share.json")

/** @param marking the folder “marking” inside the one for the results */
export function writeShare(marking: string, file: ShareFile): void {
  writeWhole(nameIn(marking), `${JSON.stringify(file)}\n`)
}

export function readShareFile(marking: string, folder: string): ShareFile | Problem {
  let text: string
  try {
    text = readFileSync(nameIn(marking), "utf8")
  } catch (cause) {
    if ((cause as NodeJS.ErrnoException).code !== "ENOENT") return fileProblem(nameIn(marking), cause)
    return {
      code: "merge-incomplete",
      text: `“${folder}” holds no finished share.`,
      todo: "Let “grade” with “--share K/N” run to its end in it, then merge again. What it has marked so far is kept.",
    }
  }
  try {
    const read = v.safeParse(schema, JSON.parse(text))
    if (read.success) return read.output as unknown as ShareFile
  } catch {
    // said below
  }
  return {
    code: "merge-unlike",
    text: `“${nameIn(marking)}” is damaged or of another version of the program.`,
    todo: "Remove it and mark the share again; verdicts that are kept beside it need not be judged again.",
  }
}

/** Digest of the class as a share saw it: which files there are, and which of them count. */
export function rollOf(files: readonly string[], counts: (file: string) => boolean): string {
  return createHash("sha256")
    .update(JSON.stringify(files.map(file => [file, counts(file)])))
    .digest("hex")
}
