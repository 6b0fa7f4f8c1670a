import { signal } from "@preact/signals"

/** Which worksheet the address names: `#lamp-key` opens it, `#/` or none shows the shelf. */
export function worksheetIn(hash: string): string | null {
  let name = hash.replace(/^#\/?/, "")
  try {
    name = decodeURIComponent(name)
  } catch {
    return name
  }
  return name === "" ? null : name
}

export const worksheetOpen = signal<string | null>(null)

/** Follows the address bar from now on. */
export function followAddress(): void {
  const read = (): void => {
    worksheetOpen.value = worksheetIn(location.hash)
  }
  addEventListener("hashchange", read)
  read()
}
