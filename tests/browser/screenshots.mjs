#!/usr/bin/env node
// `node tests/browser/screenshots.mjs [folder] [png]`: a picture of every view of the built page in both themes, into
// docs/screenshots. Small files: they are looked at, not compared; `png` for viewers that know nothing else. Build first.
import { mkdirSync, statSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { launched, servedBench } from './support/plain.mjs'

const folder = process.argv[2] ?? fileURLToPath(new URL('../../docs/screenshots', import.meta.url))
const IS_PNG = process.argv[3] === 'png'
const VIEWS = ['bench', 'premises', 'speech', 'diagnosis', 'identify', 'sheet', 'files', 'lesson']
const THEMES = ['light', 'dark']
/** What lies on the bench in them: a rewire that fails, so that there is something to see. */
const OPEN = 'rewire/sedge-converted-as-fescue'
const WIDE = { width: 1440, height: 900 }
/** No taller than this: a long page is shown by its beginning. */
const TALLEST = 1800

mkdirSync(folder, { recursive: true })
const bench = await servedBench()
const browser = await launched()
try {
  for (const colorScheme of THEMES) {
    const person = await browser.newContext({ locale: 'en-US', viewport: WIDE, colorScheme })
    const page = await person.newPage()
    await page.goto(`${bench.address}&open=${OPEN}`)
    await page.locator('[data-judged]:not([data-judged="0"])').waitFor()
    for (const view of VIEWS) {
      if (view !== 'bench') {
        await page.evaluate((one) => {
          const words = new URLSearchParams(location.hash.slice(1))
          words.set('view', one)
          words.delete('open')
          location.hash = `#${words}`
        }, view)
      }
      await page.waitForLoadState('networkidle')
      // workers answer, and the picture is placed
      await page.waitForTimeout(2500)
      const height = Math.min(TALLEST, await page.evaluate(() => document.documentElement.scrollHeight))
      const path = join(folder, `${view}-${colorScheme}.${IS_PNG ? 'png' : 'jpg'}`)
      await page.screenshot({
        path,
        ...(IS_PNG ? { type: 'png' } : { type: 'jpeg', quality: 60 }),
        animations: 'disabled',
        fullPage: true,
        clip: { x: 0, y: 0, width: WIDE.width, height },
      })
      console.log(`${path} ${Math.round(statSync(path).size / 1024)} KiB`)
    }
    await person.close()
  }
} finally {
  await browser.close()
  await bench.close()
}
