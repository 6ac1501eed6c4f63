/** Why does it not work? The dialogue by keyboard in a real browser, beside what the library says. */
import { diagnosisShare, openDiagnosis, subjectText } from 'ringproof'
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

test('complaint, a reading made before, three answers, a reload, and one taken back', async () => {
  const person = await chromium.person()
  const seen = await watch(person, site.origin)
  const page = await person.newPage()
  await page.goto(`${site.address}#view=bench&open=set/sedge`)
  await page.locator('[data-judged]:not([data-judged="0"])').waitFor()
  await page.getByRole('link', { name: 'Find the fault' }).click()
  await page.getByLabel('it rings, but one cannot talk').check({ timeout: 60_000 })
  // a question that was answered before it was asked: told wrongly, it is refused with what would be understood
  await page.getByText('Readings and answers that you have already').click()
  const told = page.getByLabel('Other answers, one on each line')
  await told.fill('dial=quite well')
  await page.getByRole('button', { name: 'Begin to ask' }).click()
  await page.getByRole('main').getByText('dial', { exact: false }).first().waitFor()
  await page.locator('.problem, .problems').first().waitFor({ timeout: 30_000 })
  await told.fill('')
  await page.getByLabel('Readings, one on each line').fill('plug.a plug.b off-hook 200 Ω')
  await page.getByRole('button', { name: 'Begin to ask' }).click()
  const diagnosis = await openDiagnosis(
    {
      target: 'set/sedge',
      symptoms: ['rings-but-no-speech'],
      readings: ['plug.a plug.b off-hook 200 Ω'],
      // as the page has it until somebody ticks it
      live: false,
    },
    shelf,
  )
  let state = diagnosis.begin
  for (let k = 0; k < 3; k += 1) {
    const question = diagnosis.next(state)
    if (question === undefined) throw new Error('nothing more is asked')
    await page.locator('#question-title', { hasText: question.asks }).waitFor({ timeout: 30_000 })
    const [answer] = question.outcomes
    if (answer?.answer === undefined) {
      await page.getByLabel('The meter shows').fill('open')
      await page.keyboard.press('Enter')
      state = diagnosis.answer(state, question.test, 'open')
      continue
    }
    const words = subjectText(answer.says ?? answer.answer, diagnosis.result(state).place)
    await page.locator('fieldset.answers').getByRole('button', { name: words }).focus()
    await page.keyboard.press('Enter')
    state = diagnosis.answer(state, question.test, answer.answer)
  }
  const result = diagnosis.result(state)
  await page.locator('#question-title', { hasText: result.next?.asks ?? '' }).waitFor({ timeout: 30_000 })
  const shares = await page.locator('.causes > .groups .amount').allTextContents()
  expect(shares).toEqual(
    result.groups.slice(0, shares.length).map(({ probability }) => diagnosisShare(probability)),
  )
  expect(await page.evaluate(() => document.activeElement?.id)).toBe('question-title')
  // nothing is lost by a reload
  await page.reload()
  await page.locator('#question-title', { hasText: result.next?.asks ?? '' }).waitFor({ timeout: 60_000 })
  expect(await barriers(page)).toEqual([])
  await page.getByRole('button', { name: 'Take the last answer back' }).first().click()
  const before = diagnosis.next(diagnosis.undo(state))
  await page.locator('#question-title', { hasText: before?.asks ?? '' }).waitFor({ timeout: 30_000 })
  seen.expectQuiet()
  await person.close()
}, 180_000)
