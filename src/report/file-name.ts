import { sha256 } from "@noble/hashes/sha2.js"
import { bytesToHex } from "@noble/hashes/utils.js"

/** Who handed in a file, and as what. */
export interface Owner {
  readonly file: string
  readonly student: { readonly id: string; readonly name: string } | null
}

/** Of one digest, 64 bits: two files of a class never share a page. */
const digestDigits = 16

/**
 * Name of a student's page, from the student's name, else the id, else the file that was handed in: small letters
 * without their accents, digits and hyphens, so that it is safe on any system, with digits of a digest of the file's
 * name, so that each file has a page of its own.
 */
export function pageName({ file, student }: Owner): string {
  const own = student?.name.trim() || student?.id.trim() || file.replace(/\.json$/i, "")
  const digest = bytesToHex(sha256(new TextEncoder().encode(file))).slice(0, digestDigits)
  return `students/${plainLetters(own) || "file"}-${digest}.html`
}

/** Letters that no decomposition makes plain. */
const plain: Readonly<Record<string, string>> = {
  ß: "ss",
  æ: "ae",
  ø: "o",
  œ: "oe",
  ł: "l",
  đ: "d",
  ð: "d",
  þ: "th",
  ı: "i",
}

function plainLetters(text: string): string {
  return text
    .slice(-200)
    .normalize("NFKD")
    .toLowerCase()
    .replace(/\p{M}/gu, "")
    .replace(/[ßæøœłđðþı]/g, letter => plain[letter]!)
    .replace(/[^a-z0-9]+/g, "-")
    .replace(/^-+|-+$/g, "")
    .slice(-40)
    .replace(/^-+/, "")
}
