/** Where books are kept between runs. The host brings one; without it a book is made anew each time. */

/** A store of bytes by their keys. A key says everything that decides the bytes, so that none is ever stale. */
export interface BookStore {
  /** The bytes as they were written; undefined where there are none, or none that are whole. Never throws. */
  read(key: string): Uint8Array | undefined | Promise<Uint8Array | undefined>
  /** Keeps bytes; where that cannot be done nothing is kept. Never throws. */
  write(key: string, bytes: Uint8Array): void | Promise<void>
  /** Forgets them. Never throws. */
  remove(key: string): void | Promise<void>
}

/** Keeps nothing. */
export const NO_STORE: BookStore = { read: () => undefined, write: () => {}, remove: () => {} }
