/*
 * What is built, from what: the page (static files), the command line, and the child process that runs programs.
 * Called by setup.mjs once the packages are there.
 */
import { join } from "node:path"
import { build } from "vite"

/** A bundle for Node; `whole` takes the packages in, for a process that may read no other file. */
function forNode(root, entry, outDir, fileName, whole) {
  return build({
    root,
    configFile: false,
    logLevel: "warn",
    publicDir: false,
    ssr: whole ? { noExternal: true } : {},
    build: {
      ssr: join(root, entry),
      outDir: join(root, "dist", outDir),
      emptyOutDir: false,
      target: "node20",
      minify: false,
      rollupOptions: { output: { entryFileNames: fileName, format: "es" } },
    },
  })
}

export async function buildAll(root) {
  await build({ root: join(root, "src", "page"), configFile: join(root, "vite.config.ts"), logLevel: "warn" })
  await forNode(root, "src/run/node/child.ts", ".", "runner.js", true)
  await forNode(root, "src/command/main.ts", "command", "main.js", false)
}
