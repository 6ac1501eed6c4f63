import { createHash } from 'node:crypto'
import { cpSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import { expect, test, vi } from 'vitest'
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

test('a newer build comes when no window of the old one is open, and half a build never', async () => {
  const folder = scratchFolder()
  cpSync(PAGE, folder, { recursive: true })
  const site = await staticSite(folder, '/')
  const person = await chromium.person()
  const file = (name: string): string => join(folder, name)
  const sumOf = (text: string): string => `sha256-${createHash('sha256').update(text).digest('base64')}`
  const isNewer = async (page: Page): Promise<boolean> =>
    (await page.locator('meta[name=newer]').count()) === 1
  try {
    const page = await person.newPage()
    await page.goto(site.address)
    await page.evaluate(async () => {
      const { active } = await navigator.serviceWorker.ready
      while (active?.state !== 'activated') await new Promise((resolve) => setTimeout(resolve, 20))
    })
    /** Looks for a newer worker and waits until that has come to something. */
    const update = (): Promise<string> =>
      page.evaluate(async () => {
        const registration = await navigator.serviceWorker.ready
        const { installing } = await registration.update().catch(() => registration)
        while (installing?.state === 'installing') await new Promise((resolve) => setTimeout(resolve, 20))
        return installing?.state ?? 'none'
      })
    const old = readFileSync(file('index.html'), 'utf8')
    const fresh = old.replace('<title>', '<meta name="newer" /><title>')
    const worker = readFileSync(file('service-worker.js'), 'utf8')
    expect(worker).toContain(sumOf(old))
    // the worker has come, the page not yet
    writeFileSync(
      file('service-worker.js'),
      worker.replace(sumOf(old), sumOf(fresh)).replace(/BUILD = "./, 'BUILD = "x'),
    )
    expect(await update()).toBe('redundant')
    await page.reload()
    expect(await isNewer(page)).toBe(false)
    writeFileSync(file('index.html'), fresh)
    expect(await update()).toBe('installed')
    await page.reload()
    expect(await isNewer(page)).toBe(false)
    await page.close()
    await vi.waitFor(async () => {
      const next = await person.newPage()
      await next.goto(site.address)
      const is = await isNewer(next)
      await next.close()
      expect(is).toBe(true)
    }, 10_000)
    await site.close()
    const last = await person.newPage()
    await last.goto(site.address)
    expect(await isNewer(last)).toBe(true)
    expect(await last.evaluate(async () => (await caches.keys()).length)).toBe(1)
  } finally {
    await person.close()
    await site.close().catch(() => {})
    rmSync(folder, { recursive: true, force: true })
  }
})
