/** One line that says what is going on, on a terminal alone and only where it takes longer than a second or will. */
import type { Tell } from '../index.ts'
import type { Io } from './io.ts'

/** Waits shorter than this are not worth a line, ms. */
const PATIENCE = 1000

/** Who is told, and what takes the line away again. */
export interface Progress {
  readonly tell: Tell
  /** Tells at once, before work that is known to take long and cannot be looked into while it runs. */
  readonly begin: Tell
  done(): void
}

/** A line on this terminal; nothing at all where errors go elsewhere. */
export function progressOn({ status }: Io, now: () => number = () => performance.now()): Progress {
  if (status === undefined) return { tell: () => {}, begin: () => {}, done: () => {} }
  const since = now()
  let isShown = false
  const begin = (says: string): void => {
    isShown = true
    status(says)
  }
  return {
    begin,
    tell(says) {
      if (isShown || now() - since >= PATIENCE) begin(says)
    },
    done() {
      if (isShown) status('')
    },
  }
}

/** Works while a person may watch, and takes the line away whatever comes of it. */
export function watched<T>(io: Io, work: (tell: Tell) => T): T {
  const { tell, done } = progressOn(io)
  try {
    return work(tell)
  } finally {
    done()
  }
}
