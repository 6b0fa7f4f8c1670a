import type { QuestionKey, StudentSheet } from "../worksheet/contract.ts"
import type { RosterIds } from "./oneroster.ts"
import type { Result } from "./results.ts"

/**
 * One moving quantity for an overlay: a component such as `key.position.y` or a scalar such as `energy`. Numbers
 * have five digits: a drawing shows no more, and the file stays small.
 */
export interface Curve {
  readonly path: string
  /** one for each of Motion.times */
  readonly values: readonly number[]
}

/** What one cell recorded, as far as its checks read it, thinned to at most `motionRows` instants. */
export interface Motion {
  readonly cell: string
  /** whether the first column is a time: where a cell records no body, it is a count or another quantity gone through */
  readonly ofTime: boolean
  /** s (or what stands in its place), ascending */
  readonly times: readonly number[]
  readonly curves: readonly Curve[]
}

/**
 * What a marked file must carry beside its Result so that reports can be made from it later: plain JSON of some
 * kilobytes, texts cut to `longestText`. Made by `workOf`; a journal may keep it as it is.
 */
export interface Work {
  /** text of each blank, by its name */
  readonly blanks: Readonly<Record<string, string>>
  /** answers to questions, by name */
  readonly questions: Readonly<Record<string, string | number | null>>
  /** the instant that the answer file names (RFC 3339), "" for none: no clock is read here */
  readonly savedAt: string
  /** at the sheet's own parameters and time step; empty when nothing could run */
  readonly motions: readonly Motion[]
}

/** One handed-in file with its verdict. `work` is null when it was refused. */
export interface Marked {
  readonly result: Result
  readonly work: Work | null
}

/**
 * What reports may know of the worksheet. Keys of questions are shown to the teacher alone; the author's text of a
 * blank is not in here. `reference` holds the motions of the author's own answers (motionsOf).
 */
export interface ReportSubject {
  readonly sheet: StudentSheet
  readonly keys: readonly QuestionKey[]
  readonly reference: readonly Motion[]
}

export interface ReportOptions {
  /** tokens.css and font faces; "" gives plain pages */
  readonly styles: string
  /** the same without embedded fonts, for the many small pages */
  readonly smallStyles: string
  /** the school's own ids for the OneRoster files; name UUIDs without them */
  readonly roster?: RosterIds
  /** leaves names, ids and file names out of report.html; students' own pages keep them */
  readonly anonymous?: boolean
}

/**
 * A stretch of a file to be written. Pieces with the same name belong to one file, in the order in which they come;
 * a file is whole when all pieces have come. Names are relative, with "/" between folders, and safe on any system.
 */
export interface ReportPiece {
  readonly name: string
  readonly text: string
}

/**
 * Makes all report files of a class, one marked file at a time, in the order given (the order of results.json): of
 * a file already passed only its counts are kept, so that memory stays small over thousands. Pure: the same class
 * gives the same bytes.
 *
 *     report.html                  for the teacher
 *     students/NAME.html           a page for each marked file
 *     oneroster/manifest.csv, …    OneRoster 1.2, to be zipped as it is
 *     statements.json              xAPI 1.0.3
 */
export type ReportFiles = (
  subject: ReportSubject,
  marked: Iterable<Marked> | AsyncIterable<Marked>,
  options: ReportOptions,
) => AsyncIterable<ReportPiece>

/** Instants of a thinned motion at most: the drawing is 320 px wide, and corners are kept. */
export const motionRows = 120
/** Characters of one blank or one text answer that reports keep. */
export const longestText = 8_000
/** Up to this many files, report.html holds each student's plots and code itself; beyond, only their own pages do. */
export const mostInReport = 300
