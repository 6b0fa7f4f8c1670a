export { resultsCsv } from "./csv.ts"
export { graded, pointsOf, type Result, type Results, refused, resultsJson } from "./results.ts"
