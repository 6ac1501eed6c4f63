/** Which set is it, and why does it not work: both dialogues in a real browser, beside what the library says. */
import { fileURLToPath } from 'node:url'
import { diagnosisShare, identify, identifyVerdict, openDiagnosis, subjectText } from 'ringproof'
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
  site = await staticSite(process.env.RINGPROOF_WEB)
})
afterAll(async () => site?.close())

const READINGS = [
  ['A5', 'C1', 'Handset up', '4.35k'],
  ['B1', 'B3', 'Handset up', 'open'],
  ['B3', 'B4', 'Handset down', '0.2'],
] as const

test('three readings tell the sedge, which goes onto the bench and is diagnosed', async () => {
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
  await page.getByRole('button', { name: 'Put sedge on the bench' }).click()
  await page.waitForURL(/view=bench/)

  await page.goto(`${site.address}#view=diagnosis`)
  await page.getByLabel('it rings, but one cannot talk').check({ timeout: 60_000 })
  await page.getByRole('button', { name: 'Begin to ask' }).click()
  const diagnosis = await openDiagnosis({ target: 'sedge', symptoms: ['rings-but-no-speech'] }, shelf)
  let state = diagnosis.begin
  // the first questions of docs/diagnosis.md
  for (const [test, written] of [
    ['stops-ringing', 'stops'],
    ['tone', 'none'],
    ['heard', 'well'],
  ] as const) {
    const question = diagnosis.next(state)
    expect(question?.test).toBe(test)
    await page.locator('#question-title', { hasText: question?.asks ?? '' }).waitFor({ timeout: 30_000 })
    const { place } = diagnosis.result(state)
    const answer = question?.outcomes.find((one) => one.answer === written)
    const words = subjectText(answer?.says ?? written, place)
    await page.locator('fieldset.answers').getByRole('button', { name: words }).focus()
    await page.keyboard.press('Enter')
    state = diagnosis.answer(state, test, written)
  }
  const result = diagnosis.result(state)
  await page.locator('#question-title', { hasText: result.next?.asks ?? '' }).waitFor({ timeout: 30_000 })
  const shares = await page.locator('.causes > .groups .amount').allTextContents()
  expect(shares).toEqual(
    result.groups.slice(0, shares.length).map(({ probability }) => diagnosisShare(probability)),
  )
  expect(await page.evaluate(() => document.activeElement?.id)).toBe('question-title')
  // nothing is lost when the view is left
  await page.goto(`${site.address}#view=identify`)
  await page.goto(`${site.address}#view=diagnosis`)
  await page.locator('#question-title', { hasText: result.next?.asks ?? '' }).waitFor()
  expect(await barriers(page)).toEqual([])
  seen.expectQuiet()
  await person.close()
}, 180_000)
