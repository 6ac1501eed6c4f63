/** By what a command works a fault book out: threads, what was kept before, and the line that says how far it is. */
import type { BookMeans } from '../index.ts'
import type { Asked } from './command.ts'
import { progressOn } from './progress.ts'

/** Takes seconds on premises, in one go, before the first fault is worked out. */
const LAYING_OUT = 'laying out the network, its faults and what can be read of it'

/** Works with a book while a person may watch. */
export async function withBookMeans<T>(
  { io, options }: Asked,
  work: (means: BookMeans) => Promise<T>,
): Promise<T> {
  const { tell, begin, done } = progressOn(io)
  try {
    begin(LAYING_OUT)
    return await work({ ...io.books?.(options.cache !== false), tell })
  } finally {
    done()
  }
}
