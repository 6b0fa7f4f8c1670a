import { level, type Piece } from "./set.ts"

/** A number as it was written: powers of ten set out, long whole parts in groups of three (SI Brochure, 5.4.4). */
export function numberPiece(text: string, value: number): Piece {
  const plain = text.replaceAll("_", "")
  const words = plain.replace(/e\+?/i, " times ten to the power ").replace("power -", "power minus ")
  const [mantissa, exponent] = plain.toLowerCase().split("e")
  if (/^0[xob]/i.test(plain)) return { tex: String(value), words: String(value), level: level.atom }
  const [whole, fraction] = mantissa!.split(".")
  const grouped = whole!.length > 4 ? whole!.replace(/\B(?=(\d{3})+$)/g, "\\,") : whole || "0"
  const digits = fraction ? `${grouped}.${fraction}` : grouped
  if (exponent === undefined) return { tex: digits, words, level: level.atom }
  const power = `10^{${Number(exponent)}}`
  const tex = digits === "1" ? power : `${digits}\\times ${power}`
  return { tex, words, level: digits === "1" ? level.power : level.product }
}
