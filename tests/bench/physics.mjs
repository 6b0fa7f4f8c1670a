/* Speed of the physics library, bundled as it ships: node tests/bench/physics.mjs */
import { fileURLToPath } from "node:url"
import { build } from "vite"

const entry = fileURLToPath(new URL("physics/coupled-masses.ts", import.meta.url))
const built = await build({
  configFile: false,
  logLevel: "error",
  build: {
    write: false,
    target: "es2022",
    minify: false,
    lib: { entry, formats: ["es"], fileName: "bench" },
  },
})
await import(`data:text/javascript,${encodeURIComponent(built[0].output[0].code)}`)
