import { defineConfig } from "vite"

/** The page: src/page to dist/page, static files with relative addresses, so that any web server can hold them. */
export default defineConfig({
  root: "src/page",
  publicDir: "../../public",
  base: "./",
  oxc: { jsx: { runtime: "automatic", importSource: "preact" } },
  worker: { format: "es" },
  build: { outDir: "../../dist/page", emptyOutDir: true, target: "es2022", assetsInlineLimit: 0 },
  server: { host: "127.0.0.1" },
})
