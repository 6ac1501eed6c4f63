/** The bench by mouse, by keys alone and by touch, on the built page: what it shows is what the library says. */
import { readFileSync } from 'node:fs'
import type { Page } from 'playwright-core'
import { type CheckAnswer, check, figureText, type SheetText, textShelf } from 'ringproof'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { barriers } from './support/axe.ts'
import { chromiumHere } from './support/chromium.ts'
import { PAGE, type Site, staticSite } from './support/site.ts'
import { type Watch, watch } from './support/watch.ts'

const WEB = process.env.RINGPROOF_WEB ?? PAGE
const fleet = JSON.parse(readFileSync(`${WEB}/fleet.json`, 'utf8')) as SheetText[]
const chromium = chromiumHere()
let site: Site

beforeAll(async () => {
  site = await staticSite(WEB)
})
afterAll(() => site.close())

/** The same moves asked of the library. */
function asked(...moves: readonly string[]): CheckAnswer {
  const text = ['ringproof: 1', 'sheet: rewire', 'name: asked', 'set: sedge', 'moves:', ...moves, ''].join(
    '\n',
  )
  const target =
    moves.length === 0 ? { target: 'set/sedge' } : { target: 'asked', text: { file: 'asked.yaml', text } }
  return check(target, textShelf([], fleet))
}

const TO_B3 = '  - {land core: handset.r2, onto: B3}'
const terminal = (name: string): string => `.bench-terminals [data-thing="terminal:${name}"][tabindex]`
const core = (name: string): string => `.bench-terminals [data-thing="core:${name}"][tabindex]`

interface Journey {
  readonly page: Page
  readonly quiet: Watch
}

async function sedge(options: Parameters<typeof chromium.person>[0] = {}): Promise<Journey> {
  const person = await chromium.person(options)
  const quiet = await watch(person, site.origin)
  const page = await person.newPage()
  await page.goto(`${site.address}#view=bench&open=set/sedge`)
  await settled(page, 0)
  return { page, quiet }
}

const turn = (page: Page): Promise<number> =>
  page.evaluate(() => Number(document.querySelector('[data-judged]')?.getAttribute('data-judged') ?? 0))

/** Waits for a judgement after that one, the whole of it. */
async function settled(page: Page, after: number): Promise<void> {
  await page.waitForFunction(
    (before) =>
      Number(document.querySelector('[data-judged]')?.getAttribute('data-judged') ?? 0) > before &&
      document.querySelector('[data-faults]') !== null,
    after,
  )
}

async function during(page: Page, act: () => Promise<void>): Promise<void> {
  const before = await turn(page)
  await act()
  await settled(page, before)
}

/** What the page says of each check, and the faults by name. */
async function shown(page: Page): Promise<{ readonly states: string[]; readonly faults: string[] }> {
  return page.evaluate(() => ({
    states: [...document.querySelectorAll('[data-check]')]
      .map((one) => `${one.getAttribute('data-check')} ${one.getAttribute('data-state')}`)
      .sort(),
    faults: [...document.querySelectorAll('[data-fault]')]
      .map((one) => one.getAttribute('data-fault') ?? '')
      .sort(),
  }))
}

function said({ verdicts, faults }: CheckAnswer): { readonly states: string[]; readonly faults: string[] } {
  return {
    states: verdicts.map((one) => `${one.check} ${one.state}`).sort(),
    faults: faults.map(({ fault }) => fault).sort(),
  }
}

async function middle(page: Page, selector: string): Promise<readonly [number, number]> {
  const box = await page.locator(selector).first().boundingBox()
  if (box === null) throw new Error(`${selector} is not to be seen`)
  return [box.x + box.width / 2, box.y + box.height / 2]
}

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

