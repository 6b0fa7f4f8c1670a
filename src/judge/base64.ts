/** Numbers as base64 of little-endian 32-bit floats (RFC 4648 section 4), with what browsers and Node both have. */
export function toBase64(numbers: Float32Array): string {
  const bytes = new Uint8Array(numbers.length * 4)
  const view = new DataView(bytes.buffer)
  numbers.forEach((value, i) => {
    view.setFloat32(i * 4, value, true)
  })
  let text = ""
  for (let i = 0; i < bytes.length; i += 4096) text += String.fromCharCode(...bytes.subarray(i, i + 4096))
  return btoa(text)
}

export function fromBase64(text: string): Float32Array {
  const bytes = Uint8Array.from(atob(text), c => c.charCodeAt(0))
  const view = new DataView(bytes.buffer)
  return Float32Array.from({ length: bytes.length >> 2 }, (_, i) => view.getFloat32(i * 4, true))
}
