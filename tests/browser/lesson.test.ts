/** The lesson by keyboard alone and by touch, on the built page; its numbers are those of the library. */
import { readFileSync } from 'node:fs'
import type { Page } from 'playwright-core'
import { check, follow, formatQuantity, type SheetText, solve, textShelf, verdictsAsked } from 'ringproof'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { HOUSE, type House, houseTexts } from '../../src/web/lesson/rig/house.ts'
import { frequencyOf, HOUSE_CHECKS, type HouseReading, readingOf } from '../../src/web/lesson/rig/reading.ts'
import type { Step } from '../../src/web/lesson/steps/step.ts'
import { STEPS } from '../../src/web/lesson/steps/steps.ts'
import { chromiumHere } from './support/chromium.ts'
import { PAGE, type Site, staticSite } from './support/site.ts'
import { watch } from './support/watch.ts'

const chromium = chromiumHere()
const fleet: readonly SheetText[] = JSON.parse(readFileSync(`${PAGE}/fleet.json`, 'utf8'))
let site: Site
beforeAll(async () => {
  site = await staticSite()
})
afterAll(async () => site?.close())

/** A house as the library of the build has it here, without page or worker. */
function readingIn(house: House): HouseReading {
  const shelf = textShelf(houseTexts(house), fleet)
  const checked = verdictsAsked({ target: HOUSE }, HOUSE_CHECKS, shelf)
  const ringing = { target: HOUSE, condition: 'on-hook/ringing' }
  return readingOf(
    checked,
    solve({ ...ringing, frequency: frequencyOf(checked) }, shelf),
    follow({ ...ringing, from: 'exchange/b', to: 'exchange/a' }, shelf),
  )
}

/** What a step must say, every number of it solved here. */
function whyOf(step: Step): readonly string[] {
  const found = Object.entries(step.needs).map(([name, state]) => [name, readingIn(step.house(state))])
  return step.why(Object.fromEntries(found))
}

/** Presses Tab until what has the focus is called this. */
async function tabTo(page: Page, name: RegExp): Promise<void> {
  for (let k = 0; k < 80; k += 1) {
    await page.keyboard.press('Tab')
    const text = await page.evaluate(() => {
      const at = document.activeElement
      return at?.getAttribute('aria-label') ?? at?.closest('label')?.textContent ?? at?.textContent ?? ''
    })
    if (name.test(text.trim())) return
  }
  throw new Error(`no key leads to ${name}`)
}

test('the lesson is finished by keyboard alone', async () => {
  const person = await chromium.person({ viewport: { width: 1024, height: 800 } })
  const seen = await watch(person, site.origin)
  const page = await person.newPage()
  await page.goto(`${site.address}#view=lesson&step=1`)
  for (let step = 1; step <= 8; step += 1) {
    await page.getByRole('heading', { name: `Step ${step} of 8` }).waitFor()
    if (step === 1) {
      // an expectation, then the trial itself
      await tabTo(page, /^It rings as before/)
      await page.keyboard.press('Space')
      await tabTo(page, /^Landed/)
      await page.keyboard.press('ArrowRight')
    } else {
      await tabTo(page, /show me$/)
      await page.keyboard.press('Enter')
    }
    await page.locator('.lesson-why li').first().waitFor({ timeout: 60_000 })
    if (step === 1) {
      expect(await page.locator('.lesson-came').textContent()).toContain('Not as you expected')
      expect(await page.locator('[aria-live=polite]').allTextContents()).toContainEqual(
        expect.stringContaining('It falls silent'),
      )
    }
    const one = STEPS[step - 1]
    const says = await page.locator('.lesson-why li').allTextContents()
    expect(says).toEqual(one === undefined ? [] : whyOf(one))
    await tabTo(page, step === 8 ? /^To the end$/ : /^Next step$/)
    await page.keyboard.press('Enter')
  }
  await page.getByRole('heading', { name: 'What you have learned' }).waitFor()
  expect(await page.locator('.lesson-end ol li p').count()).toBe(8)
  expect(await page.locator('.lesson-end').textContent()).toContain('You have tried all 8 steps')
  seen.expectQuiet()
  await person.close()
}, 240_000)

test('a step by touch: what is expected, what is done, and what came of it', async () => {
  const person = await chromium.person({
    viewport: { width: 360, height: 780 },
    hasTouch: true,
    isMobile: true,
  })
  const seen = await watch(person, site.origin)
  const page = await person.newPage()
  await page.goto(`${site.address}#view=lesson&step=1`)
  // nothing can be tried before something is expected
  await page.getByText('Say first what you expect').first().waitFor()
  const expected = page.locator('label', { hasText: 'It falls silent' })
  expect((await expected.boundingBox())?.height).toBeGreaterThanOrEqual(44)
  await expected.tap()
  await page.locator('label', { hasText: /^Parked/ }).tap()
  await page.getByText('As you expected', { exact: true }).waitFor()
  // the number of the lone bell is the one that the library gives of the set by itself
  const { verdicts } = check({ target: 'set/fescue' }, textShelf([], fleet))
  const bell = verdicts.find((one) => one.check === 'bell.rings-alone')
  const amount = formatQuantity(bell?.figure?.value ?? Number.NaN, 'A', 3)
  expect(await page.locator('.lesson-figures td').first().textContent()).toBe(amount)
  await page.getByRole('button', { name: 'Next step' }).tap()
  await page.getByRole('heading', { name: 'Step 2 of 8' }).waitFor()
  // what was tried outlives a reload
  await page.reload()
  await page.getByRole('button', { name: /^Step 1: .*, done$/ }).waitFor()
  seen.expectQuiet()
  await person.close()
}, 60_000)
