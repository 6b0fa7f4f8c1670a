export {
  type AnswerFileResult,
  matchAnswers,
  maxAnswerFileBytes,
  readAnswerFile,
  refuses,
  tooLarge,
  writeAnswerFile,
} from "./answers.ts"
export type * from "./contract.ts"
export { digestOf } from "./digest.ts"
export { longLines } from "./long-lines.ts"
export { nearest, suggest } from "./nearest.ts"
export { type ParseResult, parseWorksheet } from "./parse.ts"
export { checkSeries, type SeriesName, seriesOf } from "./series.ts"
