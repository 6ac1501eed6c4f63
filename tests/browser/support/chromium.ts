/** A real browser, once a file. Where none can be started the tests fail: a page that nobody looked at is not proved. */
import executable from '@sparticuz/chromium'
import { type Browser, type BrowserContext, type BrowserContextOptions, chromium } from 'playwright-core'
import { afterAll, beforeAll } from 'vitest'

const FLAGS = [
  '--headless',
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
]

/** Starts the browser; its files are unpacked below the system's folder for temporary files. */
export async function launch(more: readonly string[] = []): Promise<Browser> {
  const executablePath = await executable.executablePath()
  return chromium.launch({ executablePath, headless: true, args: [...FLAGS, ...more] })
}

export interface Chromium {
  /** A person of their own: no store, no cache shared with any other. English, light, 1440 px wide unless said. */
  person(options?: BrowserContextOptions): Promise<BrowserContext>
}

/** A browser for the tests of this file. */
export function chromiumHere(): Chromium {
  let browser: Browser | undefined
  beforeAll(async () => {
    browser = await launch()
  }, 60_000)
  afterAll(async () => {
    await browser?.close()
  })
  return {
    async person(options = {}) {
      if (browser === undefined) throw new Error('no browser was started')
      return browser.newContext({
        locale: 'en-US',
        viewport: { width: 1440, height: 900 },
        colorScheme: 'light',
        ...options,
      })
    },
  }
}
