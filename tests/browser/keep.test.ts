/** Unsaved work outlives the page, and the user's folder behind the server. */
import { existsSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Locator, Page } from 'playwright-core'
import { describe, expect, test } from 'vitest'
import { core, during, movesOf, shown, terminal } from './support/bench.ts'
import { chromiumHere } from './support/chromium.ts'
import { benchSite, staticSite } from './support/site.ts'
import { watch } from './support/watch.ts'

const chromium = chromiumHere()

const begin = async (page: Page, set: string): Promise<void> => {
  await page
    .getByRole('listitem')
    .filter({ has: page.getByText(set, { exact: true }) })
    .getByRole('button')
    .first()
    .click()
  await page.getByRole('heading', { level: 1, name: set }).waitFor()
}

describe('unsaved work', () => {
  test('is there again after a reload, and is offered when its tab was closed', async () => {
    const site = await staticSite()
    const person = await chromium.person()
    const seen = await watch(person, site.origin)
    const page = await person.newPage()
    await page.goto(`${site.address}#view=files`)
    await begin(page, 'sedge')
    // what the tab notes, as if a move had been made and not saved
    await page.waitForFunction(() =>
      Object.keys(localStorage).some((key) => key.startsWith('ringproof/work/')),
    )
    await page.reload()
    await page.getByRole('heading', { level: 1, name: 'sedge' }).waitFor()
    await page.evaluate(() => {
      const key = Object.keys(localStorage).find((one) => one.startsWith('ringproof/work/')) ?? ''
      const noted = JSON.parse(localStorage.getItem(key) ?? '{}')
      const left = {
        ...noted,
        tab: 'gone',
        work: { ...noted.work, title: 'Left behind', moves: [{ strap: 'B2-B3', remove: true }] },
      }
      localStorage.setItem('ringproof/work/gone', JSON.stringify(left))
    })
    const other = await person.newPage()
    await other.goto(`${site.address}#view=files`)
    await other.getByText('Left behind, 1 move').waitFor()
    await other.getByRole('button', { name: 'Let it go' }).click()
    expect(await other.evaluate(() => localStorage.getItem('ringproof/work/gone'))).toBe(null)
    seen.expectQuiet()
    await person.close()
    await site.close()
  })

  test.each([
    ['plain files', async () => staticSite()],
    ['the server', async () => benchSite(['sets/sedge.yaml'])],
  ] as const)(
    'is judged again after every reload from %s',
    async (_from, made) => {
      const site = await made()
      const person = await chromium.person()
      const seen = await watch(person, site.origin)
      const page = await person.newPage()
      const [before = '', word] = site.address.split('#')
      await page.goto(`${before}#view=bench&open=set/sedge${word === undefined ? '' : `&${word}`}`)
      const verdicts = page.locator('.bench-verdicts')
      await page.locator('[data-faults]').waitFor()
      await page.locator(core('handset.r2')).first().click()
      await during(page, () => page.locator(terminal('B3')).first().click())
      const moved = await shown(page)
      expect(moved.states).toContain('speech.receives fails')
      expect(moved.faults).toContain('cores-joined')
      // what the tab notes is written by then
      await page.waitForFunction(() =>
        Object.keys(localStorage).some((key) => localStorage.getItem(key)?.includes('handset.r2') === true),
      )
      for (let turn = 0; turn < 5; turn += 1) {
        await page.reload()
        await page.locator('[data-faults]').waitFor()
        expect(await shown(page)).toEqual(moved)
        expect(await movesOf(page)).toEqual(['land core handset.r2 on B3'])
        expect(await verdicts.locator('.problems, .notice.wrong').count()).toBe(0)
        expect(await verdicts.textContent()).not.toContain('name-unknown')
      }
      seen.expectQuiet()
      await person.close()
      await site.close()
    },
    60_000,
  )

  test('that makes no sense any more is passed over', async () => {
    const site = await staticSite()
    const person = await chromium.person()
    const seen = await watch(person, site.origin)
    const page = await person.newPage()
    await page.goto(`${site.address}#view=files`)
    await page.evaluate(() => localStorage.setItem('ringproof/work/spoilt', '{"tab": 3'))
    await page.reload()
    await page.getByText('sedge', { exact: true }).waitFor()
    seen.expectQuiet()
    await person.close()
    await site.close()
  })
})

const ownRow = (page: Page, file: string): Locator =>
  page.getByRole('region', { name: 'Your own sheets' }).locator('li', { hasText: file })

/** Saves again over another program's text, and comes to the choice. */
async function clash(page: Page, file: string, title: string): Promise<Locator> {
  writeFileSync(file, `${readFileSync(file, 'utf8')}# by another program, before ${title}\n`)
  await page.getByLabel('Title', { exact: true }).fill(title)
  await page.getByRole('button', { name: 'Save', exact: true }).click()
  const dialog = page.getByRole('dialog', { name: 'mine.yaml has become another' })
  await dialog.waitFor()
  return dialog
}

