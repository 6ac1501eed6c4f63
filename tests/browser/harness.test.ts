import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { gzipSync } from 'node:zlib'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { barriers } from './support/axe.ts'
import { chromiumHere } from './support/chromium.ts'
import { type BenchSite, benchSite, PAGE, ROOT } from './support/site.ts'
import { watch } from './support/watch.ts'

const chromium = chromiumHere()
let site: BenchSite
beforeAll(async () => {
  site = await benchSite(['sets/fescue.yaml'])
})
afterAll(async () => site?.close())

/** The most that the first view may load, compressed bytes of script. */
const MOST = 350_000

describe('the page from `ringproof bench`', () => {
  test('opens without an error, a breach of its policy or a foreign request', async () => {
    const person = await chromium.person()
    const seen = await watch(person, site.origin)
    const page = await person.newPage()
    const response = await page.goto(site.address)
    expect(response?.status()).toBe(200)
    await page.getByRole('navigation').getByRole('link').first().waitFor()
    await page.waitForLoadState('networkidle')
    seen.expectQuiet()
    await person.close()
  })

  test(`loads at most ${MOST / 1000} kB of compressed script for its first view`, async () => {
    const person = await chromium.person()
    const seen = await watch(person, site.origin)
    const page = await person.newPage()
    await page.goto(site.address)
    await page.waitForLoadState('networkidle')
    const scripts = new Set(
      seen.asked.map((url) => new URL(url).pathname).filter((path) => /\.js$/.test(path)),
    )
    // what is worked out later is loaded later
    const counted = [...scripts].filter((path) => !/layout|elk|study/.test(path))
    expect(counted.some((path) => path.includes('bench-worker'))).toBe(true)
    const bytes = counted.map((path) => gzipSync(readFileSync(join(PAGE, path))).length)
    expect(bytes.reduce((sum, one) => sum + one, 0)).toBeLessThanOrEqual(MOST)
    await person.close()
  })

  test('has no script and no style within itself', () => {
    const html = readFileSync(`${PAGE}/index.html`, 'utf8')
    expect(html).not.toMatch(/<style|\sstyle=|\son[a-z]+=|javascript:|data:text/)
    expect(html.match(/<script\b(?![^>]*\ssrc=)/g)).toBe(null)
    expect(html).toContain('<script type="module"')
  })

  test('ships the layout library in files of its own, and its worker as it was published', () => {
    const assets = readdirSync(join(PAGE, 'assets'))
    const textOf = (name: string): string => readFileSync(join(PAGE, 'assets', name), 'utf8')
    const [worker = '', ...more] = assets.filter((name) => name.startsWith('elk-worker'))
    expect(more).toEqual([])
    expect(
      textOf(worker) === readFileSync(join(ROOT, 'node_modules/elkjs/lib/elk-worker.min.js'), 'utf8'),
    ).toBe(true)
    // a word that only the library says; the build itself stops where its near half lies beside anything else
    const rest = assets.filter((name) => name !== worker && name.endsWith('.js'))
    expect(rest.filter((name) => textOf(name).includes('org.eclipse.elk'))).toEqual([])
    expect(rest.filter((name) => name.startsWith('elk-api'))).toHaveLength(1)
  })

  test('has icons of the sizes that its manifest says', () => {
    const { icons } = JSON.parse(readFileSync(join(PAGE, 'manifest.webmanifest'), 'utf8'))
    const pixels = icons.filter(({ type }: { type: string }) => type === 'image/png')
    expect(pixels.map(({ sizes }: { sizes: string }) => sizes)).toEqual(['192x192', '512x512'])
    for (const { src, sizes } of pixels) {
      const bytes = readFileSync(join(PAGE, src))
      // W3C PNG, 11.2.1: width and height stand behind the signature, the length and the name of the first chunk
      expect(`${bytes.readUInt32BE(16)}x${bytes.readUInt32BE(20)}`).toBe(sizes)
    }
  })

  test('ships the licences of what it is made of', () => {
    const licences = readFileSync(`${PAGE}/licences.txt`, 'utf8')
    for (const name of ['preact', '@preact/signals', 'elkjs', 'yaml', 'graphology', 'zod', 'idb-keyval'])
      expect(licences).toMatch(new RegExp(`^${name} \\d+\\.\\d+\\.\\d+ \\(`, 'm'))
    const fleet: { file: string }[] = JSON.parse(readFileSync(`${PAGE}/fleet.json`, 'utf8'))
    expect(fleet.length).toBeGreaterThan(10)
    for (const { file } of fleet) expect(existsSync(join(ROOT, file)), file).toBe(true)
  })
})

describe('the harness', () => {
  test('notices an error, a breach of the policy, and a foreign request', async () => {
    const person = await chromium.person()
    const seen = await watch(person, site.origin)
    const page = await person.newPage()
    await page.goto(site.address)
    await page.evaluate(() => {
      document.body.append(Object.assign(document.createElement('style'), { textContent: 'p{}' }))
      setTimeout(() => {
        throw new Error('on purpose')
      })
      return fetch('http://127.0.0.1:9/').catch(() => {})
    })
    await page.waitForTimeout(200)
    const all = seen.noticed.join('\n')
    expect(all).toContain('policy breach: style-src')
    expect(all).toContain('policy breach: connect-src')
    expect(all).toContain('page error: on purpose')
    expect(() => seen.expectQuiet()).toThrow()
    await person.close()
  })

  test('finds a barrier that is put there', async () => {
    const person = await chromium.person()
    const page = await person.newPage()
    await page.goto(site.address)
    await page.evaluate(() => document.body.append(document.createElement('button')))
    expect((await barriers(page)).join('\n')).toContain('button-name')
    await person.close()
  })
})

test('Ctrl-C closes the bench, with exit code 0', async () => {
  const other = await benchSite()
  expect(await other.stop()).toBe(0)
  await other.close()
})
