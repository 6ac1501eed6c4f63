// A building of 20,000 unknowns: what the first frequency costs, what each further one, and how both grow.
import { library } from './built.mjs'
import { inTurns, processorTime } from './clock.mjs'
import { building, filled, judge, refill, rightSide } from './matrices.mjs'
import { bestOf, inFreshNode } from './processes.mjs'
import { faster, skipped, within } from './table.mjs'

const sizes = [2000, 20000]
const seed = 20261125
const processes = 3

/** In one process: the first solution, cold and warm, further ones, and the bytes that are held. */
export async function measure() {
  const { createSparse } = await library('algebra/sparse')
  const found = {}
  let consumed = 0
  for (const order of sizes.toReversed()) {
    const matrix = building(order, seed)
    const b = rightSide(matrix, true)
    const x = b.slice()
    const solution = (engine, way) => {
      if (!engine[way]().ok) throw new Error('the matrix is singular')
      x.set(b)
      engine.solve(x, 1)
      consumed += x[0]
    }
    const first = () => {
      const fresh = filled(createSparse, matrix, true)
      solution(fresh, 'factor')
      return fresh
    }
    globalThis.gc()
    const before = process.memoryUsage().arrayBuffers
    const start = processorTime()
    const engine = first()
    found[`cold ${order}`] = processorTime() - start
    judge('the first frequency', engine, x, b)
    globalThis.gc()
    found[`bytes ${order}`] = process.memoryUsage().arrayBuffers - before
    refill(engine, matrix, 1.1) // another frequency
    solution(engine, 'refactor')
    judge('another frequency', engine, x, b)
    const times = inTurns({ first, further: () => solution(engine, 'refactor') })
    found[`first ${order}`] = times.first
    found[`further ${order}`] = times.further
  }
  if (!Number.isFinite(consumed)) throw new Error('no solution')
  return found
}

const megabytes = (bytes) => `${(bytes / 1e6).toPrecision(3)} MB`

/** All rows of this subject. */
export function rows(outside) {
  const [few, many] = sizes
  const file = outside.write('building', building(many, seed))
  const { splu, klu } = outside
  const best = bestOf(processes, {
    ours: () => inFreshNode('building'),
    splu: splu && (() => splu(file, 'complex')),
    klu: klu && (() => klu(file, 'complex')),
  })
  const { ours } = best
  const name = `${many.toLocaleString('en')} unknowns, complex`
  const scipy = `scipy ${outside.version} splu + solve`
  return [
    ...(best.splu
      ? [
          within(`${name}, first solution / ${scipy}`, ours[`first ${many}`], best.splu.microseconds, 4),
          within(`${name}, the very first, cold / ${scipy}`, ours[`cold ${many}`], best.splu.microseconds),
          faster(`${name}, each further / ${scipy}`, ours[`further ${many}`], best.splu.microseconds, 5),
        ]
      : [skipped(`${name} / scipy splu + solve`, '<= 4 x, >= 5 x', outside.spluMissing)]),
    ...(best.klu
      ? [within(`${name}, each further / KLU in C, as it comes`, ours[`further ${many}`], best.klu.scaled)]
      : []),
    within(`${few} to ${many} unknowns, first solution`, ours[`first ${many}`], ours[`first ${few}`], 25),
    within(`${few} to ${many} unknowns, each further`, ours[`further ${many}`], ours[`further ${few}`], 25),
    within(`${name}, bytes held / n x n`, ours[`bytes ${many}`], 16 * many * many, 0.02, megabytes),
  ]
}