describe('the folder behind the server', () => {
  test('two tabs and another program: each choice does what it says, and a reload keeps what is not saved', async () => {
    const site = await benchSite(['sets/sedge.yaml'])
    const person = await chromium.person()
    const seen = await watch(person, site.origin)
    const page = await person.newPage()
    await page.goto(site.address.replace('#', '#view=bench&open=set/sedge&'))
    await page.locator('[data-judged]:not([data-judged="0"])').waitFor()
    await page.getByRole('link', { name: 'Files' }).click()
    await page.getByLabel('Name of the sheet').fill('mine')
    await page.getByRole('button', { name: 'Save as a new sheet' }).click()
    const file = join(site.folder, 'mine.yaml')
    await expect.poll(() => existsSync(file)).toBe(true)
    await page.getByText('Saved as mine.yaml').first().waitFor()
    // another tab saves over it: the first one's text would be lost
    const other = await person.newPage()
    await other.goto(`${site.origin}/#view=files&token=${site.token}`)
    await ownRow(other, 'mine.yaml').getByRole('button', { name: /^Open/ }).click()
    await other.getByRole('heading', { level: 1, name: 'mine' }).waitFor()
    await other.getByRole('link', { name: 'Files' }).click()
    await other.getByLabel('Title', { exact: true }).fill('From the other tab')
    await other.getByRole('button', { name: 'Save', exact: true }).click()
    await expect.poll(() => readFileSync(file, 'utf8')).toContain('title: From the other tab')
    await other.close()
    // keep both
    await page.getByLabel('Title', { exact: true }).fill('From the first tab')
    await page.getByRole('button', { name: 'Save', exact: true }).click()
    const dialog = page.getByRole('dialog', { name: 'mine.yaml has become another' })
    await dialog.getByRole('button', { name: 'Keep yours under this name' }).click()
    const second = join(site.folder, 'mine-2.yaml')
    await expect
      .poll(() => existsSync(second) && readFileSync(second, 'utf8'))
      .toContain('From the first tab')
    expect(readFileSync(file, 'utf8')).toContain('title: From the other tab')
    // what is not saved outlives a reload, and the word in the address does too
    await page.getByRole('link', { name: 'Bench' }).click()
    await page.locator('[data-judged]:not([data-judged="0"])').waitFor()
    await page.reload()
    await page.getByRole('heading', { level: 1, name: 'mine-2' }).waitFor()
    await page.getByText('From the first tab').first().waitFor()
    expect(new URLSearchParams(new URL(page.url()).hash.slice(1)).get('token')).toBe(site.token)
    await page.getByRole('link', { name: 'Files' }).click()
    await page.getByRole('region', { name: 'Your own sheets' }).getByText('From the other tab').waitFor()
    // theirs is taken
    await ownRow(page, 'mine.yaml').getByRole('button', { name: /^Open/ }).click()
    await page.getByRole('heading', { level: 1, name: 'mine', exact: true }).waitFor()
    await page.getByRole('link', { name: 'Files' }).click()
    const theirs = await clash(page, file, 'dropped')
    await theirs.getByRole('button', { name: 'Take theirs and drop yours' }).click()
    await theirs.waitFor({ state: 'detached' })
    expect(readFileSync(file, 'utf8')).toContain('before dropped')
    await expect.poll(() => page.getByLabel('Title', { exact: true }).inputValue()).toBe('From the other tab')
    // a conflict is an answer of the server, which a browser writes down as an error of its own
    expect(seen.noticed.filter((one) => !one.includes('409'))).toEqual([])
    await person.close()
    await site.close()
  }, 90_000)

  test('gets the sheet, and a foreign writer is not written over', async () => {
    const site = await benchSite()
    const person = await chromium.person()
    const page = await person.newPage()
    await page.goto(site.address.replace('#', '#view=files&'))
    await begin(page, 'sedge')
    await page.getByRole('link', { name: 'Files' }).click()
    await page.getByLabel('Name of the sheet').fill('mine')
    await page.getByRole('button', { name: 'Save as a new sheet' }).click()
    await page.getByText('Saved as mine.yaml').first().waitFor()
    const file = join(site.folder, 'mine.yaml')
    const foreign = `${readFileSync(file, 'utf8')}# by another program\n`
    writeFileSync(file, foreign)
    await page.getByLabel('Title', { exact: true }).fill('Changed')
    await page.getByRole('button', { name: 'Save', exact: true }).click()
    const dialog = page.getByRole('dialog', { name: 'mine.yaml has become another' })
    expect(await dialog.getByLabel('Theirs, in the file now').inputValue()).toBe(foreign)
    expect(readFileSync(file, 'utf8')).toBe(foreign)
    await dialog.getByRole('button', { name: 'Write yours over theirs' }).click()
    await expect.poll(() => readFileSync(file, 'utf8'), { timeout: 20_000 }).toContain('title: Changed')
    await person.close()
    await site.close()
  })

  test('that is out of reach is told plainly, and the page goes on', async () => {
    const site = await benchSite()
    const person = await chromium.person()
    const page = await person.newPage()
    await page.goto(site.address.replace(/#.*/, '#view=files&token=wrong'))
    await page.getByText('The server does not know the word in this address').waitFor()
    await page.getByText('sedge', { exact: true }).waitFor()
    await person.close()
    await site.close()
  })
})
