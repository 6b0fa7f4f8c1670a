import { runnerRecipe } from "./recipe.mjs"

/**
 * Builds the program of the child process into one file.
 *
 * @param directory where `runner.js` is written
 * @returns the path of the file
 */
export async function buildRunnerBundle(directory: string): Promise<string> {
  const { build } = await import("vite")
  await build(runnerRecipe(directory))
  return `${directory}/runner.js`
}
