import type { Segment } from "../cell/contract.ts"
import { type Findings, hyphenated, report } from "./source.ts"

/** A cell's body as the author wrote it, taken apart. */
export interface CellParts {
  readonly segments: readonly Segment[]
  /** the author's text of each blank */
  readonly answers: Readonly<Record<string, string>>
  /** file line of each blank's opening marker */
  readonly lines: Readonly<Record<string, number>>
}

const opening = /^[ \t]*\/\/[ \t]*blank\b[ \t]*([^:\n]*?)[ \t]*(?::[ \t]*(.*?))?[ \t]*$/
const closing = /^[ \t]*\/\/[ \t]*end[ \t]+blank[ \t]*$/
const starter = /^[ \t]*\/\/[ \t]*starter[ \t]*$/
const inline =
  /\/\*[ \t]*blank\b[ \t]*([^:*]*?)[ \t]*(?::[ \t]*((?:(?!\*\/).)*?))?[ \t]*\*\/((?:(?!\/\*[ \t]*(?:end[ \t]+)?blank\b)[\s\S])*?)\/\*[ \t]*end[ \t]+blank[ \t]*\*\//g
const inlineEnd = /\/\*[ \t]*end[ \t]+blank[ \t]*\*\//
const inlineStart = /\/\*[ \t]*blank\b[^*]*\*\//

/**
 * Takes a cell's body apart into given text and blanks. Marker lines go; what stands between them is the
 * author's answer, up to a `// starter` line, after which comes what the student finds there at first.
 *
 * @param line the file's line of the body's first line
 */
export function parseCellFence(findings: Findings, body: string, line: number): CellParts {
  const segments: Segment[] = []
  const answers: Record<string, string> = {}
  const lines: Record<string, number> = {}
  let given = ""
  const open = (name: string, prompt: string, at: number): boolean => {
    if (!hyphenated.test(name)) {
      report(findings, at, {
        code: "blank-name",
        text: name === "" ? "A blank here has no name." : `“${name}” cannot name a blank.`,
        todo: "Write “blank NAME: what to do”, the name with letters, digits and hyphens, a letter first.",
      })
      return false
    }
    if (name in answers) {
      report(findings, at, {
        code: "duplicate-name",
        text: `There are two blanks named “${name}” (the other at line ${lines[name]}).`,
        todo: "Give each blank of the worksheet a name of its own.",
      })
      return false
    }
    if (prompt === "") {
      report(findings, at, {
        code: "blank-prompt",
        text: `The blank “${name}” does not say what to do.`,
        todo: "Put a colon and the prompt after its name: “blank " + name + ": Update the momentum.”",
      })
    }
    lines[name] = at
    return true
  }
  const flush = (): void => {
    segments.push({ kind: "given", text: given })
    given = ""
  }
  const givenLine = (text: string, at: number): void => {
    let from = 0
    inline.lastIndex = 0
    for (const match of text.matchAll(inline)) {
      const name = match[1] ?? ""
      const prompt = match[2] ?? ""
      given += text.slice(from, match.index)
      from = match.index + match[0].length
      if (!open(name, prompt, at)) continue
      flush()
      answers[name] = (match[3] ?? "").trim()
      segments.push({ kind: "blank", name, prompt, inline: true, starter: "" })
    }
    const rest = text.slice(from)
    if (inlineStart.test(rest)) {
      report(findings, at, {
        code: "blank-without-end",
        text: "A blank begins inside this line and does not end in it.",
        todo: "Close it on the same line with /* end blank */, or put the blank on lines of its own.",
      })
    } else if (inlineEnd.test(rest)) {
      report(findings, at, {
        code: "end-without-blank",
        text: "An “end blank” stands here, but no blank was open.",
        todo: "Take it out, or add /* blank NAME: prompt */ before it on the same line.",
      })
    }
    given += rest
  }
  const rows = body.split("\n")
  if (rows.at(-1) === "") rows.pop()
  for (let i = 0; i < rows.length; i++) {
    const row = rows[i]!
    const at = line + i
    if (closing.test(row)) {
      report(findings, at, {
        code: "end-without-blank",
        text: "An “end blank” stands here, but no blank was open.",
        todo: "Take the line out, or add “// blank NAME: prompt” before the student's part.",
      })
      continue
    }
    const match = opening.exec(row)
    if (!match) {
      if (given !== "" || segments.length > 0 || i > 0) given += "\n"
      givenLine(row, at)
      continue
    }
    const end = rows.findIndex((text, j) => j > i && closing.test(text))
    const inner = rows.slice(i + 1, end < 0 ? undefined : end).findIndex(text => opening.test(text))
    if (end < 0 || inner >= 0) {
      report(findings, at, {
        code: "blank-without-end",
        text: `The blank “${match[1]}” has no end${inner >= 0 ? " before the next blank begins" : " in its cell"}.`,
        todo: "Write a line “// end blank” after the student's part.",
      })
      if (end < 0) break
    }
    const inside = rows.slice(i + 1, end)
    const cut = inside.findIndex(text => starter.test(text))
    const name = match[1] ?? ""
    if (open(name, match[2] ?? "", at)) {
      if (i > 0) given += "\n"
      flush()
      answers[name] = (cut < 0 ? inside : inside.slice(0, cut)).join("\n")
      const begin = cut < 0 ? "" : inside.slice(cut + 1).join("\n")
      segments.push({ kind: "blank", name, prompt: match[2] ?? "", inline: false, starter: begin })
    }
    i = end
  }
  if (given !== "" || segments.length === 0) flush()
  return { segments, answers, lines }
}
