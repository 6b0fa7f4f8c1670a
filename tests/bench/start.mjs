/* Runs a bench written in TypeScript: node tests/bench/start.mjs FILE */
import { resolve } from "node:path"
import { runnerImport } from "vite"

const file = process.argv[2]
if (file === undefined) {
  console.error("Name a bench: node tests/bench/start.mjs tests/bench/run.ts")
  process.exit(2)
}
await runnerImport(resolve(file), { configFile: false, logLevel: "error" })
