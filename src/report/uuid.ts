import { sha1 } from "@noble/hashes/legacy.js"

/** All names that Deltasheet makes into UUIDs stand under this one (drawn once, at random). */
export const ownNamespace = "5f0c1b7e-3d5a-4c58-9a44-7a2f6b0d9e13"

/**
 * The UUID of a name, version 5 (RFC 9562 section 5.5): the same name gives the same UUID, everywhere.
 *
 * @param parts joined in a way that keeps ["a", "b"] and ["ab"] apart
 */
export function uuidOf(...parts: readonly string[]): string {
  return nameUuid(ownNamespace, JSON.stringify(parts))
}

/** @param namespace a UUID in its usual form */
export function nameUuid(namespace: string, name: string): string {
  const space = Uint8Array.from(namespace.replaceAll("-", "").match(/../g)!, byte =>
    Number.parseInt(byte, 16),
  )
  const text = new TextEncoder().encode(name)
  const bytes = new Uint8Array(space.length + text.length)
  bytes.set(space)
  bytes.set(text, space.length)
  const hash = sha1(bytes).slice(0, 16)
  hash[6] = (hash[6]! & 0x0f) | 0x50
  hash[8] = (hash[8]! & 0x3f) | 0x80
  const hex = Array.from(hash, byte => byte.toString(16).padStart(2, "0")).join("")
  return hex.replace(/^(.{8})(.{4})(.{4})(.{4})(.{12})$/, "$1-$2-$3-$4-$5")
}
