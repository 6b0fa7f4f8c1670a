import { createReadStream } from "node:fs"
import { join } from "node:path"
import { shown } from "../say.ts"

/** results.json as it was written, on standard output; what would steer a terminal is escaped, as JSON may. */
export async function printResults(folder: string): Promise<void> {
  for await (const chunk of createReadStream(join(folder, "results.json"), "utf8"))
    if (!process.stdout.write(shown(chunk as string)))
      await new Promise(go => process.stdout.once("drain", go))
}
