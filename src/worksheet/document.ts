import { tokens } from "./prose.ts"
import { type Findings, report } from "./source.ts"
import type { YamlBlock } from "./yaml-block.ts"

/** A fence that means something to a worksheet; `line` is the file's line of its opening. */
export interface Fence {
  readonly info: string
  readonly language: string
  readonly kind: string
  readonly name: string
  readonly body: string
  readonly line: number
}

export type Part =
  | { readonly kind: "prose"; readonly text: string; readonly line: number }
  | { readonly kind: "fence"; readonly fence: Fence }

/**
 * Splits a worksheet into front matter, prose and fences, with lines. A fence with one word or none behind its
 * marks is a plain listing and stays prose.
 */
export function splitDocument(
  findings: Findings,
  text: string,
): { frontMatter: YamlBlock; parts: Part[] } | null {
  const rows = text.split("\n")
  const end = rows[0]?.trimEnd() === "---" ? rows.findIndex((row, i) => i > 0 && row.trimEnd() === "---") : -1
  if (end < 0) {
    report(findings, 1, {
      code: "front-matter-missing",
      text:
        rows[0]?.trimEnd() === "---"
          ? "The front matter has no closing line “---”."
          : "The file does not begin with front matter.",
      todo: "Begin with a line “---”, then title, id and version, then a line “---”.",
    })
    return null
  }
  const body = rows.slice(end + 1)
  const offset = end + 2
  const parts: Part[] = []
  let from = 0
  const prose = (to: number): void => {
    if (to > from) parts.push({ kind: "prose", text: body.slice(from, to).join("\n"), line: offset + from })
  }
  for (const token of tokens(body.join("\n"))) {
    if (token.type !== "fence" || token.map === null) continue
    const info = token.info.trim()
    const words = info.split(/\s+/)
    if (words.length < 2) continue
    const line = offset + token.map[0]
    if (token.level > 0 || words.length > 3) {
      report(findings, line, {
        code: "unknown-kind",
        text:
          token.level > 0
            ? "A fence of the worksheet stands inside a list or a quotation."
            : `The fence “${info}” has more than three words.`,
        todo: token.level > 0 ? "Move it to the left margin." : "Write “LANGUAGE KIND NAME”.",
      })
      continue
    }
    prose(token.map[0])
    from = token.map[1]
    const opened = body[token.map[0]]!.trim()
    const mark = /^(`{3,}|~{3,})/.exec(opened)?.[1] ?? "```"
    const closed = body[token.map[1] - 1]?.trim() ?? ""
    if (token.map[1] - token.map[0] < 2 || !(closed.startsWith(mark) && /^(`+|~+)$/.test(closed))) {
      report(findings, line, {
        code: "fence-without-end",
        text: `The fence “${info}” is never closed.`,
        todo: `Close it with a line ${mark}.`,
      })
    }
    parts.push({
      kind: "fence",
      fence: { info, language: words[0]!, kind: words[1]!, name: words[2] ?? "", body: token.content, line },
    })
  }
  prose(body.length)
  return { frontMatter: { text: rows.slice(1, end).join("\n"), line: 2, what: "front matter" }, parts }
}
