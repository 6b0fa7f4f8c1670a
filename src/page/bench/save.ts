import type { PlotModel } from "./plot-model.ts"

/** All recorded rows of a plot as CSV: `name [unit]` heads, numbers in full precision, one line a row (RFC 4180, LF). */
export function plotCsv(model: PlotModel, rows: number): string {
  const columns = [model.x, ...model.lines.map(l => l.quantity)]
  const heads = columns.map(q => quoted(q.unit === "" || q.unit === "1" ? q.id : `${q.id} [${q.unit}]`))
  const out = [heads.join(",")]
  for (let row = 0; row < rows; row++) out.push(columns.map(q => String(q.read(row))).join(","))
  return out.join("\n") + "\n"
}

const inked = [
  "fill",
  "stroke",
  "stroke-width",
  "stroke-dasharray",
  "font-family",
  "font-size",
  "text-anchor",
]

/** A drawn plot as a file of its own: the inks that the page gives it by its style sheet are written into the elements. */
export function plotSvg(drawn: SVGSVGElement): string {
  const copy = drawn.cloneNode(true) as SVGSVGElement
  const from = [drawn, ...drawn.querySelectorAll<SVGElement>("*")]
  const to = [copy, ...copy.querySelectorAll<SVGElement>("*")]
  for (const [k, element] of from.entries()) {
    const style = getComputedStyle(element)
    for (const name of inked) to[k]?.style.setProperty(name, style.getPropertyValue(name))
  }
  copy.setAttribute("xmlns", "http://www.w3.org/2000/svg")
  for (const sheet of copy.querySelectorAll("style")) sheet.remove()
  return new XMLSerializer().serializeToString(copy)
}

/** Dots of a saved picture for each px on the screen: sharp on paper. */
const pngScale = 3

/** A drawn plot as a picture of dots, on the plate's own ground. */
export async function plotPng(drawn: SVGSVGElement): Promise<Blob> {
  const { width, height } = drawn.getBoundingClientRect()
  const image = new Image()
  image.src = `data:image/svg+xml;charset=utf-8,${encodeURIComponent(plotSvg(drawn))}`
  await image.decode()
  const canvas = document.createElement("canvas")
  canvas.width = Math.round(width * pngScale)
  canvas.height = Math.round(height * pngScale)
  const context = canvas.getContext("2d")
  if (!context) throw new Error("This browser draws no pictures.")
  context.fillStyle = groundOf(drawn)
  context.fillRect(0, 0, canvas.width, canvas.height)
  context.drawImage(image, 0, 0, canvas.width, canvas.height)
  return new Promise((resolve, reject) =>
    canvas.toBlob(blob => (blob ? resolve(blob) : reject(new Error("The picture could not be made.")))),
  )
}

/** The first ground behind an element that is not see-through. */
function groundOf(element: Element): string {
  for (let at: Element | null = element; at; at = at.parentElement) {
    const ground = getComputedStyle(at).backgroundColor
    if (ground !== "" && ground !== "transparent" && !/, 0\)$/.test(ground)) return ground
  }
  return "white"
}

/** Hands a text to the reader as a file. */
export function saveText(name: string, type: string, text: string): void {
  saveBlob(name, new Blob([text], { type }))
}

export function saveBlob(name: string, blob: Blob): void {
  const address = URL.createObjectURL(blob)
  const link = document.createElement("a")
  link.href = address
  link.download = name
  link.click()
  setTimeout(() => URL.revokeObjectURL(address), 10_000)
}

function quoted(text: string): string {
  return /[",\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text
}
