/** Boards of every set and rewire of the demo, and what stands in a picture. */
import type { Board, Mark } from 'ringproof'
import { boardOf } from 'ringproof'
import { rewired } from 'ringproof/answer/standing'
import type { SetSheet } from 'ringproof/sheet/model'
import { readSheet } from 'ringproof/sheet/read'
import { DEMO } from '../../netlist/_nets.ts'

/** A set of the demo by its name. */
export function setNamed(name: string): SetSheet {
  const text = DEMO.find('set', name)
  const sheet = text === undefined ? undefined : readSheet(text, DEMO, 'set').sheet
  if (sheet === undefined) throw new Error(`no set ${name}`)
  return sheet
}

/** A set before and after a rewire of the demo. */
export function rewiredBy(name: string): { readonly set: SetSheet; readonly found: SetSheet } {
  const text = DEMO.find('rewire', name)
  const sheet = text === undefined ? undefined : readSheet(text, DEMO, 'rewire').sheet
  if (sheet === undefined) throw new Error(`no rewire ${name}`)
  const { set, rewiring } = rewired(sheet, DEMO)
  return { set, found: rewiring?.from ?? set }
}

/** Every board of the demo, with moves and without. */
export const BOARDS: readonly (readonly [name: string, board: Board])[] = [
  ...DEMO.names('set').map((name) => [name, boardOf(setNamed(name))] as const),
  ...DEMO.names('rewire').map((name) => {
    const { set, found } = rewiredBy(name)
    return [name, boardOf(set, found)] as const
  }),
]

/** All elements of a picture, outer ones first. */
export function marksIn(root: Mark): readonly Mark[] {
  return [root, ...root.children.flatMap((child) => (typeof child === 'string' ? [] : marksIn(child)))]
}

interface TextBox {
  readonly words: string
  readonly left: number
  readonly right: number
  readonly top: number
  readonly bottom: number
}

/**
 * Widths of letters in shares of the font size: those of DejaVu Sans, one of the broadest sans-serif fonts, rounded
 * up. From memory.
 */
function letterWidth(letter: string): number {
  if ((letter.codePointAt(0) ?? 0) > 0x2fff) return 1
  if (/[ .,:;'’|ijlI/()[\]!]/.test(letter)) return 0.36
  if (/[MWmw@%—…→≈Ω]/.test(letter)) return 1
  return /[\p{Lu}\d]/u.test(letter) ? 0.7 : 0.62
}

/** Texts of these classes are bold. */
const BOLD = /^(title|heading|name|strong)$/

/** Where the texts of a picture lie at most. */
export function textBoxes(root: Mark): readonly TextBox[] {
  return marksIn(root)
    .filter(({ tag }) => tag === 'text')
    .map(({ attributes, children }) => {
      const words = children.filter((child) => typeof child === 'string').join('')
      const size = Number(attributes['font-size'])
      const width =
        [...words].reduce((sum, letter) => sum + letterWidth(letter), 0) *
        size *
        (BOLD.test(String(attributes.class)) ? 1.12 : 1)
      const x = Number(attributes.x)
      const anchor = attributes['text-anchor']
      const left = anchor === 'end' ? x - width : anchor === 'middle' ? x - width / 2 : x
      const y = Number(attributes.y)
      return { words, left, right: left + width, top: y - size * 0.8, bottom: y + size * 0.25 }
    })
}

/** Pairs of texts that lie on each other, and texts that leave the picture. */
export function collisions(root: Mark): readonly string[] {
  const boxes = textBoxes(root)
  const width = Number(root.attributes.width)
  const height = Number(root.attributes.height)
  const found: string[] = []
  boxes.forEach((p, k) => {
    if (p.left < 0 || p.top < 0 || p.right > width || p.bottom > height) found.push(`${p.words} leaves`)
    for (const q of boxes.slice(k + 1)) {
      if (p.left < q.right && q.left < p.right && p.top < q.bottom && q.top < p.bottom) {
        found.push(`${p.words} on ${q.words}`)
      }
    }
  })
  return found
}
