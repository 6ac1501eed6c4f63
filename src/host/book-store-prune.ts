/** Keeps a folder of kept files within bounds. */
import { readdirSync, rmSync, statSync } from 'node:fs'
import { join } from 'node:path'

/** How much a folder may hold. */
export interface Bounds {
  readonly files: number
  readonly bytes: number
}

/** A file that nobody has finished for so long was left by somebody who died, ms. */
const ABANDONED = 3_600_000

interface Held {
  readonly path: string
  readonly bytes: number
  readonly used: number
}

/** Removes the files that were not used for longest until the rest is within bounds, and what dead writers left. */
export function prune(folder: string, ending: string, bounds: Bounds, now: number = Date.now()): void {
  const held: Held[] = []
  for (const name of readdirSync(folder)) {
    const path = join(folder, name)
    const stat = statSync(path, { throwIfNoEntry: false })
    if (stat?.isFile() !== true) continue
    if (name.endsWith(ending)) held.push({ path, bytes: stat.size, used: stat.mtimeMs })
    else if (name.includes(`${ending}.`) && name.endsWith('.tmp') && now - stat.mtimeMs > ABANDONED)
      remove(path)
  }
  held.sort((p, q) => q.used - p.used || (p.path < q.path ? -1 : 1))
  let bytes = 0
  held.forEach((one, k) => {
    bytes += one.bytes
    if (k >= bounds.files || bytes > bounds.bytes) remove(one.path)
  })
}

/** Another process may have been faster. */
function remove(path: string): void {
  rmSync(path, { force: true })
}
