import { readFileSync } from "node:fs"
import type { ReferenceEntry, ReferenceParameter } from "./extract.ts"
import { extractReference } from "./extract.ts"

/** Sections of the page in the order of a course, each with the folders and files of the library that it holds. */
const sections: readonly { readonly title: string; readonly files: RegExp }[] = [
  { title: "Vectors", files: /^vec/ },
  { title: "Momentum and energy", files: /^momentum$/ },
  { title: "Forces", files: /^forces\// },
  { title: "Angular momentum", files: /^angular$/ },
  { title: "Rigid bodies", files: /^rigid\// },
  { title: "Several bodies", files: /^systems$/ },
  { title: "Steppers", files: /^steppers\// },
  { title: "Books", files: /^books\// },
  { title: "Constants and mathematics", files: /^(constants|math)$/ },
  { title: "Problems", files: /^problem$/ },
]

/** The reference of the physics library, generated from its docstrings: a page, and the same as data. */
export function buildReference(): { readonly html: string; readonly json: string } {
  const entries = extractReference()
  return { html: pageOf(entries), json: JSON.stringify(entries, undefined, 1) }
}

function pageOf(entries: readonly ReferenceEntry[]): string {
  const functions = entries.filter(entry => entry.kind !== "type")
  const filled = sections
    .map(section => ({ title: section.title, entries: functions.filter(e => section.files.test(e.file)) }))
    .filter(section => section.entries.length > 0)
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<link rel="icon" href="../icon.svg">
<title>Physics library · Deltasheet</title>
<style>
${readFileSync(new URL("../tokens.css", import.meta.url), "utf8")}
${style}
</style>
</head>
<body>
<header>
<p><a href="../">Worksheets</a></p>
<h1>The physics library</h1>
<p>What a cell can call. All quantities are in SI units; a vector is made with vec3(x, y, z).</p>
</header>
<nav aria-label="Contents">
${filled.map(contentsOf).join("\n")}
</nav>
<main>
${filled.map(sectionOf).join("\n")}
</main>
</body>
</html>
`
}

interface FilledSection {
  readonly title: string
  readonly entries: readonly ReferenceEntry[]
}

function contentsOf({ title, entries }: FilledSection): string {
  const links = entries.map(e => `<a href="#${e.name}">${e.name}</a>`)
  return `<section><h2><a href="#${anchor(title)}">${title}</a></h2><p>${links.join(" ")}</p></section>`
}

function sectionOf({ title, entries }: FilledSection): string {
  return `<section><h2 id="${anchor(title)}">${title}</h2>\n${entries.map(articleOf).join("\n")}</section>`
}

function articleOf(entry: ReferenceEntry): string {
  const rows = entry.params.flatMap(p => [rowOf(p, ""), ...(p.options ?? []).map(o => rowOf(o, "option"))])
  return [
    `<article id="${entry.name}">`,
    `<h3>${entry.name}</h3>`,
    `<pre class="signature"><code>${escaped(entry.signature)}</code></pre>`,
    `<p>${escaped(entry.text)}</p>`,
    rows.length === 0
      ? ""
      : `<table><caption>Takes</caption><thead><tr><th scope="col">quantity</th><th scope="col">unit</th><th scope="col">meaning</th></tr></thead><tbody>${rows.join("")}</tbody></table>`,
    entry.returns === undefined ? "" : `<p><b>Gives</b> ${escaped(entry.returns)}</p>`,
    entry.example === undefined ? "" : `<pre class="example"><code>${escaped(entry.example)}</code></pre>`,
    entry.errors.length === 0 ? "" : `<p><b>Refuses</b> ${entry.errors.map(linkToProblem).join(", ")}</p>`,
    entry.source === undefined ? "" : `<p><b>Source</b> ${escaped(entry.source)}</p>`,
    "</article>",
  ]
    .filter(line => line !== "")
    .join("\n")
}

function rowOf(p: ReferenceParameter, kind: string): string {
  const mark = p.optional ? " (may be left out)" : ""
  return `<tr class="${kind}"><th scope="row"><code>${p.name}</code></th><td>${escaped(p.unit ?? "")}</td><td>${escaped(p.text)}${mark}</td></tr>`
}

function linkToProblem(code: string): string {
  return `<a href="../problems/${code}.html">${code}</a>`
}

function anchor(title: string): string {
  return `section-${title.toLowerCase().replace(/ /g, "-")}`
}

function escaped(text: string): string {
  return text.replace(/&/g, "&amp;").replace(/</g, "&lt;").replace(/>/g, "&gt;")
}

const style = `
html { font-size: var(--size-root); background: var(--paper); color: var(--ink); font-family: var(--face-text); line-height: var(--leading); }
body { max-width: 48rem; margin: 0 auto; padding: var(--space-one); }
a { color: inherit; text-underline-offset: 0.2em; }
h1 { font-size: var(--size-title); line-height: var(--leading-tight); }
h2 { font-size: var(--size-section); margin: var(--space-two) 0 var(--space-half); }
h3 { font: var(--weight-strong) var(--size-text) var(--face-code); margin: 0; }
nav h2 { font-size: var(--size-text); margin: var(--space-half) 0 0; }
nav p { margin: 0; font: var(--size-small) / var(--leading) var(--face-code); display: flex; flex-wrap: wrap; gap: 0 var(--space-half); }
article { border-top: var(--hairline) solid var(--hairline-ink, currentColor); padding: var(--space-half) 0; scroll-margin-top: var(--space-one); }
pre { margin: var(--space-quarter) 0; overflow-x: auto; font: var(--size-code) / var(--leading) var(--face-code); }
.signature { font-size: var(--size-small); white-space: pre-wrap; }
.example { background: var(--paper-sunk); padding: var(--space-half); }
p { margin: var(--space-quarter) 0; }
table { border-collapse: collapse; font-size: var(--size-small); margin: var(--space-quarter) 0; }
caption { text-align: left; font-weight: var(--weight-strong); }
th, td { text-align: left; vertical-align: top; padding: 0 var(--space-half) 0 0; font-weight: normal; }
.option th { padding-left: var(--space-half); }
thead { position: absolute; clip-path: inset(50%); }
code { font-family: var(--face-code); }
`
