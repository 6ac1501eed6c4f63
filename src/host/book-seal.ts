/** How a kept entry is named, and how one that is whole is told from one that is torn or foreign. */
import { createHash } from 'node:crypto'

/** The first bytes of every file; the number counts up when the form changes. */
const MARK = Buffer.from('ringproof book 1\n', 'latin1')
const HASH = 32
const LENGTH = 8
/** Mark, hash of the key, length of the content, hash of the content. */
const HEAD = MARK.length + HASH + LENGTH + HASH

const hash = (data: string | Uint8Array): Buffer => createHash('sha256').update(data).digest()

/** A short name of a key, the same on every machine. */
export function nameOf(key: string): string {
  return hash(key).toString('hex')
}

/** Bytes with what proves them. */
export function sealed(key: string, bytes: Uint8Array): Buffer {
  const length = Buffer.alloc(LENGTH)
  length.writeBigUInt64LE(BigInt(bytes.byteLength))
  return Buffer.concat([MARK, hash(key), length, hash(bytes), bytes])
}

/** The bytes, if they are whole and were kept under this key. */
export function unsealed(key: string, file: Buffer): Uint8Array | undefined {
  if (file.length < HEAD || !file.subarray(0, MARK.length).equals(MARK)) return undefined
  const keyAt = MARK.length
  const lengthAt = keyAt + HASH
  const contentAt = lengthAt + LENGTH
  if (!file.subarray(keyAt, lengthAt).equals(hash(key))) return undefined
  if (file.readBigUInt64LE(lengthAt) !== BigInt(file.length - HEAD)) return undefined
  // a copy of its own: the buffer that files are read into may be shared
  const bytes = Uint8Array.from(file.subarray(HEAD))
  return file.subarray(contentAt, HEAD).equals(hash(bytes)) ? bytes : undefined
}
