/** Unsaved work outlives the page, and the user's folder behind the server. */
import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import { describe, expect, test } from 'vitest'
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

describe('the folder behind the server', () => {
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
    await page.getByText('Saved as mine.yaml').first().waitFor()
    expect(readFileSync(file, 'utf8')).toContain('title: Changed')
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
