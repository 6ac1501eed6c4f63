/** The bench by mouse, by keys alone and by touch, on the built page: what it shows is what the library says. */
import type { Page } from 'playwright-core'
import { figureText, meter } from 'ringproof'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { barriers } from './support/axe.ts'
import {
  asked,
  core,
  drag,
  during,
  flowsIn,
  focused,
  type Journey,
  movesOf,
  onBench,
  said,
  shelf,
  shown,
  terminal,
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

const sedge = (options: Parameters<typeof chromium.person>[0] = {}): Promise<Journey> =>
  onBench(chromium, site, 'sedge', options)

const TO_B3 = '{land core: handset.r2, onto: B3}'
/** The direct current through a set with its handset lifted. */
const LOOP = 'loop.current'

/** Presses arrow keys until the focus is there, each time along the longer side of what is left. */
async function arrowsTo(page: Page, selector: string): Promise<void> {
  for (let k = 0; k < 40; k += 1) {
    const left = await page.evaluate((goal) => {
      const [from, to] = [document.activeElement, document.querySelector(goal)].map((one) =>
        one?.getBoundingClientRect(),
      )
      if (from === undefined || to === undefined || document.activeElement === document.querySelector(goal))
        return undefined
      const middleOf = ({ left, top, width, height }: DOMRect): [number, number] => [
        left + width / 2,
        top + height / 2,
      ]
      const [[x, y], [goalX, goalY]] = [middleOf(from), middleOf(to)]
      return { across: goalX - x, down: goalY - y }
    }, selector)
    if (left === undefined) return
    const isAcross = Math.abs(left.across) > Math.abs(left.down)
    const way = isAcross ? (left.across > 0 ? 'Right' : 'Left') : left.down > 0 ? 'Down' : 'Up'
    await page.keyboard.press(`Arrow${way}`)
  }
}

/** Waits until the table of what flows says just this. */
async function flows(page: Page, amounts: readonly string[]): Promise<void> {
  await expect.poll(() => page.locator('.bench-flowing td.amount').allInnerTexts()).toEqual(amounts)
}

describe('the bench', () => {
  it('tells by mouse what a core on the wrong terminal does, and mends it by the moves that it names', async () => {
    const { page, quiet } = await sedge()
    expect(await shown(page)).toEqual(said(asked('sedge')))
    await during(page, () => drag(page, core('handset.r2'), terminal('B3')))
    const wrong = asked('sedge', TO_B3)
    expect(wrong.faults.map(({ fault }) => fault)).toContain('cores-joined')
    expect(said(wrong).states).toContain('speech.receives fails')
    expect(await shown(page)).toEqual(said(wrong))
    const fault = await page.locator('[data-fault="cores-joined"]').textContent()
    for (const { figure, mended } of wrong.faults[0]?.consequences ?? []) {
      expect(fault).toContain(figureText(figure))
      if (mended !== undefined) expect(fault).toContain(figureText(mended))
    }
    await during(page, () => page.locator('[data-fault="cores-joined"] .button.main').click())
    expect(await movesOf(page)).toEqual(['land core handset.r2 on B3', 'land core handset.r2 on B2'])
    expect(await shown(page)).toEqual(said(asked('sedge')))
    expect(await focused(page)).toBe('bench-verdicts-title')
    await during(page, () => page.keyboard.press('Control+z'))
    expect(await shown(page)).toEqual(said(wrong))
    await during(page, () => page.keyboard.press('Control+z'))
    expect(await movesOf(page)).toEqual([])
    await during(page, () => page.keyboard.press('Control+Shift+z'))
    expect(await movesOf(page)).toEqual(['land core handset.r2 on B3'])

    expect(await page.getByRole('status').allInnerTexts()).toContain(
      `Made again: one step. Now ${wrong.counts.fails} fail, 0 marginal.`,
    )
    quiet.expectQuiet()
  })

  it('does the same by keys alone, and never loses the focus', async () => {
    const { page, quiet } = await sedge()
    for (let k = 0; k < 60 && !(await focused(page)).startsWith('terminal:'); k += 1)
      await page.keyboard.press('Tab')
    await arrowsTo(page, core('handset.r2'))
    expect(await focused(page)).toBe('core:handset.r2')
    await page.keyboard.press('Enter')
    await page.keyboard.press('Escape')
    expect(await focused(page)).toBe('core:handset.r2')
    await page.keyboard.press('Enter')
    await arrowsTo(page, terminal('B3'))
    await during(page, () => page.keyboard.press('Enter'))
    expect(await focused(page)).toBe('terminal:B3')
    expect(await shown(page)).toEqual(said(asked('sedge', TO_B3)))
    await during(page, () => page.keyboard.press('Control+z'))
    expect(await focused(page)).toBe('terminal:B3')
    quiet.expectQuiet()
  })

  it('does it by touch on a small window, where everything fits', async () => {
    const { page, quiet } = await sedge({ hasTouch: true, viewport: { width: 360, height: 800 } })
    await during(page, async () => {
      await page.locator(core('handset.r2')).first().tap()
      await page.locator(terminal('B3')).first().tap()
    })
    expect(await shown(page)).toEqual(said(asked('sedge', TO_B3)))
    await during(page, () => page.getByRole('button', { name: /^Take back/ }).tap())
    expect(await shown(page)).toEqual(said(asked('sedge')))
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(360)
    quiet.expectQuiet()
  })

  it('works the handset, the dial, the line and the pair, and reads a meter', async () => {
    const { page, quiet } = await sedge()
    await flows(page, flowsIn('sedge', 'on-hook'))
    await page.getByRole('radio', { name: 'lifted' }).check()
    const lifted = flowsIn('sedge', 'off-hook')
    const loop = asked('sedge').figures.find(({ id, subject }) => id === LOOP && subject === 'sedge')
    if (loop === undefined) throw new Error(`the library gives no ${LOOP} of a sedge`)
    expect(lifted).toContain(figureText(loop))
    await flows(page, lifted)
    await page.getByRole('radio', { name: 'turned, pulse contact open' }).check()
    await flows(page, flowsIn('sedge', 'off-hook/break'))
    await page.getByRole('radio', { name: 'at rest' }).check()
    await page.getByRole('radio', { name: 'ringing arrives' }).check()
    await page.locator('.bench-flowing').getByText('alternating current').waitFor()
    await flows(page, flowsIn('sedge', 'off-hook/ringing'))
    await page.getByRole('radio', { name: 'reversed at the plug' }).check()
    await page.getByLabel('Red lead', { exact: true }).selectOption('B1')
    await page.getByLabel('Black lead', { exact: true }).selectOption('B2')
    const [reading] = meter(
      { target: 'set/sedge', between: ['B1', 'B2'], condition: 'off-hook' },
      shelf,
    ).readings
    // winding c alone lies between them: its resistance from the sheet, with the leads', beside the receiver
    expect(reading?.value).toBeGreaterThan(20)
    const shows = page.locator('.bench-reading')
    expect(Number(await shows.getAttribute('data-reading'))).toBe(reading?.value)
    expect(await shows.textContent()).toContain('Unplug the set')
    quiet.expectQuiet()
  })

  it('says whether the bell rings, and what lifting does while it rings', async () => {
    const { page, quiet } = await sedge()
    const said = page.locator('.bench-said')
    await page.getByRole('radio', { name: 'ringing arrives' }).check()
    await said.getByText(/^The bell rings: it gets ≈ [\d.]+ mA and needs 3.00 mA/).waitFor()
    await page.getByRole('radio', { name: 'reversed at the plug' }).check()
    await said.getByText(/^The bell does not ring: it gets ≈ [\d.]+ µA and needs 3.00 mA/).waitFor()
    await page.getByRole('radio', { name: 'lifted' }).check()
    const trips = asked('sedge').verdicts.find(({ check }) => check === 'line.answers-while-ringing')
    if (trips?.figure == null) throw new Error('the library tells no trip of a sedge')
    await said.getByText(figureText(trips.figure)).waitFor()
    quiet.expectQuiet()
  })

  it('keeps what a move comes to in view, shows a way in the picture, and lets it go with its verdict', async () => {
    const { page, quiet } = await sedge({ viewport: { width: 1440, height: 900 } })
    const tally = page.locator('.tally')
    const isInView = (selector: string): Promise<boolean> =>
      page.evaluate(
        (which) =>
          [...document.querySelectorAll(which)].some((one) => {
            const { top, bottom, height } = one.getBoundingClientRect()
            return height > 0 && top >= 0 && bottom <= innerHeight
          }),
        selector,
      )
    expect(await page.getByRole('link', { name: 'Save', exact: true }).count()).toBe(0)
    await during(page, () => drag(page, core('handset.r2'), terminal('B3')))
    const { counts } = asked('sedge', TO_B3)
    expect(await tally.textContent()).toMatch(
      new RegExp(`^\\s*${counts.fails} fails?,\\s+${counts.marginal} marginal$`),
    )
    expect(await isInView('.tally')).toBe(true)
    await page
      .locator('[data-fault="cores-joined"]')
      .getByRole('button', { name: 'Show it in the pictures' })
      .click()
    await expect.poll(() => isInView('.on-way, .on-path')).toBe(true)
    expect(await isInView('.tally')).toBe(true)
    await during(page, () => page.keyboard.press('Control+z'))
    await expect.poll(() => page.locator('.on-way, .on-path').count()).toBe(0)
    await page.keyboard.press('Control+Shift+z')
    await page.getByRole('link', { name: 'Save', exact: true }).click()
    await page.getByRole('heading', { level: 1, name: 'Files' }).waitFor()
    quiet.expectQuiet()
  })

  it('presses a recall key', async () => {
    const { page, quiet } = await onBench(chromium, site, 'brome')
    await page.getByRole('radio', { name: 'lifted' }).check()
    await page.getByRole('radio', { name: 'pressed' }).check()
    await flows(page, flowsIn('brome', 'off-hook/key'))
    quiet.expectQuiet()
  })

  it('asks before it forgets moves that are not saved', async () => {
    const { page, quiet } = await sedge()
    const another = page.getByRole('button', { name: 'Lay another set here', exact: true })
    await page.locator(core('handset.r2')).first().click()
    await during(page, () => page.getByRole('button', { name: 'Park it, insulated' }).click())
    await another.click()
    await page.getByRole('dialog').getByText('One move lies on sedge').waitFor()
    await page.keyboard.press('Escape')
    await expect.poll(() => focused(page)).toBe('Lay another set here')
    expect(await movesOf(page)).toHaveLength(1)
    await another.click()
    await page.getByRole('button', { name: 'Lay another set here, let them go' }).click()
    await page.getByRole('heading', { name: 'Bench', level: 1 }).waitFor()
    quiet.expectQuiet()
  })

  it.each(['light', 'dark'] as const)(
    'has no barrier in %s, wide or narrow, with a core in the hand and a fault shown',
    async (colorScheme) => {
      const { page } = await sedge({ colorScheme })
      await during(page, async () => {
        await page.locator(core('handset.r2')).first().click()
        await page.locator(terminal('B3')).first().click()
      })
      await page.locator(core('handset.t1')).first().click()
      expect(await page.locator('[data-fault]').count()).toBeGreaterThan(0)
      expect(await barriers(page)).toEqual([])
      await page.setViewportSize({ width: 360, height: 800 })
      expect(await barriers(page)).toEqual([])
    },
  )
})
