/** By what a command works a fault book out: threads, what was kept before, and the line that says how far it is. */
import type { BookMeans } from '../index.ts'
import type { Asked } from './command.ts'
import { progressOn } from './progress.ts'

/** Works with a book while a person may watch. */
export async function withBookMeans<T>(
  { io, options }: Asked,
  work: (means: BookMeans) => Promise<T>,
): Promise<T> {
  const { tell, done } = progressOn(io)
  try {
    return await work({ ...io.books?.(options.cache !== false), tell })
  } finally {
    done()
  }
}
