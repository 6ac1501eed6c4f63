/** The built page: which files it is made of, as its own list says. */
import { readFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { packagedFolder } from '../host/packaged.ts'
import { refuse } from '../problem.ts'

/** The list that the build writes. */
export const LIST = 'files.json'
const SORT = 'page/1'

/** Files of a build by their path, with the SHA-256 of each in hexadecimal. */
export type FileList = Readonly<Record<string, string>>

/** Where the built page lies in the package. */
export function pageFolder(): string {
  return join(dirname(packagedFolder()), 'dist', 'web')
}

/** The list in a folder; undefined where there is none, or none that a build wrote. */
export function listIn(folder: string): FileList | undefined {
  try {
    const { ringproof, files } = JSON.parse(readFileSync(join(folder, LIST), 'utf8'))
    const isList =
      ringproof === SORT &&
      Object.entries(files).every(([path, hash]) => isFilePath(path) && /^[0-9a-f]{64}$/.test(String(hash)))
    return isList ? files : undefined
  } catch {
    return undefined
  }
}

const isFilePath = (path: string): boolean => /^(?:[\w-][\w.-]*\/)?[\w-][\w.-]*$/.test(path)

/** The files of the built page. @throws ProblemError `ours` where it is not built */
export function builtPage(folder: string = pageFolder()): {
  readonly folder: string
  readonly files: FileList
} {
  const files = listIn(folder)
  if (files !== undefined) return { folder, files }
  return refuse({
    code: 'ours',
    found: 'a package without its page',
    expected: 'the built page in `dist/web`',
    mend: 'run `npm run build` in the package, or install it again',
  })
}
