// What a sweep leaves on the heap: nothing. Garbage counts: new space is so large that none is collected in between.
import { library } from './built.mjs'
import { filled, local, rightSide } from './matrices.mjs'
import { bestOf, inFreshNode } from './processes.mjs'
import { within } from './table.mjs'

const runs = 45_000
const rounds = 4
const most = 1e6

export async function measure() {
  const { createSparse } = await library('algebra/sparse')
  const found = {}
  for (const complex of [true, false]) {
    const matrix = local(40, 20261125)
    const engine = filled(createSparse, matrix, complex)
    engine.factor()
    const b = rightSide(matrix, complex)
    const x = b.slice()
    const sweep = (count) => {
      let consumed = 0
      for (let k = 0; k < count; k++) {
        engine.clear()
        for (let slot = 0; slot < engine.slots.length; slot++)
          engine.add(engine.slots[slot], matrix.re[slot], matrix.im[slot])
        if (!engine.refactor().ok) throw new Error('the matrix is singular')
        x.set(b)
        engine.solve(x, 1)
        engine.solveTransposed(x, 1)
        consumed += x[0]
      }
      return consumed
    }
    // the least of several: while the compiler is still at work, boxes of its slower code count as ours
    found[complex ? 'complex' : 'real'] = Math.min(...Array.from({ length: rounds }, () => growth(sweep)))
  }
  return found
}

/** Bytes that one sweep adds to heap and buffers. */
function growth(sweep) {
  globalThis.gc()
  const before = process.memoryUsage()
  const consumed = sweep(runs)
  const after = process.memoryUsage()
  if (!Number.isFinite(consumed)) throw new Error('no solution')
  return Math.max(0, after.heapUsed - before.heapUsed + after.arrayBuffers - before.arrayBuffers)
}

const kilobytes = (bytes) => `${(bytes / 1000).toFixed(0)} kB`

/** All rows of this subject. */
export function rows() {
  const { ours } = bestOf(2, {
    ours: () => inFreshNode('allocation', ['--min-semi-space-size=128', '--max-semi-space-size=128']),
  })
  const name = `heap growth in ${runs.toLocaleString('en')} refills, refactorisations and solutions`
  return ['complex', 'real'].map((kind) => within(`${name}, ${kind}`, ours[kind], most, 1, kilobytes))
}
