import { transform } from "esbuild-wasm"
import type { TypeStripper } from "./contract.ts"
import { stripOptions } from "./strip.ts"

/** Strips types in Node. Its process starts with the first text that needs it, and ends with the program. */
export async function createNodeStripper(): Promise<TypeStripper> {
  return async typescript => (await transform(typescript, stripOptions)).code
}
