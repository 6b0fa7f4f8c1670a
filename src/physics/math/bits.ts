/**
 * The two halves of a number's 64 bits, big end first. The view is scratch space: nothing reads it
 * before writing it, so it carries nothing from one call to the next.
 */
const view = new DataView(new ArrayBuffer(8))

/** Sign, exponent and the 20 leading bits of the fraction, as a signed 32-bit integer. */
export function highWord(x: number): number {
  view.setFloat64(0, x)
  return view.getInt32(0)
}

/** The 32 trailing bits of the fraction, as an unsigned integer. */
export function lowWord(x: number): number {
  view.setFloat64(0, x)
  return view.getUint32(4)
}

export function fromWords(high: number, low: number): number {
  view.setInt32(0, high)
  view.setUint32(4, low)
  return view.getFloat64(0)
}

export function withHighWord(x: number, high: number): number {
  view.setFloat64(0, x)
  view.setInt32(0, high)
  return view.getFloat64(0)
}

/** x with its 32 trailing bits cleared: its leading part, whose square is exact. */
export function leading(x: number): number {
  view.setFloat64(0, x)
  view.setUint32(4, 0)
  return view.getFloat64(0)
}

/** 2^k for −1022 ≤ k ≤ 1023, exactly. */
export function powerOfTwo(k: number): number {
  return fromWords((k + 1023) << 20, 0)
}
