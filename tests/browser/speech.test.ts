/** Speech as found beside as proposed: the table on the page is what the library says. */
import { figures, figureText } from 'ringproof'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { barriers } from './support/axe.ts'
import { shelf } from './support/bench.ts'
import { chromiumHere } from './support/chromium.ts'
import { type Site, staticSite } from './support/site.ts'
import { watch } from './support/watch.ts'

const chromium = chromiumHere()
let site: Site
beforeAll(async () => {
  site = await staticSite()
})
afterAll(async () => site?.close())

test('curves of a set and of what was done to it, their tables, and their figures to take along', async () => {
  const person = await chromium.person({ permissions: ['clipboard-read', 'clipboard-write'] })
  const seen = await watch(person, site.origin)
  const page = await person.newPage()
  await page.goto(`${site.address}#view=bench&open=rewire/fescue-to-two-wires`)
  await page.locator('[data-judged]:not([data-judged="0"])').waitFor()
  await page.getByRole('link', { name: 'Speech' }).click()
  await page.locator('.curves').waitFor({ timeout: 30_000 })
  // two sides, told apart by words
  await page.getByText('as proposed').first().waitFor()
  const currents = page.locator('details', { hasText: /^Currents for 1 V/ }).first()
  await currents.locator('summary').focus()
  await page.keyboard.press('Enter')
  const headings = await currents.locator('thead th').allTextContents()
  const rows = await currents
    .locator('tbody tr')
    .evaluateAll((all) => all.map((row) => [...row.children].map((cell) => cell.textContent ?? '')))
  for (const [side, target] of [
    ['as found', 'set/fescue'],
    ['as proposed', 'rewire/fescue-to-two-wires'],
  ] as const) {
    const said = figures({ target, only: 'speech.send' }, shelf).figures
    const column = headings.indexOf(`send, ${side}`)
    expect(column).toBeGreaterThan(0)
    let compared = 0
    for (const row of rows) {
      const figure = said.find((one) => String(one.frequency) === row[0])
      if (figure?.value == null || figure.value < 1e-9) continue
      expect(row[column]).toBe(figureText(figure))
      compared += 1
    }
    expect(compared).toBeGreaterThan(3)
  }
  expect(await barriers(page)).toEqual([])
  await page.getByRole('button', { name: 'Copy all tables' }).click()
  await page.getByText('Copied.').waitFor()
  const copied = await page.evaluate(() => navigator.clipboard.readText())
  expect(copied).toContain(rows[0]?.join('\t') ?? 'no row')
  seen.expectQuiet()
  await person.close()
}, 60_000)
