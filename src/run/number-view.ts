/**
 * The engine's own way to store a number, taken before the realm is locked: there it is replaced by one that asks at
 * every call whether the number is NaN, at several times the cost. Only finite numbers are stored here.
 */
export const storeNumber = DataView.prototype.setFloat64

/** A view of a chunk of rows, through which recorded numbers are stored at the engine's full speed. */
export function numberView(buffer: ArrayBufferLike): DataView {
  return Object.defineProperty(new DataView(buffer), "setFloat64", { value: storeNumber })
}
