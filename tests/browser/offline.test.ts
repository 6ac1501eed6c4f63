import { cpSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { chromiumHere } from './support/chromium.ts'
import { openSet } from './support/open-set.ts'
import { PAGE, scratchFolder, staticSite } from './support/site.ts'
import { watch } from './support/watch.ts'

const chromium = chromiumHere()

test('a page from any static server works, and solves, once the server has gone', async () => {
  const site = await staticSite()
  const person = await chromium.person()
  const seen = await watch(person, site.origin)
  const page = await person.newPage()
  await page.goto(site.address)
  await page.getByRole('heading', { name: 'Sets', exact: true }).waitFor()
  await page.evaluate(async () => {
    const { active } = await navigator.serviceWorker.ready
    if (active?.state !== 'activated')
      await new Promise((resolve) => active?.addEventListener('statechange', resolve, { once: true }))
  })
  expect(await page.locator('link[rel=manifest]').count()).toBe(1)
  seen.expectQuiet()
  await site.close()

  await page.reload()
  await openSet(page, 'sedge')
  // views that were never opened before are there as well
  await page.goto(`${site.address}#view=lesson`)
  await page.getByRole('heading').first().waitFor()
  seen.expectQuiet()
  await person.close()
})

test("two pages in folders of one server keep out of each other's way, and nothing but their own files is kept", async () => {
  const both = scratchFolder()
  cpSync(PAGE, join(both, 'one'), { recursive: true })
  cpSync(PAGE, join(both, 'two'), { recursive: true })
  const site = await staticSite(both, '/')
  const person = await chromium.person()
  const page = await person.newPage()
  try {
    for (const name of ['one', 'two']) {
      await page.goto(`${site.origin}/${name}/`)
      await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined))
    }
    const kept = await page.evaluate(async () => {
      const names = await caches.keys()
      const files = await Promise.all(
        names.map(async (name) => (await (await caches.open(name)).keys()).map(({ url }) => url)),
      )
      return { names: names.length, files: files.flat() }
    })
    expect(kept.names).toBe(2)
    expect(kept.files.filter((url) => !/\/(one|two)\//.test(url))).toEqual([])
    expect(kept.files.some((url) => url.endsWith('fleet.json'))).toBe(true)
  } finally {
    await person.close()
    await site.close()
    rmSync(both, { recursive: true, force: true })
  }
})
