/** Fault books in the worker's memory: the same set asked about with other complaints needs no second reckoning. */
import type { BookStore } from '../../index.ts'

/** So much is kept, bytes; what was used longest ago goes first. */
const MOST = 48 << 20

export function bookMemory(most: number = MOST): BookStore {
  const kept = new Map<string, Uint8Array>()
  let size = 0
  const drop = (key: string): void => {
    size -= kept.get(key)?.byteLength ?? 0
    kept.delete(key)
  }
  return {
    read(key) {
      const bytes = kept.get(key)
      if (bytes === undefined) return undefined
      kept.delete(key)
      kept.set(key, bytes)
      return bytes
    },
    write(key, bytes) {
      drop(key)
      kept.set(key, bytes)
      size += bytes.byteLength
      for (const [oldest] of kept) {
        if (size <= most) break
        drop(oldest)
      }
    },
    remove: drop,
  }
}
