export {
  type Marked,
  type Motion,
  mostInReport,
  type ReportOptions,
  type ReportPiece,
  type ReportSubject,
  type Work,
} from "./contract.ts"
export { csvHead, csvLine } from "./csv.ts"
export { reportFiles } from "./files.ts"
export { readInstant } from "./instant.ts"
export { isRosterId, type RosterIds } from "./oneroster.ts"
export { graded, pointsOf, type Result, type Results, refused, resultsJson } from "./results.ts"
export { isContested } from "./tally.ts"
export { motionsOf, workOf } from "./work.ts"
