import { readFileSync } from "node:fs"
import { join, resolve } from "node:path"
import { defineConfig } from "vite"
import { writeProblemPages } from "./src/command/problem-pages.ts"

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
      name: "problem-pages",
      apply: "build",
      configResolved(config) {
        outDir = resolve(config.root, config.build.outDir)
      },
      writeBundle() {
        writeProblemPages(join(outDir, "problems"), readFileSync(join(page, "tokens.css"), "utf8"))
      },
    },
  ],
})
