/** By what this machine works fault books out, and where it keeps them. */
import type { BookMeans } from '../index.ts'
import { bookStore } from './book-store.ts'
import { cacheFolder } from './cache-folder.ts'
import { threadCrew } from './crew.ts'
import { programPrint } from './program-print.ts'

/** Threads and a store; no store where nothing is to be kept, or where this build cannot be told from others. */
export function bookMeans(
  environment: Readonly<Record<string, string | undefined>>,
  keeps: boolean,
): BookMeans {
  const crew = threadCrew()
  const folder = keeps ? cacheFolder(environment) : undefined
  const build = folder === undefined ? undefined : programPrint()
  return folder === undefined || build === undefined ? { crew } : { crew, build, store: bookStore(folder) }
}
