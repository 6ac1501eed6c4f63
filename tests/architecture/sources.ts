import { readdirSync, readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'

/** The repository's root, with a slash at its end. */
export const ROOT: string = fileURLToPath(new URL('../../', import.meta.url))

/** Path below `src` (with forward slashes) to text: what the rules of this folder look at. */
export type Sources = ReadonlyMap<string, string>

/** The files below a folder of the repository whose path passes, with their text, sorted by path. */
export function readTree(folder: string, wanted: (path: string) => boolean): Sources {
  const paths = readdirSync(`${ROOT}${folder}`, { recursive: true, encoding: 'utf8' })
    .map((path) => path.replaceAll('\\', '/'))
    .filter(wanted)
    .sort()
  return new Map(paths.map((path) => [path, readFileSync(`${ROOT}${folder}/${path}`, 'utf8')]))
}

/** All TypeScript of `src`. */
export function readSources(): Sources {
  return readTree('src', (path) => /\.tsx?$/.test(path))
}

/** The same sources with one file written, new or in the place of the old one. */
export function planted(sources: Sources, path: string, text: string): Sources {
  return new Map([...sources, [path, text]])
}
