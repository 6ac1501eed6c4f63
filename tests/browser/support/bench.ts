/** A set on the bench of the built page, and what the library says of the same. */
import { readFileSync } from 'node:fs'
import type { BrowserContextOptions, Page } from 'playwright-core'
import { type CheckAnswer, check, figureText, openBench, type SheetText, textShelf } from 'ringproof'
import type { Chromium } from './chromium.ts'
import { PAGE, type Site } from './site.ts'
import { type Watch, watch } from './watch.ts'

/** The folder of the page under test. */
export const WEB: string = process.env.RINGPROOF_WEB ?? PAGE

const shelf: ReturnType<typeof textShelf> = textShelf(
  [],
  JSON.parse(readFileSync(`${WEB}/fleet.json`, 'utf8')) as SheetText[],
)

/** A set after moves, written as a rewire sheet writes them, asked of the library. */
export function asked(set: string, ...moves: readonly string[]): CheckAnswer {
  const lines = ['ringproof: 1', 'sheet: rewire', 'name: asked', `set: ${set}`, 'moves:']
  const text = [...lines, ...moves.map((one) => `  - ${one}`), ''].join('\n')
  const target =
    moves.length === 0 ? { target: `set/${set}` } : { target: 'asked', text: { file: 'asked.yaml', text } }
  return check(target, shelf)
}

/** The figures of a condition, as the library writes them. */
export function flowsIn(set: string, condition: string): string[] {
  const { figures } = openBench({ target: `set/${set}` }, shelf)
    .side([])
    .now({ condition })
  return figures.map((one) => figureText(one))
}

/** The sheets of the page. */
export { shelf }

export const terminal = (name: string): string => `.bench-terminals [data-thing="terminal:${name}"][tabindex]`
export const core = (name: string): string => `.bench-terminals [data-thing="core:${name}"][tabindex]`
export const thing = (name: string): string => `.bench-terminals [data-thing="${name}"][tabindex]`

export interface Journey {
  readonly page: Page
  readonly quiet: Watch
}

export async function onBench(
  chromium: Chromium,
  site: Site,
  set: string,
  options: BrowserContextOptions = {},
): Promise<Journey> {
  const person = await chromium.person(options)
  const quiet = await watch(person, site.origin)
  const page = await person.newPage()
  await page.goto(`${site.address}#view=bench&open=set/${set}`)
  await settled(page, 0)
  return { page, quiet }
}

/** Waits for a judgement after that one, the whole of it. */
async function settled(page: Page, after: number): Promise<void> {
  await page.waitForFunction(
    (before) =>
      Number(document.querySelector('[data-judged]')?.getAttribute('data-judged') ?? 0) > before &&
      document.querySelector('[data-faults]') !== null,
    after,
  )
}

/** Does something and waits until what follows from it is judged. */
export async function during(page: Page, act: () => Promise<void>): Promise<void> {
  const before = await page.evaluate(() =>
    Number(document.querySelector('[data-judged]')?.getAttribute('data-judged') ?? 0),
  )
  await act()
  await settled(page, before)
}

export interface Said {
  readonly states: string[]
  readonly faults: string[]
}

/** What the page says of each check, and the faults by name. */
export async function shown(page: Page): Promise<Said> {
  return page.evaluate(() => ({
    states: [...document.querySelectorAll('[data-check]')]
      .map((one) => `${one.getAttribute('data-check')} ${one.getAttribute('data-state')}`)
      .sort(),
    faults: [...document.querySelectorAll('[data-fault]')]
      .map((one) => one.getAttribute('data-fault') ?? '')
      .sort(),
  }))
}

/** The same of the library's answer. */
export function said({ verdicts, faults }: CheckAnswer): Said {
  return {
    states: verdicts.map((one) => `${one.check} ${one.state}`).sort(),
    faults: faults.map(({ fault }) => fault).sort(),
  }
}

export const movesOf = (page: Page): Promise<string[]> => page.locator('.bench-move').allInnerTexts()

/** What has the focus: the thing, the id, or the words. */
export const focused = (page: Page): Promise<string> =>
  page.evaluate(() => {
    const { activeElement: one } = document
    if (one === null || one === document.body) return 'nothing'
    return (
      one.getAttribute('data-thing') ??
      (one.id === '' || one.id.startsWith('P') ? (one.textContent ?? '') : one.id)
    )
  })

export async function middle(page: Page, selector: string): Promise<readonly [number, number]> {
  const box = await page.locator(selector).first().boundingBox()
  if (box === null) throw new Error(`${selector} is not to be seen`)
  return [box.x + box.width / 2, box.y + box.height / 2]
}

/** Drags by mouse from the middle of one thing to the middle of another; both must be in sight. */
export async function drag(page: Page, from: string, to: string): Promise<void> {
  await page.locator(from).first().scrollIntoViewIfNeeded()
  await page.mouse.move(...(await middle(page, from)))
  await page.mouse.down()
  await page.mouse.move(...(await middle(page, to)), { steps: 6 })
  await page.mouse.up()
}
