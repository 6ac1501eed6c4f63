/** Where the sheets that come with the program lie. */
import { readFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { refuse } from '../problem.ts'

/** The name in `package.json`. */
const PACKAGE = 'ringproof'

/**
 * The folder `netlists` of the installed package, found by walking up from this file, wherever the build put it.
 *
 * @throws ProblemError `ours` when the program does not lie in its package
 */
export function packagedFolder(from: string = fileURLToPath(import.meta.url)): string {
  for (let folder = dirname(from); ; folder = dirname(folder)) {
    if (nameIn(folder) === PACKAGE) return join(folder, 'netlists')
    if (folder === dirname(folder)) break
  }
  return refuse({
    code: 'ours',
    found: 'a program outside its package',
    expected: `a folder above it whose package.json is named ${PACKAGE}`,
    mend: 'install the package again',
  })
}

function nameIn(folder: string): unknown {
  try {
    return JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8')).name
  } catch {
    return undefined
  }
}
