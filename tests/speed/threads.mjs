// Threads: all pairs of faults of one set, worked out by one and by two, clock beside clock in one process.
import { layOut } from '../../dist/lib/answer/book-order.js'
import { NO_STORE } from '../../dist/lib/book/store.js'
import { workPairs } from '../../dist/lib/book/work-book.js'
import { threadCrew } from '../../dist/lib/host/crew.js'
import { packagedFolder } from '../../dist/lib/host/packaged.js'
import { folderShelf } from '../../dist/lib/host/shelf.js'
import { faster } from './table.mjs'

const asked = 'fescue'
const rounds = 3

/** Microseconds by one thread and by two, and how many pairs they were. Two come first: what is warm helps the one. */
export async function measure() {
  const laidOut = layOut({ target: asked, on: 'workshop' }, folderShelf([], packagedFolder()))
  const by = async (lanes) => {
    const entry = new URL('../../dist/cli/crew-worker.js', import.meta.url).pathname
    const since = performance.now()
    const { count } = await workPairs(laidOut, {
      crew: threadCrew(lanes, entry),
      store: NO_STORE,
      tell: () => {},
    })
    return { took: 1000 * (performance.now() - since), count }
  }
  const best = { one: Number.POSITIVE_INFINITY, two: Number.POSITIVE_INFINITY, count: 0 }
  for (let round = 0; round < rounds; round += 1) {
    const [two, one] = [await by(2), await by(1)]
    best.two = Math.min(best.two, two.took)
    best.one = Math.min(best.one, one.took)
    best.count = one.count
  }
  return best
}

/** Rows of this subject. */
export async function rows() {
  const { one, two, count } = await measure()
  const pairs = count.toLocaleString('en')
  return [
    faster(`all ${pairs} pairs of faults of ${asked} by two threads / by one, by the clock`, two, one, 1.8),
  ]
}
