/** Premises and the bench, by mouse and keyboard: what the page shows is what the library says. */
import { fileURLToPath } from 'node:url'
import { check, figureText } from 'ringproof'
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

test.each(['light', 'dark'] as const)(
  'who rings in the station house, one set lifted, and put on the bench: %s',
  async (colorScheme) => {
    const person = await chromium.person({ colorScheme })
    const seen = await watch(person, site.origin)
    const page = await person.newPage()
    // the button Show of Files writes this
    await page.goto(`${site.address}#view=premises&name=station-house`)
    await page.waitForFunction(
      () => document.querySelector<HTMLSelectElement>('#premises-name')?.value === 'station-house',
    )
    await page.getByRole('heading', { name: 'The line', exact: true }).waitFor()
    const answer = check({ target: 'station-house' }, shelf)
    const shown = await page.locator('.rings .amount').allTextContents()
    const rings = answer.figures.filter(({ id }) => id === 'ringing.current')
    expect(shown).toEqual(rings.map((figure) => figureText(figure)))
    const shares = answer.figures.filter(({ id }) => id === 'ringing.share')
    const bells = (await page.locator('.rings .bell-figures').allTextContents()).join(' ')
    for (const share of shares) expect(bells).toContain(figureText(share))
    const load = page.locator('.line .bell', { hasText: 'line.ringing-load' })
    expect(await load.textContent()).toContain('FAILS')
    // by keyboard: choose the set, lift its handset
    await page.getByRole('button', { name: /^office/ }).focus()
    await page.keyboard.press('Enter')
    await page.getByRole('radio', { name: 'Handset up' }).focus()
    await page.keyboard.press('Space')
    await page.getByRole('rowheader', { name: 'loop current' }).waitFor()
    expect(await barriers(page)).toEqual([])
    await page.getByRole('button', { name: 'Put office on the bench' }).click()
    await page.waitForURL(/view=bench/)
    seen.expectQuiet()
    await person.close()
  },
  90_000,
)
