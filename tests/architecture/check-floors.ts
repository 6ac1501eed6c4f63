import { posix } from 'node:path'
import { FLOORS } from './floors.ts'
import { type Import, importsOf } from './imports.ts'
import type { Sources } from './sources.ts'

/** The folder of `src` that a path lies in, or the file itself when it lies beside the folders. */
export function placeOf(path: string): string {
  return path.split('/')[0] ?? path
}

/** The path below `src` that a relative import of `from` means; undefined for a package. */
export function resolveImport(from: string, target: string): string | undefined {
  return target.startsWith('.') ? posix.join(posix.dirname(from), target) : undefined
}

function judge(path: string, taken: Import, sources: Sources): string | undefined {
  if (taken.target === undefined) return 'imports something computed, which no rule can follow'
  if (/^ringproof(\/|$)/.test(taken.target)) return 'imports the library by name from within'
  const target = resolveImport(path, taken.target)
  if (target === undefined) return undefined
  const from = placeOf(path)
  if (target === '../package.json' && ['cli', 'host'].includes(from)) return undefined
  // the delivered tables are built in as text, so that the page needs no file
  if (
    /^\.\.\/netlists\/(limits|instruments|odds|ageing|sightings)\.yaml\?raw$/.test(target) &&
    from === 'answer'
  )
    return undefined
  // styles are no modules
  if (/^web\/.+\.css$/.test(target) && from === 'web') return undefined
  if (!sources.has(target)) return `imports ${taken.target}, which is no file of src`
  const to = placeOf(target)
  if (from === to) return undefined
  const floor = FLOORS.find(({ place }) => place === from)
  if (!floor || floor.values.includes(to)) return undefined
  if (!floor.types.includes(to)) return `imports ${target}: ${from} may not import from ${to}`
  return taken.typeOnly ? undefined : `imports ${target}: ${from} may take only types from ${to}`
}

/** Every import that breaks the table of floors, and every place that has no line there. */
export function floorViolations(sources: Sources): string[] {
  const found: string[] = []
  for (const [path, source] of sources) {
    if (!FLOORS.some(({ place }) => place === placeOf(path))) {
      found.push(`${path}: ${placeOf(path)} has no line in the table of floors`)
    }
    for (const taken of importsOf(path, source)) {
      const breach = judge(path, taken, sources)
      if (breach) found.push(`${path}:${taken.line} ${breach}`)
    }
  }
  return found
}
