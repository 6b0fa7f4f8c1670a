import { sha256 } from "@noble/hashes/sha2.js"
import { reportStyle } from "./style.ts"
import { strangerText } from "./text.ts"

/**
 * A page that stands alone: no script, nothing from outside, and a policy that allows neither. The one style sheet is
 * named by its digest, so that no text that was slipped in could bring another.
 *
 * @param styles tokens and font faces, trusted
 * @param body HTML, everything from outside escaped
 */
export function frame(title: string, styles: string, body: string): string {
  const { style, digest } = sheetOf(styles)
  const policy = `default-src 'none'; style-src 'sha256-${digest}'; font-src data:; base-uri 'none'; form-action 'none'`
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="referrer" content="no-referrer">
<meta name="robots" content="noindex">
<title>${strangerText(title)}</title>
<style>${style}</style>
</head>
<body>
${body}
</body>
</html>
`
}

interface Sheet {
  readonly style: string
  /** base64 of its SHA-256 */
  readonly digest: string
}

/** Sheets by what they were made of; thousands of pages share one. */
const sheets = new Map<string, Sheet>()

function sheetOf(styles: string): Sheet {
  const known = sheets.get(styles)
  if (known !== undefined) return known
  const style = `${styles}\n${reportStyle}`
    // paper is light, whatever the screen is
    .replaceAll("@media (prefers-color-scheme: dark)", "@media screen and (prefers-color-scheme: dark)")
    .replace(/\/\*[\s\S]*?\*\//g, "")
    .replace(/\s+/g, " ")
    .replace(/<\/style/gi, "")
    .trim()
  const digest = btoa(String.fromCharCode(...sha256(new TextEncoder().encode(style))))
  const made = { style, digest }
  if (sheets.size > 4) sheets.clear()
  sheets.set(styles, made)
  return made
}
