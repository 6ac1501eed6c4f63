/** Watches a person's pages for what no journey may show: errors, breaches of the policy, requests to strangers. */
import type { BrowserContext, Page, Request } from 'playwright-core'
import { expect } from 'vitest'

export interface Watch {
  /** What was noticed so far. */
  readonly noticed: readonly string[]
  /** Every address asked for, workers' included. */
  readonly asked: readonly string[]
  /** The end of every journey. */
  expectQuiet(): void
}

/** Breaches of the policy say themselves through the console by this. */
const BREACH = 'policy breach: '

/** Watches from before the first page is opened. `origin` is the only one that may be asked. */
export async function watch(context: BrowserContext, origin: string): Promise<Watch> {
  const noticed: string[] = []
  const asked: string[] = []
  await context.addInitScript((breach) => {
    document.addEventListener('securitypolicyviolation', ({ violatedDirective, blockedURI, sourceFile }) => {
      console.error(`${breach}${violatedDirective} ${blockedURI} ${sourceFile}`)
    })
  }, BREACH)
  context.on('request', (request: Request) => {
    const url = request.url()
    asked.push(url)
    if (!/^(blob|data|about):/.test(url) && new URL(url).origin !== origin) noticed.push(`asks ${url}`)
  })
  context.on('requestfailed', (request: Request) => {
    // what is no longer wanted is broken off
    const why = request.failure()?.errorText ?? ''
    if (why !== 'net::ERR_ABORTED') noticed.push(`failed ${request.url()} ${why}`)
  })
  context.on('console', (message) => {
    if (['error', 'warning'].includes(message.type())) noticed.push(`${message.type()}: ${message.text()}`)
  })
  context.on('weberror', (error) => noticed.push(`page error: ${error.error().message}`))
  context.on('page', (page: Page) => {
    page.on('crash', () => noticed.push('the page crashed'))
  })
  return { noticed, asked, expectQuiet: () => expect(noticed).toEqual([]) }
}
