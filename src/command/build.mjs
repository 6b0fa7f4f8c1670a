/*
 * What is built, from what: the page (static files), the child process that runs programs, and the command line.
 * Called by setup.mjs once the packages are there.
 */
import { join } from "node:path"
import { build } from "vite"
import { runnerRecipe } from "../run/node/recipe.mjs"

/** @param out the folder that becomes dist/ when all is well */
export async function buildAll(root, out) {
  await build({
    root: join(root, "src", "page"),
    configFile: join(root, "vite.config.ts"),
    logLevel: "error",
    build: { outDir: join(out, "page") },
  })
  await build(runnerRecipe(out))
  await build({
    root,
    configFile: false,
    logLevel: "error",
    publicDir: false,
    build: {
      ssr: join(root, "src", "command", "main.ts"),
      outDir: join(out, "command"),
      emptyOutDir: false,
      target: "node20",
      minify: false,
      rolldownOptions: { output: { entryFileNames: "main.js", format: "es" } },
    },
  })
}
