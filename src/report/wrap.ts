/** Breaking text into lines. */

/** Columns that a text takes on a terminal: one a code point, none for a combining mark. */
export function columns(text: string): number {
  return Array.from(text.replace(/\p{M}/gu, '')).length
}

/** Characters after which a word that is wider than a line may be broken. */
const JOINTS = new Set(['/', '-', '.', ',', '_'])

/** The first part of a word that fits, broken behind a joint where one lies beyond its first third. */
function head(word: string, width: number): string {
  const letters = Array.from(word).slice(0, width)
  for (let k = letters.length - 1; k >= width / 3; k--) {
    if (JOINTS.has(letters[k] ?? '')) return letters.slice(0, k + 1).join('')
  }
  return letters.join('')
}

/** A blank that holds a number and its unit together while lines are broken. */
const GLUE = '\u00a0'
const UNIT = /(\d) (?=(?:[pnµmkMG]?(?:Ω|F|H|V|A|Hz|W|m|s)|%)(?!\p{L}))/gu

/** The words of a text, a number with its unit being one. */
function wordsOf(text: string): string[] {
  return text
    .replace(/\s+/g, ' ')
    .replace(UNIT, `$1${GLUE}`)
    .split(' ')
    .filter((word) => word !== '')
}

/** Lines of at most `width` columns; a word wider than that is broken. No text, one empty line. */
export function wrap(text: string, width: number): string[] {
  const room = Math.max(1, width)
  const lines: string[] = []
  let line = ''
  for (const word of wordsOf(text)) {
    if (line !== '' && columns(line) + 1 + columns(word) <= room) {
      line += ` ${word}`
      continue
    }
    if (line !== '') lines.push(line)
    line = word
    while (columns(line) > room) {
      const part = head(line, room)
      lines.push(part)
      line = line.slice(part.length)
    }
  }
  if (line !== '' || lines.length === 0) lines.push(line)
  return lines.map((one) => one.replaceAll(GLUE, ' '))
}

/** A paragraph with its first line behind `label` and all others below the text. */
export function hanging(label: string, text: string, width: number): string[] {
  const indent = columns(label)
  return wrap(text, width - indent).map((line, at) => (at === 0 ? label : ' '.repeat(indent)) + line)
}
