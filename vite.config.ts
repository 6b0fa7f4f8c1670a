import { mkdirSync, readFileSync, rmSync, writeFileSync } from "node:fs"
import { join, resolve } from "node:path"
import { defineConfig } from "vite"
import { makeDeclarations } from "./src/cell/types/declarations.ts"
import { writeProblemPages } from "./src/command/problem-pages.ts"
import { buildReference } from "./src/page/reference/html.ts"

const page = join(import.meta.dirname, "src", "page")

let outDir = ""

/** The page: src/page to dist/page, static files with relative addresses, so that any web server can hold them. */
export default defineConfig({
  root: "src/page",
  publicDir: "../../public",
  base: "./",
  oxc: { jsx: { runtime: "automatic", importSource: "preact" } },
  worker: { format: "es" },
  build: {
    outDir: "../../dist/page",
    emptyOutDir: true,
    target: "es2022",
    assetsInlineLimit: 0,
    chunkSizeWarningLimit: 1000,
  },
  server: { host: "127.0.0.1" },
  plugins: [
    {
      // every browser that can run the page reads woff2
      name: "one format for each face of KaTeX",
      enforce: "pre",
      transform: {
        filter: { id: /katex[^/]*\.css$/ },
        handler: code => code.replace(/,\s*url\([^)]*\.(?:woff|ttf)\)\s*format\([^)]*\)/g, ""),
      },
    },
    {
      name: "pages beside the page",
      apply: "build",
      configResolved(config) {
        outDir = resolve(config.root, config.build.outDir)
      },
      writeBundle(_, bundle) {
        const styles = Object.values(bundle).flatMap(file =>
          file.type === "asset" && file.fileName.endsWith(".css") ? [String(file.source)] : [],
        )
        // the faces of the page, from a folder beside its assets
        const faces = [...styles.join("").matchAll(/@font-face\{[^}]*\}/g)]
          .map(([face]) => face.replace(/url\((["']?)(?:\.\/)?(?!data:)/g, "url($1../assets/"))
          .filter(face => !face.includes("KaTeX"))
          .join("\n")
        writeProblemPages(
          join(outDir, "problems"),
          `${readFileSync(join(page, "tokens.css"), "utf8")}\n${faces}`,
        )
        // job files for markers are read where they lie; a site of worksheets has no use for them
        rmSync(join(outDir, "marking"), { recursive: true, force: true })
        const { html, json } = buildReference()
        mkdirSync(join(outDir, "reference"), { recursive: true })
        writeFileSync(join(outDir, "reference", "index.html"), html.replace("<style>", `<style>\n${faces}`))
        writeFileSync(join(outDir, "reference", "reference.json"), json)
        writeFileSync(join(outDir, "reference", "declarations.json"), JSON.stringify(makeDeclarations()))
      },
    },
  ],
})
