import { fileURLToPath } from "node:url"

/**
 * Builds the program of the child process (child.ts and everything that it needs) into one file.
 *
 * @param directory where `runner.js` is written
 * @returns the path of the file
 */
export async function buildRunnerBundle(directory: string): Promise<string> {
  const { build } = await import("vite")
  await build({
    configFile: false,
    logLevel: "error",
    publicDir: false,
    ssr: { noExternal: true, target: "node" },
    build: {
      ssr: fileURLToPath(new URL("./child.ts", import.meta.url)),
      outDir: directory,
      emptyOutDir: false,
      target: "node20",
      minify: false,
      rolldownOptions: {
        // A plain script in strict mode runs the same whatever a package.json near it says about modules.
        output: {
          entryFileNames: "runner.js",
          format: "iife",
          banner: '"use strict";',
          codeSplitting: false,
        },
      },
    },
  })
  return `${directory}/runner.js`
}
