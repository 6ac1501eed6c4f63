/** The accessibility engine, run in the page. */
import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import type { Page } from 'playwright-core'

const source = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8')

interface Found {
  readonly id: string
  readonly help: string
  readonly nodes: readonly { readonly html: string; readonly failureSummary?: string }[]
}

/** Levels A and AA up to WCAG 2.2. */
const TAGS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa']

/** What is wrong with the page as it is shown now, each with the elements. Nothing when all is well. */
export async function barriers(page: Page): Promise<string[]> {
  // not as a script element: the page's policy forbids it, and the debugger's door stands beside the policy
  await page.evaluate(source)
  const violations = await page.evaluate(async (tags) => {
    const { axe } = window as unknown as {
      axe: { run(on: Document, how: unknown): Promise<{ violations: Found[] }> }
    }
    return (await axe.run(document, { runOnly: { type: 'tag', values: tags } })).violations
  }, TAGS)
  return violations.flatMap(({ id, help, nodes }) =>
    nodes.map(({ html, failureSummary }) => `${id}: ${help}: ${html.slice(0, 200)} ${failureSummary ?? ''}`),
  )
}
