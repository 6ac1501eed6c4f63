import { importsOf } from './imports.ts'
import type { Sources } from './sources.ts'

/** A package from outside, and the only places below `src` that may import it, types included. */
export interface Fence {
  readonly packages: RegExp
  readonly places: RegExp
  /** Only by `import(…)` where it is needed, or for its types: whoever does not ask for it does not pay for it. */
  readonly late?: true
}

/** What no line names may be imported nowhere: the test tools among them. */
export const FENCES: readonly Fence[] = [
  {
    packages: /^zod\/mini$/,
    places:
      /^web\/no-made-code\.ts$|^(parts|sheet)\/|^report\/json[^/]*\.ts$|^(checks\/limits|meter\/instruments|book\/odds|spread\/ageing|identify\/odds)\.ts$/,
  },
  {
    packages: /^yaml$/,
    places: /^sheet\/|^rewire\/moves\.ts$/,
  },
  { packages: /^graphology(-[a-z-]+)?(\/.+)?$/, places: /^(netlist|opinion)\// },
  { packages: /^mathjs$/, places: /^opinion\//, late: true },
  { packages: /^node:/, places: /^(host|cli|serve)\/|^web\/vite\.([a-z]+\.)?config\.ts$/ },
  { packages: /^(commander|picocolors)$/, places: /^cli\// },
  { packages: /^\*\?raw$/, places: /^answer\/raw\.d\.ts$/ },
  { packages: /^\*\.css$/, places: /^web\/assets\.d\.ts$/ },
  { packages: /^vite$/, places: /^(cli|web)\/vite\.[^/]*config\.ts$/ },
  // The layout library's own half that works in a worker: the worker is that very file, by its address.
  { packages: /^elkjs\/lib\/elk-worker\.min\.js\?url$/, places: /^web\/talk\/place\.ts$/ },
  { packages: /^\*\?url$/, places: /^web\/assets\.d\.ts$/ },
  { packages: /^elkjs(\/.+)?$/, places: /^layout\//, late: true },
  { packages: /^(hono|@hono\/node-server)(\/.+)?$/, places: /^serve\// },
  { packages: /^(preact(\/.+)?|@preact\/signals)$/, places: /^web\// },
  { packages: /^idb-keyval$/, places: /^web\/keep\// },
]

/** Every import of a package outside its fence. */
export function fenceViolations(sources: Sources): string[] {
  const found: string[] = []
  for (const [path, source] of sources) {
    for (const { target, line, late, typeOnly } of importsOf(path, source)) {
      if (target === undefined || target.startsWith('.')) continue
      const fence = FENCES.find(({ packages }) => packages.test(target))
      if (!fence) found.push(`${path}:${line} imports ${target}, which has no fence`)
      else if (!fence.places.test(path)) found.push(`${path}:${line} imports ${target} outside its fence`)
      else if (fence.late && !late && !typeOnly)
        found.push(`${path}:${line} imports ${target} before it is needed`)
    }
  }
  return found
}
