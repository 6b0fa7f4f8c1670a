import { readdirSync, readFileSync } from "node:fs"
import { join } from "node:path"
import tokens from "../page/tokens.css?raw"
import type { ReportOptions } from "../report/index.ts"

interface Face {
  readonly family: string
  readonly style: "normal" | "italic"
  readonly weight: string
  /** how its file's name begins in the built page */
  readonly file: string
}

/** Faces that the teacher's page carries with it, in the Latin subset; other characters fall back to the system's. */
const faces: readonly Face[] = [
  { family: "Literata Variable", style: "normal", weight: "200 900", file: "literata-latin-opsz-normal" },
  { family: "Literata Variable", style: "italic", weight: "200 900", file: "literata-latin-opsz-italic" },
  {
    family: "Source Sans 3 Variable",
    style: "normal",
    weight: "200 900",
    file: "source-sans-3-latin-wght-normal",
  },
  {
    family: "Spline Sans Mono Variable",
    style: "normal",
    weight: "300 700",
    file: "spline-sans-mono-latin-wght-normal",
  },
]

/** Systems' own faces in the order in which they come nearest; for pages that are too many to carry faces. */
const stacks = `:root {
  --face-text: "Literata", Georgia, "Times New Roman", "Liberation Serif", "DejaVu Serif", serif;
  --face-plate: "Source Sans 3", Arial, "Liberation Sans", "DejaVu Sans", sans-serif;
  --face-code: "Spline Sans Mono", "Courier New", "Liberation Mono", "DejaVu Sans Mono", monospace;
}`

/**
 * How reports look: the page's own tokens, and for the one large page its faces as data. Where the page is not
 * built, the systems' faces do.
 *
 * @param home folder of the program, with dist/page in it
 */
export function reportLook(home: string): Pick<ReportOptions, "styles" | "smallStyles"> {
  const smallStyles = `${tokens}\n${stacks}`
  const folder = join(home, "dist", "page", "assets")
  try {
    const files = readdirSync(folder)
    const found = faces.map(({ family, style, weight, file }) => {
      const name = files.find(candidate => candidate.startsWith(`${file}-`) && candidate.endsWith(".woff2"))
      if (name === undefined) throw new Error(`no ${file}`)
      const data = readFileSync(join(folder, name)).toString("base64")
      return `@font-face { font-family: "${family}"; font-style: ${style}; font-weight: ${weight}; font-display: swap; src: url(data:font/woff2;base64,${data}) format("woff2") }`
    })
    return { styles: `${tokens}\n${found.join("\n")}`, smallStyles }
  } catch {
    return { styles: smallStyles, smallStyles }
  }
}
