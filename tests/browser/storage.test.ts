/** What goes wrong with keeping is told in plain words, and nothing that the page holds is lost by it. */
import type { BrowserContext, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { chromiumHere } from './support/chromium.ts'
import { benchSite, type Site, staticSite } from './support/site.ts'
import { watch } from './support/watch.ts'

const chromium = chromiumHere()
let site: Site
beforeAll(async () => {
  site = await staticSite()
})
afterAll(async () => site?.close())

/** Opens Files with the sedge on the bench. */
async function files(person: BrowserContext, address: string = site.address): Promise<Page> {
  const page = await person.newPage()
  const { origin, pathname, hash } = new URL(address)
  const more = new URLSearchParams(hash.slice(1))
  more.delete('view')
  await page.goto(`${origin}${pathname}#view=bench&open=set/sedge&${more}`)
  await page.locator('[data-judged]:not([data-judged="0"])').waitFor()
  await page.getByRole('link', { name: 'Files' }).click()
  await page.getByRole('heading', { level: 1, name: 'Files' }).waitFor()
  return page
}

async function saved(page: Page, name: string): Promise<void> {
  await page.getByLabel('Name of the sheet').fill(name)
  await page.getByRole('button', { name: /^Save/ }).click()
}

describe('a browser', () => {
  test('that keeps nothing is told, and the page works on', async () => {
    const person = await chromium.person()
    const seen = await watch(person, site.origin)
    await person.addInitScript(() => {
      const shut = (): never => {
        throw new DOMException('shut', 'SecurityError')
      }
      for (const name of ['localStorage', 'sessionStorage', 'indexedDB'])
        Object.defineProperty(globalThis, name, { get: shut })
    })
    const page = await files(person)
    await page.getByText('This browser keeps nothing for the page').first().waitFor()
    await saved(page, 'mine')
    await page.getByRole('alert').getByText('This browser keeps nothing for the page').first().waitFor()
    // no view needs a store
    for (const view of ['Lesson', 'Sheet', 'Which set is it?', 'Find the fault', 'Premises', 'Bench']) {
      await page.getByRole('link', { name: view, exact: true }).click()
      await page.waitForFunction((name) => document.title.startsWith(name), view)
      expect(await page.getByText('Something broke').count()).toBe(0)
    }
    seen.expectQuiet()
    await person.close()
  })

  test('that has no more room is told, with what to do, and nothing is lost', async () => {
    const person = await chromium.person()
    const seen = await watch(person, site.origin)
    await person.addInitScript(() => {
      IDBObjectStore.prototype.put = () => {
        throw new DOMException('full', 'QuotaExceededError')
      }
      Storage.prototype.setItem = () => {
        throw new DOMException('full', 'QuotaExceededError')
      }
    })
    const page = await files(person)
    await saved(page, 'mine')
    await page.getByText('The browser has no more room for this page').first().waitFor()
    expect(await page.getByLabel('Name of the sheet').inputValue()).toBe('mine')
    await page.getByRole('link', { name: 'Bench' }).click()
    await page.getByRole('heading', { level: 1 }).getByText('sedge').waitFor()
    seen.expectQuiet()
    await person.close()
  })

  test('that holds nonsense under our names begins anew with what makes sense', async () => {
    const person = await chromium.person()
    const seen = await watch(person, site.origin)
    const page = await files(person)
    await saved(page, 'mine')
    await page.getByText('Saved as mine.yaml').first().waitFor()
    await page.evaluate(async () => {
      localStorage.setItem('ringproof.lesson', '[[[')
      localStorage.setItem('ringproof/work/odd', '{"tab":"odd","at":1,"work":{"set":3}}')
      sessionStorage.setItem('ringproof/view/diagnosis', '{"bench":1}')
      sessionStorage.setItem('ringproof/view/identify', 'null')
      await new Promise((done, fail) => {
        const opening = indexedDB.open('ringproof')
        opening.onsuccess = () => {
          const change = opening.result.transaction('sheets', 'readwrite')
          change.objectStore('sheets').put({ no: 'text' }, 'odd.yaml')
          change.objectStore('sheets').put('\u0000: [', 'spoilt.yaml')
          change.oncomplete = done
          change.onerror = fail
        }
      })
    })
    await page.reload()
    await page.getByText('Passed over: `odd.yaml`').waitFor()
    const own = page.getByRole('region', { name: 'Your own sheets' })
    await own.getByText('mine', { exact: true }).first().waitFor()
    await own.getByText('spoilt.yaml').first().waitFor()
    for (const view of ['Lesson', 'Which set is it?', 'Find the fault', 'Sheet']) {
      await page.getByRole('link', { name: view, exact: true }).click()
      await page.waitForFunction((name) => document.title.startsWith(name), view)
      expect(await page.getByText('Something broke').count()).toBe(0)
    }
    seen.expectQuiet()
    await person.close()
  })
})

test('a server that has gone is told, and the work stays on the bench', async () => {
  const served = await benchSite()
  const person = await chromium.person()
  const page = await files(person, served.address)
  await saved(page, 'mine')
  await page.getByText('Saved as mine.yaml').first().waitFor()
  await served.stop()
  await page.getByLabel('Title', { exact: true }).fill('Later')
  await page.getByRole('button', { name: 'Save', exact: true }).click()
  await page.getByRole('alert').getByText('The local server does not answer').waitFor()
  expect(await page.getByLabel('Title', { exact: true }).inputValue()).toBe('Later')
  await page.getByRole('link', { name: 'Bench' }).click()
  await page.locator('[data-judged]:not([data-judged="0"])').waitFor()
  await person.close()
  await served.close()
})
