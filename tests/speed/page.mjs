// The built page in a headless browser: how soon a moved lead is judged on screen, what holds the page's thread up, and
// what stays in memory. Limits in time, not ratios: they are what a hand feels. Two cores, nothing else running.
import { launched, servedBench } from '../browser/support/plain.mjs'
import { time } from './table.mjs'

const MOVES = 200
const MANY = 1000
const JUDGED = '[data-judged]:not([data-judged="0"])'

/** Milliseconds from the end of the key that undoes or redoes a move to the frame in which its verdicts stand. */
function moveByKeys(count) {
  const judged = () => Number(document.querySelector('[data-judged]').getAttribute('data-judged'))
  const button = (name) =>
    [...document.querySelectorAll('button')].find((one) => one.textContent.trim().startsWith(name))
  const once = () =>
    new Promise((resolve, reject) => {
      const undo = button('Undo')
      const pressed = undo.disabled ? button('Redo') : undo
      if (pressed.disabled) throw new Error('nothing to undo or redo')
      const before = judged()
      const since = performance.now()
      const late = setTimeout(() => reject(new Error('no verdict within 5 s')), 5000)
      const watcher = new MutationObserver(() => {
        if (judged() <= before) return
        watcher.disconnect()
        clearTimeout(late)
        // the frame after the change has been drawn
        requestAnimationFrame(() => setTimeout(() => resolve(performance.now() - since)))
      })
      watcher.observe(document.querySelector('[data-judged]'), { attributes: true })
      pressed.click()
    })
  return (async () => {
    const took = []
    for (let k = 0; k < count; k += 1) took.push(await once())
    return took
  })()
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
    await page.goto(`${bench.address}&open=rewire/sedge-converted`)
    await page.locator(JUDGED).waitFor()
    const first = performance.now() - since
    await page.waitForTimeout(1000)
    const opening = await page.evaluate(() => window.longTasks.splice(0))
    await page.evaluate(moveByKeys, 20)
    const took = (await page.evaluate(moveByKeys, MOVES)).sort((a, b) => a - b)
    await page.evaluate(moveByKeys, MANY - MOVES - 20)
    const long = await page.evaluate(() => window.longTasks)
    const session = await page.context().newCDPSession(page)
    await session.send('HeapProfiler.collectGarbage')
    const { usedSize } = await session.send('Runtime.getHeapUsage')
    return {
      first,
      median: at(took, 0.5),
      late: at(took, 0.95),
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
  const { first, median, late, longest, long, heap } = await measure()
  return [
    limit(`page: move to verdicts on screen, median of ${MOVES}`, median, 16, ms),
    limit(`page: the same, 95th percentile`, late, 50, ms),
    limit(`page: longest task on its thread (${long} above 50 ms)`, longest, 50, ms),
    limit('page: first view with a set judged', first, 1500, ms),
    limit(`page: its thread's heap after ${MANY} moves`, heap, 200e6, megabytes),
  ]
}
