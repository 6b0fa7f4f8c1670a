import { uuidOf } from "./uuid.ts"

/**
 * Name of a student's page, from the name of the file that was handed in: small letters, digits and hyphens, so that
 * it is safe on any system, with eight digits of a hash so that two files never share one.
 */
export function pageName(file: string): string {
  const stem = file
    .replace(/\.json$/i, "")
    .slice(-200)
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, "-")
    .replace(/^-+|-+$/g, "")
    .slice(-40)
    .replace(/^-+/, "")
  return `students/${stem === "" ? "file" : stem}-${uuidOf("page", file).slice(0, 8)}.html`
}
