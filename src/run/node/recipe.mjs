import { fileURLToPath } from "node:url"

/**
 * How the program of the child process (child.ts and everything that it needs) becomes one file, for Vite's `build`.
 * Plain JavaScript, since the project's own build reads it before anything is built.
 *
 * @param {string} directory where `runner.js` is written
 * @returns {import("vite").InlineConfig}
 */
export function runnerRecipe(directory) {
  return {
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
  }
}
