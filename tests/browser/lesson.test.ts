/** The lesson from its first step to its end by keyboard alone, in a real browser, on the built page. */
import { readFile } from 'node:fs/promises'
import { createServer, type Server } from 'node:http'
import { createRequire } from 'node:module'
import type { AddressInfo } from 'node:net'
import { extname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import chromium from '@sparticuz/chromium'
import { type Browser, type Page, chromium as pw } from 'playwright-core'
import { check, formatQuantity } from 'ringproof'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { DEMO } from '../support/bench.ts'

const WEB = process.env.RINGPROOF_WEB ?? fileURLToPath(new URL('../../dist/web', import.meta.url))
const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html',
  '.js': 'text/javascript',
  '.css': 'text/css',
  '.json': 'application/json',
  '.svg': 'image/svg+xml',
  '.webmanifest': 'application/manifest+json',
}

let server: Server
let browser: Browser
let root: string

beforeAll(async () => {
  server = createServer((request, response) => {
    const path = new URL(request.url ?? '/', 'http://localhost').pathname
    const file = path === '/' ? 'index.html' : path.slice(1)
    readFile(join(WEB, file)).then(
      (body) => response.writeHead(200, { 'content-type': TYPES[extname(file)] ?? 'text/plain' }).end(body),
      () => response.writeHead(404).end(),
    )
  })
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', done))
  root = `http://127.0.0.1:${(server.address() as AddressInfo).port}/`
  const flags = ['--headless', '--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run']
  browser = await pw.launch({ executablePath: await chromium.executablePath(), headless: true, args: flags })
}, 60_000)

afterAll(async () => {
  await browser.close()
  server.close()
})

/** Presses Tab until what has the focus is called this. */
async function tabTo(page: Page, name: RegExp): Promise<void> {
  for (let k = 0; k < 80; k += 1) {
    await page.keyboard.press('Tab')
    const text = await page.evaluate(() => {
      const at = document.activeElement
      return at?.getAttribute('aria-label') ?? at?.closest('label')?.textContent ?? at?.textContent ?? ''
    })
    if (name.test(text.trim())) return
  }
  throw new Error(`no key leads to ${name}`)
}

test('the lesson is finished by keyboard alone', async () => {
  const context = await browser.newContext({ locale: 'en-US', viewport: { width: 1024, height: 800 } })
  const page = await context.newPage()
  const said: string[] = []
  page.on('console', (message) => said.push(message.text()))
  page.on('pageerror', (error) => said.push(error.message))
  await page.goto(`${root}#view=lesson&step=1`)
  for (let step = 1; step <= 8; step += 1) {
    await page.getByRole('heading', { name: `Step ${step} of 8` }).waitFor()
    if (step === 1) {
      // an expectation, then the trial itself
      await tabTo(page, /^It rings as before/)
      await page.keyboard.press('Space')
      await tabTo(page, /^Landed/)
      await page.keyboard.press('ArrowRight')
    } else {
      await tabTo(page, /show me$/)
      await page.keyboard.press('Enter')
    }
    await page.locator('.lesson-why li').first().waitFor({ timeout: 60_000 })
    if (step === 1) {
      expect(await page.locator('.lesson-came').textContent()).toContain('Not as you expected')
      expect(await page.locator('[aria-live=polite]').allTextContents()).toContainEqual(
        expect.stringContaining('It falls silent'),
      )
    }
    await tabTo(page, step === 8 ? /^To the end$/ : /^Next step$/)
    await page.keyboard.press('Enter')
  }
  await page.getByRole('heading', { name: 'What you have learned' }).waitFor()
  expect(await page.locator('.lesson-end ol li p').count()).toBe(8)
  expect(await page.locator('.lesson-end').textContent()).toContain('You have tried all 8 steps')
  expect(said).toEqual([])
  await context.close()
}, 240_000)

/** What the accessibility engine objects to on the page as it stands. */
async function objections(page: Page): Promise<readonly string[]> {
  // the page's policy forbids a script element of ours: the browser's own console may still run it
  await page.evaluate(await readFile(createRequire(import.meta.url).resolve('axe-core'), 'utf8'))
  return page.evaluate(async () => {
    const { axe } = globalThis as unknown as {
      axe: { run(): Promise<{ violations: readonly { id: string; nodes: readonly { html: string }[] }[] }> }
    }
    const { violations } = await axe.run()
    return violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html ?? ''}`)
  })
}

test.each(['light', 'dark'] as const)(
  'a step and the end are sound in the %s theme',
  async (colorScheme) => {
    const context = await browser.newContext({ locale: 'en-US', colorScheme })
    const page = await context.newPage()
    await page.goto(`${root}#view=lesson&step=1`)
    await page.getByRole('button', { name: 'show me' }).click()
    await page.locator('.lesson-why li').first().waitFor({ timeout: 60_000 })
    // the number of the lone bell is the one that the library gives here
    const bell = check({ target: 'fescue' }, DEMO).verdicts.find((one) => one.check === 'bell.rings-alone')
    const amount = formatQuantity(bell?.figure?.value ?? 0, 'A', 3)
    expect(await page.locator('.lesson-figures td').first().textContent()).toBe(amount)
    expect(await objections(page)).toEqual([])
    await page.goto(`${root}#view=lesson&step=9`)
    await page.getByRole('heading', { name: 'What you have learned' }).waitFor()
    expect(await objections(page)).toEqual([])
    await context.close()
  },
  120_000,
)
