/** How large a picture is shown: its letters decide, not its width. */

/** The smallest letters that are read with ease, in shares of the page's own size: 12 px where that is 16 px. */
const READABLE = 0.75
/** A picture that fits is not blown up beyond this. */
const GENEROUS = 1.3
/** A step larger or smaller. */
const STEP = 1.25
export const LEAST_STEP = -4
export const MOST_STEP = 5

/** `whole`: as wide as its frame. A number: so many steps larger or smaller than what is read with ease. */
export type Size = 'whole' | number

export interface Shown {
  /** The picture's own width, and its smallest letters in the same units. */
  readonly width: number
  readonly letters: number
  /** Room in the frame, and the size of the page's letters, px. */
  readonly room: number
  readonly page: number
}

/** The width at which its smallest letters are just read with ease, px. */
export function readableWidth({ width, letters, page }: Shown): number {
  return (width * READABLE * page) / letters
}

/** The width of a picture in px. At step 0 it fills its frame where that makes it somewhat larger. */
export function shownWidth(shown: Shown, size: Size): number {
  const least = readableWidth(shown)
  if (size === 'whole') return shown.room
  const fits = Math.min(Math.max(shown.room, least), least * GENEROUS)
  return Math.round(size === 0 ? fits : least * STEP ** size)
}
