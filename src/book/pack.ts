/** Numbers of a book as bytes, for a store or another thread. */

/** The bytes of numbers, eight or four each, as this machine orders them. */
export function bytesOf(...all: readonly (Float64Array | Float32Array)[]): Uint8Array {
  const bytes = new Uint8Array(all.reduce((sum, { byteLength }) => sum + byteLength, 0))
  let at = 0
  for (const { buffer, byteOffset, byteLength } of all) {
    bytes.set(new Uint8Array(buffer, byteOffset, byteLength), at)
    at += byteLength
  }
  return bytes
}

/** Puts bytes into numbers, from a place on. False, and nothing done, where they are not just so many. */
export function unpack(bytes: Uint8Array, into: readonly (Float64Array | Float32Array)[]): boolean {
  if (bytes.byteLength !== into.reduce((sum, { byteLength }) => sum + byteLength, 0)) return false
  let at = 0
  for (const { buffer, byteOffset, byteLength } of into) {
    new Uint8Array(buffer, byteOffset, byteLength).set(bytes.subarray(at, at + byteLength))
    at += byteLength
  }
  return true
}

/** Whether the least byte of a number comes first on this machine; kept numbers are for machines alike. */
export const LEAST_FIRST: boolean = new Uint8Array(Uint16Array.of(1).buffer)[0] === 1
