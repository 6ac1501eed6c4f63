/** Texts of the pictures on the page, as the browser has laid them out. */
import type { Page } from 'playwright-core'

/** What of a line of text may touch another line: the room above and below its letters, px. */
const AIR = 2

/** Pairs of texts of one picture that lie over each other, each as `one / other`. */
export async function overlaps(page: Page): Promise<string[]> {
  return page.evaluate((air) => {
    const found: string[] = []
    for (const svg of document.querySelectorAll('main svg')) {
      const boxes = [...svg.querySelectorAll('text')].flatMap((text) => {
        const { left, right, top, bottom } = text.getBoundingClientRect()
        const isShown = text.textContent !== '' && getComputedStyle(text).visibility === 'visible'
        // the box of a line is higher than its letters by about a quarter on either side
        const room = (bottom - top) / 5
        return isShown && right > left
          ? [{ says: text.textContent ?? '', left, right, top: top + room, bottom: bottom - room }]
          : []
      })
      boxes.forEach((one, k) => {
        for (const other of boxes.slice(k + 1)) {
          const across = Math.min(one.right, other.right) - Math.max(one.left, other.left)
          const down = Math.min(one.bottom, other.bottom) - Math.max(one.top, other.top)
          if (across > air && down > air) found.push(`${one.says} / ${other.says}`)
        }
      })
    }
    return found
  }, AIR)
}

/** How far the page is wider than its window, px. */
export async function sideways(page: Page): Promise<number> {
  return page.evaluate(() => document.documentElement.scrollWidth - innerWidth)
}
