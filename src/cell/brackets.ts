/** A bracket without its partner, or a text or remark that goes on beyond the end of the stretch. */
export type Loose =
  | { readonly kind: "opened" | "closed"; readonly sign: string; readonly at: number }
  | { readonly kind: "text" }

export const closing: Readonly<Record<string, string>> = { "(": ")", "[": "]", "{": "}", "${": "}" }
export const opening: Readonly<Record<string, string>> = { ")": "(", "]": "[", "}": "{" }

/** A word, a number or a closing bracket before a / makes it a fraction bar; these words do not. */
const beforePattern = /(?:^|[^\w$.])(?:return|typeof|case|in|of|do|else|void|throw)$/

/**
 * The first bracket in a stretch of a program that has no partner in it; null if all have. Texts in quotes, patterns and
 * remarks are passed over: the brackets in them are letters.
 */
export function looseBracket(text: string, from = 0, to = text.length): Loose | null {
  const open: { sign: string; at: number }[] = []
  for (let at = from; at < to; at++) {
    const sign = text[at]!
    const passed = passedOver(text, at, from, to)
    if (passed === null) return { kind: "text" }
    if (passed > at) {
      at = passed - 1
      continue
    }
    const top = open[open.length - 1]
    if (sign === "`") {
      const inner = templatePart(text, at + 1, to)
      if (inner === null) return { kind: "text" }
      if (inner.opens) open.push({ sign: "${", at: inner.end - 2 })
      at = inner.end - 1
    } else if (sign in closing) open.push({ sign, at })
    else if (sign in opening) {
      if (top === undefined) return { kind: "closed", sign, at }
      if (closing[top.sign] !== sign) {
        const forgotten = open.some(one => closing[one.sign] === sign) || !top.sign.endsWith("{")
        return forgotten ? { kind: "opened", ...top } : { kind: "closed", sign, at }
      }
      open.pop()
      if (top.sign !== "${") continue
      const inner = templatePart(text, at + 1, to)
      if (inner === null) return { kind: "text" }
      if (inner.opens) open.push({ sign: "${", at: inner.end - 2 })
      at = inner.end - 1
    }
  }
  const last = open[open.length - 1]
  return last ? { kind: "opened", ...last } : null
}

/** The end of a text in quotes, a remark or a pattern that begins here; the place itself if none does, null if it does not end. */
function passedOver(text: string, at: number, from: number, to: number): number | null {
  const sign = text[at]
  if (sign === '"' || sign === "'") return quoteEnd(text, at, to)
  if (sign !== "/") return at
  if (text[at + 1] === "/") {
    const end = text.indexOf("\n", at)
    return end < 0 ? to : Math.min(end, to)
  }
  if (text[at + 1] === "*") {
    const end = text.indexOf("*/", at + 2)
    return end < 0 || end + 2 > to ? null : end + 2
  }
  const before = text.slice(Math.max(from, at - 200), at).trimEnd()
  if (/[\p{ID_Continue}$)\]}"'`]$/u.test(before) && !beforePattern.test(before)) return at
  const pattern = /^\/(?:[^\\/[\n]|\\.|\[(?:[^\]\\\n]|\\.)*\])+\//.exec(text.slice(at, to))
  return pattern ? at + pattern[0].length : at
}

function quoteEnd(text: string, at: number, to: number): number | null {
  for (let i = at + 1; i < to; i++) {
    if (text[i] === "\\") i++
    else if (text[i] === text[at]) return i + 1
    else if (text[i] === "\n") return null
  }
  return null
}

/** Where the plain part of a template ends: behind its closing quote, or behind the ${ of a value in it. */
function templatePart(text: string, from: number, to: number): { end: number; opens: boolean } | null {
  for (let i = from; i < to; i++) {
    if (text[i] === "\\") i++
    else if (text[i] === "`") return { end: i + 1, opens: false }
    else if (text[i] === "$" && text[i + 1] === "{") return { end: i + 2, opens: true }
  }
  return null
}
