/** A sheet made one's own, edited with a mistake, mended and saved, by keyboard and mouse, in a real browser. */
import { afterAll, beforeAll, expect, test } from 'vitest'
import { barriers } from './support/axe.ts'
import { chromiumHere } from './support/chromium.ts'
import { type Site, staticSite } from './support/site.ts'
import { watch } from './support/watch.ts'

const chromium = chromiumHere()
let site: Site
beforeAll(async () => {
  site = await staticSite()
})
afterAll(async () => site?.close())

test.each(['light', 'dark'] as const)(
  'a mistake is told at its line, mended and saved, and outlives a reload: %s',
  async (colorScheme) => {
    const person = await chromium.person({ colorScheme })
    const seen = await watch(person, site.origin)
    const page = await person.newPage()
    await page.goto(`${site.address}#view=sheet`)
    await page.getByLabel('Which sheet').selectOption({ label: 'sedge' })
    const area = page.locator('#sheet-text')
    expect(await area.getAttribute('readonly')).not.toBe(null)
    await page.getByRole('button', { name: 'Make it mine' }).click()
    await page.waitForFunction(
      () => document.querySelector<HTMLTextAreaElement>('#sheet-text')?.readOnly === false,
    )
    const before = await area.inputValue()
    await area.fill(before.replace('sheet: set', 'sheet: sett'))
    const place = page.getByRole('button', { name: /line 3, column 8/ })
    await place.focus()
    expect(await barriers(page)).toEqual([])
    await page.keyboard.press('Enter')
    const marked = await page.evaluate(() => {
      const text = document.activeElement as HTMLTextAreaElement
      return text.value.slice(text.selectionStart, text.selectionEnd)
    })
    expect(marked).toBe('sett')
    await page.keyboard.type('set')
    await page.getByText('The sheet is sound').waitFor()
    // the tab key leaves the text
    await page.keyboard.press('Tab')
    expect(await page.evaluate(() => document.activeElement?.id)).not.toBe('sheet-text')
    const after = before.replace('title: ', 'title: my ')
    await area.fill(after)
    // what is not saved outlives a reload
    await page.reload()
    await page.getByLabel('Which sheet').selectOption({ label: 'sedge (yours: sedge.yaml)' })
    await page.getByText('Not saved yet').waitFor()
    expect(await area.inputValue()).toBe(after)
    await area.focus()
    await page.getByText('The sheet is sound').waitFor()
    await page.keyboard.press('Control+s')
    await page.waitForFunction(
      () => !document.querySelector('#sheet-state')?.textContent?.includes('Not saved'),
    )
    await page.reload()
    await page.getByLabel('Which sheet').selectOption({ label: 'sedge (yours: sedge.yaml)' })
    await page.waitForFunction(
      (text) => document.querySelector<HTMLTextAreaElement>('#sheet-text')?.value === text,
      after,
    )
    expect(await barriers(page)).toEqual([])
    seen.expectQuiet()
    await person.close()
  },
  60_000,
)
