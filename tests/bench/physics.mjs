/* Speed of the physics library: node tests/bench/physics.mjs */
import { fileURLToPath } from "node:url"
import { runnerImport } from "vite"

await runnerImport(fileURLToPath(new URL("physics/coupled-masses.ts", import.meta.url)), {
  configFile: false,
})
