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
  const style = `${styles.replace(/<\/style/gi, "<\\/style")}\n${reportStyle}`
  const policy = `default-src 'none'; style-src 'sha256-${digest(style)}'; font-src data:; base-uri 'none'; form-action 'none'`
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

let known: readonly [style: string, digest: string] = ["", ""]

/** Base64 of the SHA-256 of the sheet; kept, since thousands of pages share one. */
function digest(style: string): string {
  if (known[0] !== style)
    known = [style, btoa(String.fromCharCode(...sha256(new TextEncoder().encode(style))))]
  return known[1]
}
