/** The frame of the page: the menu by mouse, keys and touch, the focus, light and dark, narrow pages and large text. */
import { afterAll, beforeAll, expect, test } from 'vitest'
import { barriers } from './support/axe.ts'
import { chromiumHere } from './support/chromium.ts'
import { type Site, staticSite } from './support/site.ts'
import { watch } from './support/watch.ts'

const chromium = chromiumHere()
let site: Site
beforeAll(async () => {
  site = await staticSite()
})
afterAll(async () => site?.close())

const VIEWS = [
  'Bench',
  'Premises',
  'Speech',
  'Find the fault',
  'Which set is it?',
  'Sheet',
  'Files',
  'Lesson',
]

test('every view opens by its link, its heading takes the focus, and the menu says which it is', async () => {
  const person = await chromium.person()
  const seen = await watch(person, site.origin)
  const page = await person.newPage()
  await page.goto(`${site.address}#view=files`)
  await page.getByRole('heading', { level: 1 }).waitFor()
  for (const name of [...VIEWS.slice(0, 6), 'Lesson', 'Files']) {
    await page.getByRole('link', { name, exact: true }).focus()
    await page.keyboard.press('Enter')
    await page.locator(`nav a[aria-current="page"]:text-is("${name}")`).waitFor()
    await page.waitForFunction(() => document.activeElement?.tagName === 'H1')
    expect(await page.locator('h1').count()).toBe(1)
    expect(await page.title()).toContain(name)
  }
  seen.expectQuiet()
  await person.close()
})

test('the token stays in the address when links are followed', async () => {
  const person = await chromium.person()
  const page = await person.newPage()
  await page.goto(`${site.address}#view=files&token=ab`)
  await page.getByRole('link', { name: 'Lesson' }).click()
  await page.waitForFunction(() => location.hash.includes('lesson') && location.hash.includes('token=ab'))
  await person.close()
})

test('on a telephone the menu folds, opens by touch, and closes by Escape with the focus on its button', async () => {
  const person = await chromium.person({
    viewport: { width: 360, height: 780 },
    hasTouch: true,
    isMobile: true,
  })
  const page = await person.newPage()
  await page.goto(`${site.address}#view=files`)
  const [menu, link] = [
    page.getByRole('button', { name: 'Menu' }),
    page.getByRole('link', { name: 'Lesson' }),
  ]
  await menu.waitFor()
  expect(await link.isVisible()).toBe(false)
  await menu.tap()
  expect(await link.isVisible()).toBe(true)
  expect((await link.boundingBox())?.height).toBeGreaterThanOrEqual(44)
  await menu.press('Escape')
  expect(await link.isVisible()).toBe(false)
  expect(await page.evaluate(() => document.activeElement?.textContent)).toBe('Menu')
  await menu.tap()
  await link.tap()
  await page.waitForFunction(() => location.hash.includes('lesson'))
  expect(await link.isVisible()).toBe(false)
  await person.close()
})

test.each([
  [360, '100%'],
  [768, '100%'],
  [768, '200%'],
  [3840, '100%'],
])('nothing overflows sideways at %i px and %s text', async (width, size) => {
  const person = await chromium.person({ viewport: { width, height: 900 } })
  const page = await person.newPage()
  await page.goto(`${site.address}#view=files`)
  await page.getByText('sedge', { exact: true }).waitFor()
  await page.evaluate((to) => {
    document.documentElement.style.fontSize = to
  }, size)
  expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0)
  await person.close()
})

test('dark is chosen against the system and outlives a reload; forced colours have no barriers', async () => {
  const person = await chromium.person()
  const page = await person.newPage()
  await page.goto(`${site.address}#view=files`)
  await page.getByRole('radio', { name: 'Dark' }).check()
  const ground = () => page.evaluate(() => getComputedStyle(document.body).backgroundColor)
  const dark = await ground()
  await page.reload()
  await page.getByRole('radio', { name: 'Dark' }).waitFor()
  expect(await ground()).toBe(dark)
  await page.getByRole('radio', { name: 'Light' }).check()
  expect(await ground()).not.toBe(dark)
  await page.emulateMedia({ forcedColors: 'active' })
  expect(await barriers(page)).toEqual([])
  await person.close()
})

test('paper is white and carries no menu', async () => {
  const person = await chromium.person({ colorScheme: 'dark' })
  const page = await person.newPage()
  await page.goto(`${site.address}#view=files`)
  await page.getByRole('heading', { level: 1, name: 'Files' }).waitFor()
  await page.emulateMedia({ media: 'print' })
  expect(await page.evaluate(() => getComputedStyle(document.body).backgroundColor)).toBe(
    'rgb(255, 255, 255)',
  )
  expect(await page.getByRole('navigation').isVisible()).toBe(false)
  await person.close()
})
