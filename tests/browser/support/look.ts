/** Pictures of the page, for whoever looks. */
import { mkdirSync } from 'node:fs'
import { dirname } from 'node:path'
import type { Page } from 'playwright-core'

/** Takes one, the whole page or what is in sight; small files, for eyes and not for comparing. */
export async function look(page: Page, path: string, whole: boolean = true): Promise<void> {
  mkdirSync(dirname(path), { recursive: true })
  await page.screenshot({ path, fullPage: whole, type: 'jpeg', quality: 60, animations: 'disabled' })
}
