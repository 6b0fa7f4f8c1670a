import type { EmitOptions } from "./emitter.ts"

/** Whether a text holds anything that catches: what it costs is paid by such programs alone. */
export const mayCatch = (text: string): boolean => /\b(?:try|async)\b/.test(text)

/** The count of questions under way (catches.ts) as one more argument; "" in a program that catches nothing. */
export const openQuestions = ({ catches, hidden }: EmitOptions): string =>
  catches ? `, ${hidden.of("asked")}` : ""
