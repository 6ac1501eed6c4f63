/** Every move that a hand can make, by one way or another; the verdicts after them are those of the library. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import {
  asked,
  core,
  drag,
  during,
  focused,
  movesOf,
  onBench,
  said,
  shown,
  terminal,
  thing,
  WEB,
} from './support/bench.ts'
import { chromiumHere } from './support/chromium.ts'
import { type Site, staticSite } from './support/site.ts'

const chromium = chromiumHere()
let site: Site

beforeAll(async () => {
  site = await staticSite(WEB)
})
afterAll(() => site.close())

describe('moves on the bench', () => {
  it('makes nine of the ten with mouse, finger and keys', async () => {
    const { page, quiet } = await onBench(chromium, site, 'fescue', { hasTouch: true })
    const press = async (name: string): Promise<void> => {
      await page.getByRole('button', { name, exact: true }).focus()
      await page.keyboard.press('Enter')
    }
    const pick = async (what: string): Promise<void> => page.locator(thing(what)).first().click()

    await pick('slot:regulator')
    await during(page, () => page.getByRole('button', { name: 'Pull the unit' }).tap())
    await page.getByLabel('Unit', { exact: true }).selectOption('vetch')
    await during(page, () => press('Plug vetch in'))
    await page.locator(thing('strap:B2-B3')).first().focus()
    await page.keyboard.press('Enter')
    await during(page, () => press('Lift it'))
    await during(page, () => drag(page, terminal('B2'), terminal('B4')))
    await during(page, async () => {
      await page.locator(core('handset.r1')).first().tap()
      await page.locator(terminal('B2')).first().tap()
    })
    await pick('core:handset.t1')
    await during(page, () => press('Park it, insulated'))
    await pick('part:click')
    await during(page, () => press('Take it out'))
    await pick('part:hush-r')
    await during(page, () => press('Bridge it by a strap'))
    await page.getByText('Fit a part').click()
    await page.getByLabel('Kind', { exact: true }).selectOption('resistor')
    await page.getByLabel('Name', { exact: true }).fill('new-one')
    await page.getByLabel('from', { exact: true }).selectOption('A1')
    await page.getByLabel('to', { exact: true }).selectOption('C4')
    await page.getByLabel('resistance', { exact: true }).fill('47 kΩ')
    await during(page, () => press('Fit it'))
    expect(await focused(page)).not.toBe('nothing')
    expect(await movesOf(page)).toEqual([
      'pull the unit out of slot regulator',
      'plug unit vetch into slot regulator',
      'lift strap B2-B3',
      'fit strap B2-B4',
      'land core handset.r1 on B2',
      'park core handset.t1, insulated, on nothing',
      'lift part click',
      'bridge part hush-r',
      'fit part new-one: resistor from A1 to C4, resistance 47 kΩ',
    ])
    const library = asked(
      'fescue',
      '{pull unit: regulator}',
      '{plug unit: vetch, in: regulator}',
      '{lift strap: B2-B3}',
      '{fit strap: B2-B4}',
      '{land core: handset.r1, onto: B2}',
      '{park core: handset.t1}',
      '{lift part: click}',
      '{bridge: hush-r}',
      '{fit part: new-one, with: {kind: resistor, from: A1, to: C4, resistance: 47 kΩ}}',
    )
    expect(await shown(page)).toEqual(said(library))
    quiet.expectQuiet()
  })

  it('cuts what is soldered, refuses what cannot be, and takes back one of three', async () => {
    const { page, quiet } = await onBench(chromium, site, 'sedge')
    await page.locator(thing('strap:B3-B4')).first().click()
    await during(page, () => page.getByRole('button', { name: 'Cut it' }).click())
    await page.locator(core('handset.r2')).first().click()
    await during(page, () => page.getByRole('button', { name: 'Park it, insulated' }).click())
    await during(page, async () => {
      await page.locator(core('handset.r1')).first().click()
      await page.locator(terminal('B3')).first().click()
    })
    expect(await movesOf(page)).toHaveLength(3)

    await page.locator(terminal('B4')).first().click()
    await page.getByLabel('Other terminal').selectOption('B5')
    await page.getByRole('button', { name: 'Fit a strap B4-B5' }).click()
    await page.locator('.bench-refusal').getByText('already fitted').waitFor()
    expect(await movesOf(page)).toHaveLength(3)
    await page.getByRole('button', { name: 'All right' }).focus()
    await page.keyboard.press('Enter')
    await page.locator('.bench-refusal').waitFor({ state: 'detached' })
    expect(await focused(page)).not.toBe('nothing')

    await page.getByRole('button', { name: /^Take back: park core/ }).focus()
    await during(page, () => page.keyboard.press('Enter'))
    expect(await focused(page)).not.toBe('nothing')
    expect(await movesOf(page)).toEqual(['cut strap B3-B4', 'land core handset.r1 on B3'])
    const left = asked('sedge', '{cut: B3-B4}', '{land core: handset.r1, onto: B3}')
    expect(await shown(page)).toEqual(said(left))
    quiet.expectQuiet()
  })
})
