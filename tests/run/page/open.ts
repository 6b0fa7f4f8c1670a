import { extname } from "node:path"
import { fileURLToPath } from "node:url"
import type { Browser, Page } from "playwright-core"
import { build } from "vite"
import { launchChromium } from "../../support/chromium.ts"

const types: Record<string, string> = { ".html": "text/html", ".js": "text/javascript", ".css": "text/css" }

/** The runner's test page, built as the shipped page is, in a real browser; its files come from memory, no server. */
export async function openRunnerPage(): Promise<{ browser: Browser; page: Page; close(): Promise<void> }> {
  const root = fileURLToPath(new URL(".", import.meta.url))
  const result = await build({
    root,
    configFile: false,
    logLevel: "error",
    publicDir: false,
    base: "./",
    worker: { format: "es" },
    build: { write: false, target: "es2022", assetsInlineLimit: 0, minify: false },
  })
  const outputs = (Array.isArray(result) ? result : [result]).flatMap(r => ("output" in r ? r.output : []))
  const files = new Map(
    outputs.map(file => [`/${file.fileName}`, file.type === "chunk" ? file.code : Buffer.from(file.source)]),
  )
  const browser = await launchChromium()
  const page = await browser.newPage()
  await page.route("**/*", route => {
    const path = new URL(route.request().url()).pathname
    const file = files.get(path === "/" ? "/index.html" : path)
    if (file === undefined) return route.fulfill({ status: 404, body: "" })
    return route.fulfill({ body: file, contentType: types[extname(path)] ?? "text/html" })
  })
  await page.goto("http://runner.test/")
  await page.waitForFunction(() => "pageRunner" in window)
  return { browser, page, close: () => browser.close() }
}
