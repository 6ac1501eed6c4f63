/**
 * How much room a text may take. Nobody knows the reader's font, so this is generous: broader than the letters of
 * the usual sans-serif fonts.
 */

/** Widths of one character in shares of the font size. */
const WIDEST = 1.4
const BROAD = 1.05
const CAPITAL = 0.75
const USUAL = 0.64
const NARROW = 0.41

/** By what bold letters are broader: their size is to be taken so much larger. */
export const BOLD = 1.15

const BROAD_LETTERS = /[MWmw@%&ÆŒæœ—…→←↔≈≤≥Ω]/
const CAPITALS = /[\p{Lu}\d+±=<>#~^_]/u
const NARROW_LETTERS = /[ .,:;'’!|()[\]ijlI/]/

/** The last code point of scripts whose letters are about as broad as Latin ones. */
const LATIN_LIKE = 0x10ff

/** Widths of the characters that have been met: pictures are drawn again and again with the same words. */
const known = new Map<string, number>()

/** No text makes the table grow for ever. */
const MOST_KNOWN = 4096

function characterWidth(character: string): number {
  const before = known.get(character)
  if (before !== undefined) return before
  const width = widthByLook(character)
  if (known.size < MOST_KNOWN) known.set(character, width)
  return width
}

function widthByLook(character: string): number {
  if ((character.codePointAt(0) ?? 0) > LATIN_LIKE && !/[\u2000-\u22ff]/.test(character)) return WIDEST
  if (BROAD_LETTERS.test(character)) return BROAD
  if (CAPITALS.test(character)) return CAPITAL
  return NARROW_LETTERS.test(character) ? NARROW : USUAL
}

/** The width that a text takes at most, in the units of its font size. */
export function textWidth(text: string, size: number): number {
  let width = 0
  for (const character of text) width += characterWidth(character)
  return width * size
}

/** The text, or as much of it as there is room for with an ellipsis behind it. */
export function fitText(text: string, size: number, room: number): string {
  if (textWidth(text, size) <= room) return text
  let kept = ''
  let width = BROAD * size
  for (const character of text) {
    width += characterWidth(character) * size
    if (width > room) break
    kept += character
  }
  return `${kept.trimEnd()}…`
}

/** A text in lines that each have room; a word that has none by itself is cut. */
export function wrapText(text: string, size: number, room: number): readonly string[] {
  const lines: string[] = []
  let line = ''
  for (const word of text.split(/\s+/).filter((one) => one !== '')) {
    const longer = line === '' ? word : `${line} ${word}`
    if (textWidth(longer, size) <= room) line = longer
    else {
      if (line !== '') lines.push(line)
      line = fitText(word, size, room)
    }
  }
  return line === '' ? lines : [...lines, line]
}
