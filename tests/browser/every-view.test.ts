/** Every view and every step of the lesson in both themes and at three widths: no barrier, nothing over the edge, no text over text. */
import type { Page } from 'playwright-core'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { barriers } from './support/axe.ts'
import { chromiumHere } from './support/chromium.ts'
import { type Site, staticSite } from './support/site.ts'
import { overlaps, sideways } from './support/texts.ts'
import { watch } from './support/watch.ts'

const chromium = chromiumHere()
let site: Site
beforeAll(async () => {
  site = await staticSite()
})
afterAll(async () => site?.close())

/** Each view, and what stands there once it has come to rest. */
const VIEWS = [
  ['bench', '[data-judged]:not([data-judged="0"])'],
  ['speech', '.curves text'],
  ['premises', '.rings .amount'],
  ['sheet', '#sheet-text'],
  ['files', '.sheets li'],
  ['identify', '.question h2 .count'],
  ['diagnosis', '.complaints label'],
  ['lesson&step=9', '.lesson-end'],
] as const

/** What is wrong with the page as it stands at these widths, each with where it was seen. */
async function amissAt(page: Page, where: string, widths: readonly number[]): Promise<string[]> {
  const amiss: string[] = []
  for (const width of widths) {
    await page.setViewportSize({ width, height: 900 })
    // a picture may be drawn anew for another width
    await page.evaluate(
      () => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(() => done(null)))),
    )
    const over = await sideways(page)
    amiss.push(
      ...(over > 0 ? [`${where} at ${width}: ${over} px over the edge`] : []),
      ...(await overlaps(page)).map((pair) => `${where} at ${width}: ${pair}`),
      ...(width === 768 ? [] : await barriers(page)).map((one) => `${where} at ${width}: ${one}`),
    )
  }
  return amiss
}

test.each(['light', 'dark'] as const)(
  'every view is sound in the %s theme',
  async (colorScheme) => {
    const person = await chromium.person({ colorScheme, reducedMotion: 'reduce' })
    const seen = await watch(person, site.origin)
    const page = await person.newPage()
    await page.goto(`${site.address}#view=bench&open=set/sedge`)
    const amiss: string[] = []
    for (const [view, ready] of VIEWS) {
      // the first was opened with its set; the others find it there
      if (view !== 'bench')
        await page.evaluate((to) => {
          location.hash = to
        }, `#view=${view}`)
      await page.locator(ready).first().waitFor({ timeout: 60_000 })
      amiss.push(...(await amissAt(page, view, colorScheme === 'light' ? [1440, 768, 360] : [1440, 360])))
    }
    expect(amiss).toEqual([])
    seen.expectQuiet()
    await person.close()
  },
  180_000,
)

test.each(['light', 'dark'] as const)(
  'every step of the lesson is sound in the %s theme',
  async (colorScheme) => {
    const person = await chromium.person({ colorScheme, reducedMotion: 'reduce' })
    const seen = await watch(person, site.origin)
    const page = await person.newPage()
    const amiss: string[] = []
    for (let step = 1; step <= 8; step += 1) {
      await page.goto(`${site.address}#view=lesson&step=${step}`)
      await page.getByRole('button', { name: 'show me' }).click()
      await page.locator('.lesson-why li').first().waitFor({ timeout: 60_000 })
      amiss.push(...(await amissAt(page, `step ${step}`, colorScheme === 'light' ? [768, 360] : [1440])))
    }
    expect(amiss).toEqual([])
    seen.expectQuiet()
    await person.close()
  },
  180_000,
)
