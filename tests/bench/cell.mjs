/*
 * Speeds of the cell language in Node: node tests/bench/cell.mjs [speed | latency]
 * Bundles the bench as the project's own programs are bundled, then runs it.
 */
import { rmSync } from "node:fs"
import { join } from "node:path"
import { fileURLToPath, pathToFileURL } from "node:url"
import { build } from "vite"

const bench = process.argv[2] ?? "speed"
const outDir = fileURLToPath(new URL(`../../node_modules/.cache/bench-cell-${process.pid}`, import.meta.url))
try {
  await build({
    configFile: false,
    logLevel: "error",
    build: {
      ssr: fileURLToPath(new URL(`cell/${bench}.ts`, import.meta.url)),
      outDir,
      target: "node20",
      rollupOptions: { external: [/^esbuild-wasm/, /^ses/], output: { entryFileNames: "bench.mjs" } },
    },
    ssr: { noExternal: true },
  })
  await import(pathToFileURL(join(outDir, "bench.mjs")).href)
} finally {
  rmSync(outDir, { recursive: true, force: true })
}
