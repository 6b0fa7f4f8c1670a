import { createHash } from "node:crypto"

/** Tells a line that was damaged, changed, or moved to another key or place: 32 digits over both. */
export const lineSum = (key: string | number, text: string): string =>
  createHash("sha256").update(`${key} ${text}`).digest("hex").slice(0, 32)
