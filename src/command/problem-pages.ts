import { readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs"
import { join } from "node:path"
import { setProse } from "../worksheet/prose.ts"

/**
 * Turns the pages behind message codes (public/problems/CODE.md) into HTML beside the page, in the page's own inks,
 * and adds a list of them all.
 *
 * @param folder the built copy of public/problems; its Markdown files are replaced
 * @param tokens text of tokens.css, and what else stands before the styles of these pages: the font faces
 */
export function writeProblemPages(folder: string, tokens: string): void {
  const names = readdirSync(folder)
    .filter(name => name.endsWith(".md"))
    .sort()
  const titles: [name: string, title: string][] = []
  for (const name of names) {
    const text = readFileSync(join(folder, name), "utf8")
    const title = /^#\s+(.*)$/m.exec(text)?.[1] ?? name
    const code = name.slice(0, -3)
    titles.push([code, title])
    writeFileSync(
      join(folder, `${code}.html`),
      page(title, setProse(text).html + `<p class="code">${code}</p>`, tokens),
    )
    rmSync(join(folder, name))
  }
  const list = titles.map(([code, title]) => `- [${title}](${code}.html)`).join("\n")
  writeFileSync(
    join(folder, "index.html"),
    page("What messages mean", setProse(`# What messages mean\n\n${list}\n`).html, tokens),
  )
}

function page(title: string, body: string, tokens: string): string {
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'; font-src 'self'; img-src 'self'">
<title>${title.replaceAll("&", "&amp;").replaceAll("<", "&lt;")} – Deltasheet</title>
<link rel="icon" href="../icon.svg">
<style>
${tokens}
html { font-size: var(--size-root) }
body { margin: 0; background: var(--paper); color: var(--ink); font-family: var(--face-text); line-height: var(--leading) }
main { max-width: 34rem; margin: 0 auto; padding: var(--space-two) var(--space-one) }
h1 { font-size: var(--size-title); font-weight: 600; line-height: var(--leading-tight) }
h2 { font-size: var(--size-text); font-variant-caps: all-small-caps; letter-spacing: .06em; color: var(--ink-grey); margin: var(--space-one) 0 var(--space-quarter) }
pre { font-family: var(--face-code); font-size: var(--size-code); border-block: 1px solid var(--hair); padding: var(--space-half) 0; overflow-x: auto; font-variant-ligatures: none }
code { font-family: var(--face-code); font-size: var(--size-code); font-variant-ligatures: none }
a { color: var(--accent) }
.code { color: var(--ink-grey); font-family: var(--face-code); font-size: var(--size-small) }
footer { margin-top: var(--space-two); border-top: 1px solid var(--hair); padding-top: var(--space-half) }
</style>
</head>
<body>
<main>
${body}
<footer><a href="../index.html">To the worksheets</a> · <a href="index.html">What messages mean</a></footer>
</main>
</body>
</html>
`
}
