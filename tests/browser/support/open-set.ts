/** The first steps of many journeys. */
import type { Page } from 'playwright-core'

/** The section of verdicts, once something has been judged. */
export const JUDGED = '[data-judged]:not([data-judged="0"])'

/** Puts a set or a rewire on the bench by its button, and waits for its verdicts. */
export async function openSet(page: Page, name: string): Promise<void> {
  await page
    .getByRole('main')
    .getByRole('button')
    .filter({ has: page.locator('strong', { hasText: new RegExp(`^${name}$`) }) })
    .first()
    .click()
  await page.locator(JUDGED).waitFor()
}
