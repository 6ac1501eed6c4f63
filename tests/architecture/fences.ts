import { importsOf } from './imports.ts'
import type { Sources } from './sources.ts'

/** A package from outside, and the only places below `src` that may import it, types included. */
export interface Fence {
  readonly packages: RegExp
  readonly places: RegExp
}

/** What no line names may be imported nowhere: mathjs and the test tools among them. */
export const FENCES: readonly Fence[] = [
  { packages: /^zod\/mini$/, places: /^(parts|sheet)\/|^report\/json[^/]*\.ts$|^checks\/limits\.ts$/ },
  { packages: /^yaml$/, places: /^sheet\/|^rewire\/moves\.ts$|^checks\/limits\.ts$/ },
  { packages: /^graphology(-[a-z-]+)?(\/.+)?$/, places: /^netlist\// },
  { packages: /^node:/, places: /^(host|cli)\// },
  { packages: /^(commander|picocolors)$/, places: /^cli\// },
  { packages: /^\*\?raw$/, places: /^answer\/raw\.d\.ts$/ },
  { packages: /^vite$/, places: /^cli\/vite\.[^/]*config\.ts$/ },
]

/** Every import of a package outside its fence. */
export function fenceViolations(sources: Sources): string[] {
  const found: string[] = []
  for (const [path, source] of sources) {
    for (const { target, line } of importsOf(path, source)) {
      if (target === undefined || target.startsWith('.')) continue
      const fence = FENCES.find(({ packages }) => packages.test(target))
      if (!fence) found.push(`${path}:${line} imports ${target}, which has no fence`)
      else if (!fence.places.test(path)) found.push(`${path}:${line} imports ${target} outside its fence`)
    }
  }
  return found
}
