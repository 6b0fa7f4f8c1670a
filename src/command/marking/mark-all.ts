import type { Problem } from "../../cell/problem.ts"
import { createMarker, isOfTheMoment, type Marker, type References } from "../../judge/index.ts"
import {
  graded,
  type Marked,
  type Motion,
  motionsOf,
  type Result,
  refused,
  workOf,
} from "../../report/index.ts"
import type { AnswerFile, StudentSheet, Worksheet } from "../../worksheet/index.ts"
import type { Handed } from "../collect.ts"
import type { Tools } from "../tools.ts"
import { readHanded } from "./answers.ts"
import type { ClassFile } from "./class-file.ts"
import { marksDigest, verdictKey } from "./keys.ts"
import type { Standing } from "./newest.ts"
import { openRegister, type Register } from "./register.ts"
import { readVerdict, type Verdict } from "./verdict.ts"

/** How a file came to its result. */
export type Way = "judged" | "known" | "refused"

export interface Batch {
  /** the one that is marked, then earlier versions */
  readonly worksheets: readonly Worksheet[]
  readonly handed: readonly Handed[]
  /** places in `handed` that are to be marked here */
  readonly places: readonly number[]
  readonly standing: ReadonlyMap<string, Standing>
  readonly tools: Tools
  readonly references: References
  /** digest of the program itself */
  readonly program: string
  readonly register: Register
  readonly classFile: ClassFile
  readonly stopped: () => boolean
  readonly marked: (way: Way) => void
}

/** Something of the computer's own failed: what was being marked then has no result, and no student is to blame. */
export class HostTrouble extends Error {
  constructor(readonly problem: Problem) {
    super(problem.text)
  }
}

interface Desk {
  readonly worksheet: Worksheet
  readonly marks: string
  readonly marker: Marker<readonly Motion[]>
}

/**
 * Marks the files at the given places and puts each into the class file as it is done; as many at a time as keep all workers
 * busy. Whatever is wrong with a file stays its own. Ends early when stopped.
 *
 * @throws HostTrouble, and what the system says when something cannot be written
 */
export async function markAll(batch: Batch): Promise<void> {
  const { worksheets, places, tools, references, stopped, classFile, marked } = batch
  const desks = worksheets.map(
    (worksheet): Desk => ({
      worksheet,
      marks: marksDigest(worksheet),
      marker: createMarker(worksheet, tools, references, evidence =>
        motionsOf(worksheet.sheet, evidence.runs[0]),
      ),
    }),
  )
  let next = 0
  let failed = false
  const worker = async (): Promise<void> => {
    while (next < places.length && !stopped() && !failed) {
      const place = places[next++]!
      try {
        const result = await markOne(batch, desks, batch.handed[place]!)
        if (stopped()) return
        classFile.put(place, result.item)
        marked(result.way)
      } catch (cause) {
        failed = true
        if (!stopped()) throw cause
      }
    }
  }
  const workers = await Promise.allSettled(Array.from({ length: tools.workers + 2 }, worker))
  for (const end of workers) if (end.status === "rejected") throw end.reason
}

async function markOne(
  batch: Batch,
  desks: readonly Desk[],
  item: Handed,
): Promise<{ item: Marked; way: Way }> {
  const { worksheets, standing, program, register, stopped } = batch
  const refusal = (sheet: StudentSheet, student: Result["student"], problems: readonly Problem[]) => ({
    item: { result: refused(sheet, item.file, student, problems), work: null },
    way: "refused" as const,
  })
  const read = readHanded(item, worksheets)
  if (!read.ok) return refusal(worksheets[0]!.sheet, read.student, read.problems)
  const { answers, worksheet } = read
  const { sheet } = worksheet
  const own = standing.get(item.file)
  const problems = [...(own?.problems ?? []), ...read.problems]
  if (own?.superseded) return refusal(sheet, answers.student, problems)
  const desk = desks.find(other => other.worksheet === worksheet)!
  const key = verdictKey(program, desk.marks, worksheet, answers)
  const known = register.find(key)
  const verdict = known ?? (await judge(desk, answers))
  if (known === null && !stopped() && !isOfTheMoment(verdict.judgement)) register.add(key, verdict)
  return {
    item: markedFile(item.file, sheet, answers, verdict, problems),
    way: known === null ? "judged" : "known",
  }
}

async function judge({ marker }: Desk, answers: AnswerFile): Promise<Verdict> {
  const { judgement, kept } = await marker.mark(answers)
  return { judgement, motions: kept }
}

function markedFile(
  file: string,
  sheet: StudentSheet,
  answers: AnswerFile,
  { judgement, motions }: Verdict,
  problems: readonly Problem[],
): Marked {
  const toRead = Object.fromEntries(
    sheet.questions
      .filter(q => q.kind === "text")
      .map(q => [q.name, String(answers.questions[q.name] ?? "")]),
  )
  return {
    result: graded(file, answers.student, judgement, toRead, problems),
    work: workOf(sheet, answers, motions),
  }
}

/** The register of verdicts over these worksheets. @throws what the system says */
export function openVerdicts(file: string, worksheets: readonly Worksheet[]): Register {
  return openRegister(file, written => {
    for (const { sheet } of worksheets) {
      const verdict = readVerdict(sheet, written)
      if (verdict !== null) return verdict
    }
    return null
  })
}
