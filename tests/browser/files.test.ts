/** Files in the browser's own store: begin, save, two tabs in conflict, carry to another browser. */
import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { barriers } from './support/axe.ts'
import { chromiumHere } from './support/chromium.ts'
import { type Site, scratchFolder, staticSite } from './support/site.ts'
import { watch } from './support/watch.ts'

const chromium = chromiumHere()
let site: Site
beforeAll(async () => {
  site = await staticSite()
})
afterAll(async () => site?.close())

const own = (page: Page) => page.getByRole('region', { name: 'Your own sheets' })
const toFiles = async (page: Page): Promise<void> => {
  await page.getByRole('link', { name: 'Files' }).click()
  await page.getByRole('heading', { level: 1, name: 'Files' }).waitFor()
}
const begin = async (page: Page, set: string): Promise<void> => {
  await page.goto(`${site.address}#view=files`)
  await page
    .getByRole('listitem')
    .filter({ has: page.getByText(set, { exact: true }) })
    .getByRole('button')
    .first()
    .click()
  await page.getByRole('heading', { level: 1, name: set }).waitFor()
  await toFiles(page)
}
const saveAs = async (page: Page, name: string, title: string): Promise<void> => {
  await page.getByLabel('Name of the sheet').fill(name)
  await page.getByLabel('Title', { exact: true }).fill(title)
  await page.getByRole('button', { name: /^Save/ }).click()
}

test('a sheet is saved, opened in another tab and saved there; the first tab sees both texts and keeps its own', async () => {
  const person = await chromium.person()
  const seen = await watch(person, site.origin)
  const page = await person.newPage()
  await begin(page, 'sedge')
  await saveAs(page, 'mine', 'First')
  await page.getByText('Saved as mine.yaml').first().waitFor()

  const other = await person.newPage()
  await other.goto(`${site.address}#view=files`)
  await own(other).getByRole('button', { name: 'Open: First' }).click()
  await other.getByRole('heading', { level: 1, name: 'mine' }).waitFor()
  await toFiles(other)
  await saveAs(other, 'mine', 'Theirs')
  await other.getByText('Saved as mine.yaml').first().waitFor()

  await saveAs(page, 'mine', 'Second')
  const dialog = page.getByRole('dialog', { name: 'mine.yaml has become another' })
  await dialog.waitFor()
  expect(await dialog.getByLabel('Yours, not saved yet').inputValue()).toContain('title: Second')
  expect(await dialog.getByLabel('Theirs, in the file now').inputValue()).toContain('title: Theirs')
  expect(await barriers(page)).toEqual([])
  await page.keyboard.press('Escape')
  await dialog.waitFor({ state: 'detached' })
  expect(await page.evaluate(() => document.activeElement?.textContent)).toBe('Save')
  await page.keyboard.press('Enter')
  await dialog.getByRole('button', { name: 'Keep yours under this name' }).click()
  await own(page).getByText('Second', { exact: true }).waitFor()
  await own(page).getByText('Theirs', { exact: true }).waitFor()
  await page.reload()
  await own(page).getByText('Theirs', { exact: true }).waitFor()
  seen.expectQuiet()
  await person.close()
})

test('everything goes to another browser in one file, and a bad file loses nothing', async () => {
  const [one, two] = [await chromium.person({ acceptDownloads: true }), await chromium.person()]
  const page = await one.newPage()
  await begin(page, 'fescue')
  await saveAs(page, 'carried', 'Carried over')
  await own(page).getByText('Carried over').waitFor()
  const coming = page.waitForEvent('download')
  await page.getByRole('button', { name: 'Export all (1)' }).click()
  const file = join(scratchFolder(), 'all.json')
  await (await coming).saveAs(file)

  const there = await two.newPage()
  const seen = await watch(two, site.origin)
  await there.goto(`${site.address}#view=files`)
  await there.getByLabel('Import files').setInputFiles(file)
  await own(there).getByText('Carried over').waitFor()
  const bad = join(scratchFolder(), 'bad.json')
  writeFileSync(bad, readFileSync(file, 'utf8').slice(0, 40))
  await there.getByLabel('Import files').setInputFiles(bad)
  await there.getByText('The file is not JSON').waitFor()
  await own(there).getByText('Carried over').waitFor()
  seen.expectQuiet()
  await Promise.all([one.close(), two.close()])
})

