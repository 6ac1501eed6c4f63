// Fresh processes: which functions are inlined differs from one to the next by a fifth and more.
import { spawnSync } from 'node:child_process'
import { fileURLToPath } from 'node:url'

const measurer = fileURLToPath(new URL('measure.mjs', import.meta.url))

/** What `measure()` of a subject finds in a node process of its own. */
export function inFreshNode(subject, flags = []) {
  return json(process.execPath, ['--expose-gc', ...flags, measurer, subject])
}

/** What a program prints as JSON. */
export function json(program, args) {
  const { status, stdout, stderr, error } = spawnSync(program, args, { encoding: 'utf8', maxBuffer: 1 << 24 })
  if (error) throw error
  if (status !== 0) throw new Error(`${program} ${args.join(' ')} ended with ${status}: ${stderr.trim()}`)
  return JSON.parse(stdout)
}

/**
 * Runs everything `rounds` times in turns and keeps the least of each number: what the machine does when left alone.
 * A runner may be missing.
 * @param {Record<string, (() => Record<string, number>) | undefined>} runners
 */
export function bestOf(rounds, runners) {
  const best = {}
  for (let round = 0; round < rounds; round++) {
    for (const [name, run] of Object.entries(runners)) {
      if (run === undefined) continue
      for (const [key, value] of Object.entries(run())) {
        const known = best[name]?.[key]
        if (typeof value === 'number' && (known === undefined || value < known))
          best[name] = { ...best[name], [key]: value }
      }
    }
  }
  return best
}
