// The built library: what is measured is what is shipped.
import { spawnSync } from 'node:child_process'
import { existsSync, readdirSync, statSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath, pathToFileURL } from 'node:url'

const root = fileURLToPath(new URL('../..', import.meta.url))

/** The newest change below a path, folders included: a deleted file changes its folder. */
function newest(path) {
  const stat = statSync(path)
  if (!stat.isDirectory()) return stat.mtimeMs
  return Math.max(stat.mtimeMs, ...readdirSync(path).map((name) => newest(join(path, name))))
}

/** Builds where the library is missing or older than its sources. */
export function buildIfStale() {
  const library = join(root, 'dist/lib/index.js')
  const sources = ['src', 'package.json', 'package-lock.json', 'tsconfig.json']
  const youngest = Math.max(...sources.map((name) => newest(join(root, name))))
  if (existsSync(library) && statSync(library).mtimeMs > youngest) return
  console.log('dist/lib is missing or old: building')
  const { status } = spawnSync('npm', ['run', 'build'], { cwd: root, stdio: ['ignore', 'ignore', 'inherit'] })
  if (status !== 0) throw new Error('the build failed')
}

/** A module of the built library by its path below `src`, without ending. */
export function library(name) {
  return import(pathToFileURL(join(root, 'dist/lib', `${name}.js`)).href)
}
