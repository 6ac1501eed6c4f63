/** Which set is it? The dialogue in a real browser, beside what the library says, and what it found onto the bench. */
import { fileURLToPath } from 'node:url'
import { identify, identifyVerdict } from 'ringproof'
import { folderShelf } from 'ringproof/host/shelf'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { barriers } from './support/axe.ts'
import { chromiumHere } from './support/chromium.ts'
import { type Site, staticSite } from './support/site.ts'
import { watch } from './support/watch.ts'

const chromium = chromiumHere()
const shelf = folderShelf([], fileURLToPath(new URL('../../netlists', import.meta.url)))
let site: Site
beforeAll(async () => {
  site = await staticSite()
})
afterAll(async () => site?.close())

const READINGS = [
  ['A5', 'C1', 'Handset up', '4.35k'],
  ['B1', 'B3', 'Handset up', 'open'],
  ['B3', 'B4', 'Handset down', '0.2'],
] as const

test('three readings tell the sedge, the dialogue outlives a reload, and the set goes onto the bench', async () => {
  const person = await chromium.person()
  const seen = await watch(person, site.origin)
  const page = await person.newPage()
  await page.goto(`${site.address}#view=identify`)
  await page.locator('.question h2 .count').waitFor({ timeout: 60_000 })
  await page.getByText('Add a reading of your own').click()
  for (const [red, black, condition, shown] of READINGS) {
    await page.getByLabel('Red lead on').fill(red)
    await page.getByLabel('Black lead on').fill(black)
    await page.getByRole('radio', { name: condition, exact: true }).check()
    await page.getByLabel('It shows', { exact: true }).fill(shown)
    await page.keyboard.press('Enter')
    await page.waitForFunction(
      () => document.querySelector<HTMLInputElement>('.own-reading input')?.value === '',
    )
  }
  const readings = ['A5 C1 off-hook 4.35k', 'B1 B3 off-hook open', 'B3 B4 on-hook 0.2 Ω']
  expect(await page.locator('.so-far').textContent()).toBe(identifyVerdict(identify({ readings }, shelf)))
  expect(await barriers(page)).toEqual([])
  // nothing is lost by a reload
  await page.reload()
  await page.locator('.so-far').waitFor({ timeout: 60_000 })
  expect(await page.locator('.so-far').textContent()).toBe(identifyVerdict(identify({ readings }, shelf)))
  await page.getByRole('button', { name: 'Put sedge on the bench' }).click()
  await page.waitForURL(/view=bench/)
  seen.expectQuiet()
  await person.close()
}, 180_000)