describe('the bench', () => {
  it('tells by mouse what a core on the wrong terminal does, and that the right one mends it', async () => {
    const { page, quiet } = await sedge()
    expect(await shown(page)).toEqual(said(asked()))
    await during(page, async () => {
      await page.locator(core('handset.r2')).first().scrollIntoViewIfNeeded()
      await page.mouse.move(...(await middle(page, core('handset.r2'))))
      await page.mouse.down()
      await page.mouse.move(...(await middle(page, terminal('B3'))), { steps: 6 })
      await page.mouse.up()
    })
    const wrong = asked(TO_B3)
    expect(wrong.faults.map(({ fault }) => fault)).toContain('cores-joined')
    expect(said(wrong).states).toContain('speech.receives fails')
    expect(await shown(page)).toEqual(said(wrong))
    const fault = await page.locator('[data-fault="cores-joined"]').textContent()
    for (const { figure, mended } of wrong.faults[0]?.consequences ?? []) {
      expect(fault).toContain(figureText(figure))
      if (mended !== undefined) expect(fault).toContain(figureText(mended))
    }
    await during(page, async () => {
      await page.locator(core('handset.r2')).first().click()
      await page.locator(terminal('B2')).first().click()
    })
    expect(await shown(page)).toEqual(said(asked()))
    await during(page, () => page.keyboard.press('Control+z'))
    expect(await shown(page)).toEqual(said(wrong))
    await during(page, () => page.keyboard.press('Control+z'))
    expect(await page.locator('.bench-move').count()).toBe(0)
    await during(page, () => page.keyboard.press('Control+Shift+z'))
    expect(await page.locator('.bench-move').allInnerTexts()).toEqual(['land core handset.r2 on B3'])
    quiet.expectQuiet()
  })

  it('does the same by keys alone, and never loses the focus', async () => {
    const { page, quiet } = await sedge()
    const at = (): Promise<string | null | undefined> =>
      page.evaluate(() => document.activeElement?.getAttribute('data-thing'))
    for (let k = 0; k < 60 && (await at())?.includes(':') !== true; k += 1) await page.keyboard.press('Tab')
    await arrowsTo(page, core('handset.r2'))
    expect(await at()).toBe('core:handset.r2')
    await page.keyboard.press('Enter')
    await page.keyboard.press('Escape')
    expect(await at()).toBe('core:handset.r2')
    await page.keyboard.press('Enter')
    await arrowsTo(page, terminal('B3'))
    await during(page, () => page.keyboard.press('Enter'))
    expect(await at()).toBe('terminal:B3')
    expect(await shown(page)).toEqual(said(asked(TO_B3)))
    quiet.expectQuiet()
  })

  it('does it by touch on a small window, where everything fits', async () => {
    const { page, quiet } = await sedge({ hasTouch: true, viewport: { width: 360, height: 800 } })
    await during(page, async () => {
      await page.locator(core('handset.r2')).first().tap()
      await page.locator(terminal('B3')).first().tap()
    })
    expect(await shown(page)).toEqual(said(asked(TO_B3)))
    await during(page, () => page.getByRole('button', { name: /^Take back/ }).tap())
    expect(await shown(page)).toEqual(said(asked()))
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(360)
    quiet.expectQuiet()
  })

  it('works the handset, the line and the pair, and reads a meter', async () => {
    const { page, quiet } = await sedge()
    await page.getByRole('radio', { name: 'lifted' }).check()
    const loop = asked().figures.find(({ id, subject }) => id === 'loop.current' && subject === 'sedge')
    const flowing = page.locator('.bench-flowing')
    if (loop !== undefined) await flowing.getByText(figureText(loop)).first().waitFor()
    await page.getByRole('radio', { name: 'ringing arrives' }).check()
    await flowing.getByText('alternating current').waitFor()
    await page.getByRole('radio', { name: 'reversed at the plug' }).check()
    await page.getByLabel('Red lead', { exact: true }).selectOption('B1')
    await page.getByLabel('Black lead', { exact: true }).selectOption('B2')
    // winding c alone lies between them: its resistance from the sheet, with the leads', beside the receiver
    const reading = Number(await page.locator('[data-reading]').getAttribute('data-reading'))
    expect(reading).toBeGreaterThan(20)
    expect(reading).toBeLessThan(30)
    expect(await page.locator('.bench-reading').textContent()).toContain('Unplug the set')
    quiet.expectQuiet()
  })

  it('refuses a move that the wiring does not allow, and tells why', async () => {
    const { page, quiet } = await sedge()
    await page.locator(terminal('B3')).first().click()
    await page.getByLabel('Other terminal').selectOption('B4')
    await page.getByRole('button', { name: 'Fit a strap B3-B4' }).click()
    await page.locator('.bench-refusal').getByText('already fitted').waitFor()
    expect(await page.locator('.bench-move').count()).toBe(0)
    quiet.expectQuiet()
  })

  it.each(['light', 'dark'] as const)('has no barrier in %s', async (colorScheme) => {
    const { page } = await sedge({ colorScheme })
    await page.locator(core('handset.r2')).first().click()
    expect(await barriers(page)).toEqual([])
  })
})
