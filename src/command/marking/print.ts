import { createReadStream } from "node:fs"
import { join } from "node:path"

/** results.json as it was written, on standard output. */
export async function printResults(folder: string): Promise<void> {
  for await (const chunk of createReadStream(join(folder, "results.json")))
    if (!process.stdout.write(chunk as Buffer)) await new Promise(go => process.stdout.once("drain", go))
}
