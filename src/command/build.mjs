/*
 * What is built, from what: the page (static files), the child process that runs programs, and the command line.
 * Called by setup.mjs once the packages are there.
 */
import { join } from "node:path"
import { build, runnerImport } from "vite"

export async function buildAll(root) {
  await build({ root: join(root, "src", "page"), configFile: join(root, "vite.config.ts"), logLevel: "warn" })
  const recipe = await runnerImport(join(root, "src", "run", "node", "bundle.ts"), {
    root,
    configFile: false,
  })
  await recipe.module.buildRunnerBundle(join(root, "dist"))
  await build({
    root,
    configFile: false,
    logLevel: "warn",
    publicDir: false,
    build: {
      ssr: join(root, "src", "command", "main.ts"),
      outDir: join(root, "dist", "command"),
      emptyOutDir: false,
      target: "node20",
      minify: false,
      rolldownOptions: { output: { entryFileNames: "main.js", format: "es" } },
    },
  })
}
