/** Reads a number as people type it: true minus, decimal comma, powers written 1.2e3 or 1.2·10^3. Null if it is none. */
export function readNumber(typed: string): number | null {
  const plain = typed
    .trim()
    .replace(/[\u2212\u2013]/g, "-")
    .replace(/[\s\u00a0\u2009\u202f]/g, "")
    .replace(/^([^,.]*),([^,.]*)$/, "$1.$2")
    .replace(/(?:[*·×x])10(?:\^|\*\*)\(?([+-]?\d+)\)?$/i, "e$1")
  return /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i.test(plain) ? Number(plain) : null
}
