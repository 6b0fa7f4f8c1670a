import type { Recording } from "../../../src/run/contract.ts"

/** All numbers of a recording as hexadecimal digits, sixteen a number: equal texts are equal bits. */
export function bitsOf({ data, rows, width }: Recording): string {
  const words = new BigUint64Array(data.buffer, data.byteOffset, rows * width)
  return Array.from(words, word => word.toString(16).padStart(16, "0")).join("")
}

/** The first number in which two recordings differ, in words; null where all bits agree. */
export function firstDifference(a: Recording, bitsOfB: string): string | null {
  const bits = bitsOf(a)
  if (bits === bitsOfB) return null
  for (let at = 0; at < bits.length; at += 16) {
    if (bits.slice(at, at + 16) === bitsOfB.slice(at, at + 16)) continue
    const column = (at / 16) % a.width
    const name = a.series.findLast(s => s.column <= column)?.name ?? "t"
    return `${name} in row ${Math.floor(at / 16 / a.width)}: ${bits.slice(at, at + 16)} and ${bitsOfB.slice(at, at + 16)}`
  }
  return `${bits.length / 16} and ${bitsOfB.length / 16} numbers`
}
