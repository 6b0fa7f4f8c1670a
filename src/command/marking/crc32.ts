/** CRC-32 of ISO 3309 as zip archives have it (reflected polynomial 0xEDB88320); Node has it from version 22 on only. */
const table = Uint32Array.from({ length: 256 }, (_, n) => {
  let c = n
  for (let k = 0; k < 8; k++) c = c & 1 ? (c >>> 1) ^ 0xedb88320 : c >>> 1
  return c
})

export function crc32(bytes: Uint8Array): number {
  let crc = 0xffffffff
  for (let i = 0; i < bytes.length; i++) crc = (crc >>> 8) ^ table[(crc ^ bytes[i]!) & 0xff]!
  return ~crc >>> 0
}
