// The built page in a headless browser: how soon a moved lead is judged on screen, what holds the page's thread up, and
// what stays in memory. Limits in time, not ratios: they are what a hand feels. Two cores, nothing else running.
import { launched, servedBench } from '../browser/support/plain.mjs'
import { time } from './table.mjs'

const MOVES = 200
const MANY = 1000
const JUDGED = '[data-judged]:not([data-judged="0"])'

/** Which core goes round, and where to. */
const CORE = 'core:handset.r2'

/** So long a lead stays in a quick hand, ms: meanwhile its landings are judged ahead. */
const HELD = 300

/** In the page: lands the core on one terminal after another and takes each move back; milliseconds from the key that lands it to the frame with its verdicts. */
async function moveByKeys([count, core, held]) {
  const section = () => document.querySelector('[data-judged]')
  const judged = () => Number(section().getAttribute('data-judged'))
  const thing = (name) => document.querySelector(`.bench-terminals [data-thing="${name}"][tabindex]`)
  const press = (element) => {
    element.focus()
    for (const type of ['keydown', 'keyup'])
      element.dispatchEvent(new KeyboardEvent(type, { key: 'Enter', code: 'Enter', bubbles: true }))
  }
  const undo = () => [...document.querySelectorAll('button')].find((one) => one.textContent.trim() === 'Undo')
  // until the frame with the verdicts is drawn: asked for before the page asks for anything, and so answered before the
  // page goes on to what it draws behind that frame
  const judgedBy = (act) =>
    new Promise((resolve, reject) => {
      const before = judged()
      const late = setTimeout(() => reject(new Error('no verdict within 5 s')), 5000)
      const look = () => {
        const isThere = judged() > before
        const { port1, port2 } = new MessageChannel()
        port1.onmessage = () => {
          if (!isThere) return
          clearTimeout(late)
          resolve(performance.now() - since)
        }
        port2.postMessage(null)
        if (!isThere) requestAnimationFrame(look)
      }
      requestAnimationFrame(look)
      const since = performance.now()
      act()
    })
  const names = [...document.querySelectorAll('.bench-terminals [data-thing^="terminal:"][tabindex]')].map(
    (one) => one.getAttribute('data-thing'),
  )
  const taken = names.find((name) => thing(name).getAttribute('aria-label')?.includes('handset r2'))
  const free = names.filter((name) => name !== taken)
  const took = []
  for (let k = 0; k < count; k += 1) {
    press(thing(core))
    await new Promise((resolve) => setTimeout(resolve, held))
    took.push(await judgedBy(() => press(thing(free[k % free.length]))))
    await judgedBy(() => undo().click())
  }
  return took
}

const at = (sorted, share) => sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))]

/** All of it, in milliseconds and bytes. */
export async function measure() {
  const bench = await servedBench()
  const browser = await launched('--enable-precise-memory-info')
  try {
    const page = await browser.newPage({ locale: 'en-US', viewport: { width: 1440, height: 900 } })
    await page.addInitScript(() => {
      window.longTasks = []
      new PerformanceObserver((list) => {
        for (const { duration } of list.getEntries()) window.longTasks.push(duration)
      }).observe({ type: 'longtask', buffered: true })
    })
    const since = performance.now()
    await page.goto(`${bench.address}&open=set/sedge`)
    await page.locator(JUDGED).waitFor()
    const first = performance.now() - since
    await page.waitForTimeout(1000)
    const opening = await page.evaluate(() => window.longTasks.splice(0))
    await page.evaluate(moveByKeys, [20, CORE, 0])
    const took = (await page.evaluate(moveByKeys, [MOVES, CORE, HELD])).sort((a, b) => a - b)
    // thrown there at once, as no hand does: nothing is judged ahead
    const thrown = (await page.evaluate(moveByKeys, [MOVES, CORE, 0])).sort((a, b) => a - b)
    await page.evaluate(moveByKeys, [(MANY - 4 * MOVES - 40) / 2, CORE, 0])
    const long = await page.evaluate(() => window.longTasks)
    const session = await page.context().newCDPSession(page)
    await session.send('HeapProfiler.collectGarbage')
    const { usedSize } = await session.send('Runtime.getHeapUsage')
    return {
      first,
      median: at(took, 0.5),
      late: at(took, 0.95),
      thrown: [at(thrown, 0.5), at(thrown, 0.95)],
      longest: Math.max(0, ...opening, ...long),
      long: opening.length + long.length,
      heap: usedSize,
    }
  } finally {
    await browser.close()
    await bench.close()
  }
}

const limit = (what, ours, most, as) => ({
  what,
  ours: as(ours),
  other: '',
  ratio: '',
  goal: `<= ${as(most)}`,
  met: ours <= most,
})
const ms = (value) => time(1000 * value)
const megabytes = (value) => `${(value / 1e6).toPrecision(3)} MB`

/** Rows of this subject. */
export async function rows() {
  const { first, median, late, thrown, longest, long, heap } = await measure()
  return [
    limit(`page: move to verdicts on screen, median of ${MOVES}`, median, 16, ms),
    limit(`page: the same, 95th percentile`, late, 50, ms),
    {
      what: 'page: the same without a moment in the hand, median and 95th percentile',
      ours: thrown.map(ms).join(', '),
      other: '',
      ratio: '',
      goal: '',
      met: undefined,
    },
    limit(`page: longest task on its thread (${long} above 50 ms)`, longest, 50, ms),
    limit('page: first view with a set judged', first, 1500, ms),
    limit(`page: its thread's heap after ${MANY} moves, taking back counted`, heap, 200e6, megabytes),
  ]
}
