import { createHash } from "node:crypto"
import { existsSync, readFileSync } from "node:fs"
import { join } from "node:path"
import type { Worksheet } from "../worksheet/index.ts"
import type { Made } from "./edition.ts"
import { writeWhole } from "./files.ts"

/** A worksheet with the text that it was read from. */
interface Source {
  readonly value: Worksheet
  readonly text?: string
}

/**
 * Makes something of each worksheet once, by its text. What was made is kept beside the build, so that a second
 * start makes nothing again; a new build empties it.
 */
export function createMaking<T>(
  folder: string,
  make: (worksheet: Worksheet) => Promise<Made<T>>,
): (source: Source) => Promise<Made<T>> {
  const known = new Map<string, Promise<Made<T>>>()
  return ({ value, text = "" }) => {
    const key = createHash("sha256").update(`${value.file}\n${text}`).digest("hex")
    let result = known.get(key)
    if (result === undefined) {
      result = fromFile(join(folder, `${key}.json`), () => make(value))
      known.set(key, result)
      result.catch(() => known.delete(key))
    }
    return result
  }
}

async function fromFile<T>(file: string, make: () => Promise<Made<T>>): Promise<Made<T>> {
  if (existsSync(file)) return JSON.parse(readFileSync(file, "utf8")) as Made<T>
  const result = await make()
  try {
    if (result.ok) writeWhole(file, JSON.stringify(result))
  } catch {
    // a full or read-only disk: it is shown all the same, and made again at the next start
  }
  return result
}