test('hostile files: nothing in them is executed, and what is wrong is told', async () => {
  const person = await chromium.person()
  const seen = await watch(person, site.origin)
  const page = await person.newPage()
  await page.goto(`${site.address}#view=files`)
  const folder = scratchFolder()
  const script = '<script>globalThis.stolen = 1</script><img src=x onerror="globalThis.stolen = 1">'
  const sheets = [
    {
      file: 'odd.yaml',
      text: `ringproof: 1\nsheet: rewire\nname: odd\ntitle: '${script}'\nset: sedge\nmoves: []\n`,
    },
    { file: '../out.yaml', text: 'sheet: set' },
    { file: '__proto__.yaml', text: '__proto__: {stolen: 1}\nconstructor: {prototype: {stolen: 1}}\n' },
    { file: 'long.yaml', text: 'x'.repeat((1 << 20) + 1) },
    { file: 'deep.yaml', text: '['.repeat(20_000) },
  ]
  const put = async (name: string, text: string): Promise<void> => {
    const path = join(folder, name)
    writeFileSync(path, text)
    await page.getByLabel('Import files').setInputFiles(path)
  }
  // JSON.stringify leaves this key out
  const proto = '{"__proto__": {"stolen": 1}, "file": "own.yaml"}'
  await put(
    'all.json',
    `{"ringproof": "sheets/1", "__proto__": {"stolen": 1}, "sheets": [${proto}, ${sheets.map((one) => JSON.stringify(one)).join(', ')}]}`,
  )
  await page.getByText('3 taken in').waitFor()
  await page.getByText('`long.yaml` is longer than 1 MiB').waitFor()
  await page.getByText('No part of the name may begin with a dot').waitFor()
  await page.getByText('Sheet 1: it has no file name or no text').waitFor()
  // the title stands there as text
  await own(page).getByText(script).first().waitFor()
  expect(await page.evaluate(() => ('stolen' in globalThis ? 'stolen' : Object.keys({}).length))).toBe(0)
  expect(await page.evaluate(() => (Object.prototype as { stolen?: unknown }).stolen)).toBe(undefined)
  await put('deep.json', `{"ringproof": "sheets/1", "sheets": ${'['.repeat(50_000)}${']'.repeat(50_000)}}`)
  await page.getByText('0 taken in').waitFor()
  await put('big.yaml', '#'.repeat((1 << 20) + 1))
  await page.getByText('big.yaml: It is longer than 1 MiB').waitFor()
  // opened on the bench its title is text there too, and the sheet view shows what is wrong with the others
  await own(page)
    .getByRole('button', { name: /^Open: <script>/ })
    .click()
  await page.getByRole('heading', { level: 1, name: 'odd' }).waitFor()
  await page.getByRole('main').getByText(script).first().waitFor()
  await page.goto(`${site.address}#view=sheet`)
  for (const file of ['deep.yaml', '__proto__.yaml']) {
    await page.getByLabel('Which sheet').selectOption(file)
    await page.locator('#sheet-state', { hasText: /problem/ }).waitFor()
  }
  expect(await page.evaluate(() => 'stolen' in globalThis)).toBe(false)
  seen.expectQuiet()
  await person.close()
}, 60_000)

test.each(['light', 'dark'] as const)('the view has no barriers in %s', async (colorScheme) => {
  const person = await chromium.person({ colorScheme })
  const page = await person.newPage()
  await begin(page, 'sedge')
  expect(await barriers(page)).toEqual([])
  await person.close()
})
