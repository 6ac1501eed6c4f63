import { resolveImport } from './check-floors.ts'
import { importsOf } from './imports.ts'
import type { Sources } from './sources.ts'

/**
 * Every circle of imports that a walk through the sources closes, types included, written as the files
 * in it. None is found only when there is none.
 */
export function cycles(sources: Sources): string[] {
  const edges = new Map<string, string[]>()
  for (const [path, source] of sources) {
    const targets = importsOf(path, source).map(({ target }) => target && resolveImport(path, target))
    edges.set(path, targets.filter((target) => target !== undefined && sources.has(target)) as string[])
  }
  const found: string[] = []
  const done = new Set<string>()
  const trail: string[] = []
  const walk = (path: string): void => {
    const met = trail.indexOf(path)
    if (met >= 0) found.push([...trail.slice(met), path].join(' → '))
    if (met >= 0 || done.has(path)) return
    trail.push(path)
    for (const next of edges.get(path) ?? []) walk(next)
    trail.pop()
    done.add(path)
  }
  for (const path of edges.keys()) walk(path)
  return found
}
