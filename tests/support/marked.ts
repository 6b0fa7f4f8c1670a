import type { CheckResult, Verdict } from "../../src/judge/contract.ts"
import type { Marked, Motion, ReportPiece, ReportSubject } from "../../src/report/contract.ts"
import { pointsOf, reportFiles } from "../../src/report/index.ts"
import { shipped } from "./class.ts"

/** The fall from 8 m and what an answer makes of it, both invented: y over two seconds, `pull` times g. */
export function fall(pull: number, rows = 60): Motion {
  const times = Array.from({ length: rows }, (_, i) => (1.3 * i) / (rows - 1))
  const zero = times.map(() => 0)
  return {
    cell: "fall",
    ofTime: true,
    times,
    curves: [
      { path: "key.position.x", values: zero },
      { path: "key.position.y", values: times.map(t => 8 - (pull * 9.81 * t * t) / 2) },
      { path: "key.momentum.y", values: times.map(t => -0.25 * pull * 9.81 * t) },
    ],
  }
}

export const lampKey = shipped("lamp-key")

export const subject: ReportSubject = {
  sheet: lampKey.sheet,
  keys: lampKey.keys,
  reference: [fall(1)],
}

export interface Made {
  readonly file?: string
  readonly id?: string
  readonly name?: string
  readonly verdicts?: Readonly<Record<string, Verdict>>
  readonly slip?: string | null
  readonly message?: string
  readonly blanks?: Readonly<Record<string, string>>
  readonly questions?: Readonly<Record<string, string | number | null>>
  readonly savedAt?: string
  readonly pull?: number
}

/** A marked file to lamp-key as the marker makes it; everything in it is invented. */
export function marked(number: number, made: Made = {}): Marked {
  const { sheet } = subject
  const items = [...sheet.checks, ...sheet.questions.filter(question => question.kind !== "text")]
  const checks = items.map((item): CheckResult => {
    const verdict = made.verdicts?.[item.name] ?? "met"
    // as the judge does: the worksheet's words for the slip at this check
    const words = "slips" in item ? item.slips[made.slip ?? ""] : undefined
    const hint = words === undefined ? "" : ` ${words}`
    return {
      name: item.name,
      verdict,
      points: verdict === "met" ? item.points : 0,
      outOf: item.points,
      departsAt: verdict === "not met" ? 0.25 : null,
      slip: verdict === "not met" ? (made.slip ?? null) : null,
      message: verdict === "met" ? "It follows." : (made.message ?? `It leaves the reference.${hint}`),
    }
  })
  return {
    result: {
      file: made.file ?? `${String(number).padStart(3, "0")}.json`,
      student: { id: made.id ?? `hs${number}`, name: made.name ?? `Student ${number}` },
      status: "graded",
      points: checks.reduce((sum, check) => sum + check.points, 0),
      outOf: checks.reduce((sum, check) => sum + check.outOf, 0),
      checks,
      toRead: {},
      problems: [],
    },
    work: {
      blanks: made.blanks ?? { update: "  p = p + Fnet * dt", formula: "  yFormula = 1" },
      questions: made.questions ?? {
        heavier: "same",
        halved: "half",
        speed: 9.81,
        "own-words": "It is small.",
      },
      savedAt: made.savedAt ?? "2026-11-25T09:00:00.000Z",
      motions: [fall(made.pull ?? 1)],
    },
  }
}

export function refusedFile(file: string, id = ""): Marked {
  return {
    result: {
      file,
      student: id === "" ? null : { id, name: `Student ${id}` },
      status: "refused",
      points: 0,
      outOf: pointsOf(subject.sheet),
      checks: [],
      toRead: {},
      problems: [
        { code: "answer-file-empty", text: "The answer file is empty.", todo: "Download it again." },
      ],
    },
    work: null,
  }
}

const plain = { styles: "", smallStyles: "" }

/** All files of a class, whole. */
export async function filesOf(
  list: Iterable<Marked>,
  options: Parameters<typeof reportFiles>[2] = plain,
  about = subject,
): Promise<Map<string, string>> {
  const files = new Map<string, string>()
  for await (const { name, text } of reportFiles(about, list, options))
    files.set(name, (files.get(name) ?? "") + text)
  return files
}

export async function piecesOf(list: Iterable<Marked>): Promise<ReportPiece[]> {
  const pieces: ReportPiece[] = []
  for await (const piece of reportFiles(subject, list, plain)) pieces.push(piece)
  return pieces
}
