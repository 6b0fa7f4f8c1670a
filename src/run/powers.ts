import { languageNames } from "../cell/names.ts"

/** Made for each run, so not part of what all runs share. */
const perRun = new Set(["console", "random"])

/**
 * The names of the language that cells may use, besides the physics library. All are pure: same input, same bits,
 * no view of the world outside. What is not listed is withheld, among others Date, Intl, timers, network, Promise,
 * Proxy, Reflect, Function, eval, globalThis, typed arrays (their NaN bits differ between engines, and their
 * memory lies outside the heap limit), WebAssembly and everything of the host.
 */
export const safeGlobalNames: readonly string[] = languageNames.filter(
  name => name !== "Math" && !perRun.has(name),
)
