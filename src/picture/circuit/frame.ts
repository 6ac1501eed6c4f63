/** How much room nodes and symbols take with their words, and where their pins come to lie in it. */
import { textWidth, wrapText } from '../text-size.ts'
import type { CircuitNode, CircuitPiece, Turn } from './circuit.ts'

/** One step of a symbol's grid in units of the picture. */
export const GRID = 11

/** Size of the words. */
export const TEXT = 12
const LINE = 15

/** From a wire to the words beside it. */
const BESIDE = 8

/** Radius of a terminal's circle. */
export const RADIUS = 4

/** Longer values go on in the next line; longer names, or a value that is longer by itself, do so much later. */
const VALUES = 84
const NAMES = 150

/** A side of a box. */
export type Side = 'left' | 'right' | 'top' | 'bottom'

/** Where a wire comes to a box, and where it ends in it. */
export interface Gate {
  readonly side: Side
  /** On the edge of the box. */
  readonly at: readonly [x: number, y: number]
  /** At the symbol. */
  readonly end: readonly [x: number, y: number]
}

/** Words in a box: the middle of their baseline, or their beginning. */
export interface Words {
  readonly text: string
  readonly at: readonly [x: number, y: number]
  readonly anchor: 'middle' | 'start'
  readonly class: string
}

/** The room of a symbol, from the box's corner. */
export interface Frame {
  readonly width: number
  readonly height: number
  /** From a spot of the outline to the box. */
  readonly spot: (at: readonly [x: number, y: number]) => readonly [x: number, y: number]
  readonly pins: Readonly<Record<string, Gate>>
  readonly words: readonly Words[]
}

/** The width of some words. */
function widthOf(text: string): number {
  return textWidth(text, TEXT)
}

/** Values in lines, a quantity never apart from its unit unless it is long by itself. */
function valueLines(values: string): readonly string[] {
  const lines: string[] = []
  for (const value of values.split(/(?<=[,;]) /)) {
    const last = lines.at(-1)
    const joined = `${last} ${value}`
    if (last !== undefined && widthOf(joined) <= VALUES) lines[lines.length - 1] = joined
    else lines.push(...wrapText(value, TEXT, NAMES))
  }
  return lines
}

/** The words of a piece: its name, then its values. */
function wordsOf({ label, values, gate }: CircuitPiece): {
  readonly head: readonly string[]
  readonly foot: readonly string[]
} {
  const foot = valueLines(values)
  return { head: wrapText(label, TEXT, NAMES), foot: gate === undefined ? foot : [...foot, gate] }
}

const right = (x: number): number => Math.round(x * 100) / 100

/** The room of a symbol as it is turned. */
export function frameOf(piece: CircuitPiece, turn: Turn = 'plain'): Frame {
  return turn === 'plain' || turn === 'flipped' ? lyingFrame(piece, turn) : standingFrame(piece, turn)
}

function lyingFrame(piece: CircuitPiece, turn: 'plain' | 'flipped'): Frame {
  const { outline } = piece
  const { head, foot } = wordsOf(piece)
  // `open` and `closed` take the same room, so that every condition has the same picture
  const widest = Math.max(
    ...[...head, ...foot, ...(piece.gate === undefined ? [] : ['closed'])].map(widthOf),
    0,
  )
  const own = outline.width * GRID
  // where a pin comes from above or below, the words stand beside its wire
  const beside = Object.values(outline.pins).some(([x]) => x > 0 && x < outline.width)
  const width = Math.ceil(beside ? own / 2 + BESIDE + Math.max(own / 2, widest) : Math.max(own, widest))
  const left = beside ? 0 : (width - own) / 2
  const top = head.length * LINE + 2
  const height = Math.ceil(top + outline.height * GRID + foot.length * LINE + 2)
  const flip = (x: number): number => (turn === 'flipped' ? outline.width - x : x)
  const spot = ([x, y]: readonly [number, number]): readonly [number, number] => [
    right(left + flip(x) * GRID),
    right(top + y * GRID),
  ]
  const pins: Record<string, Gate> = {}
  for (const [name, at] of Object.entries(outline.pins)) {
    const [x, y] = at
    const end = spot(at)
    if (x > 0 && x < outline.width) {
      const upper = y < outline.height / 2
      pins[name] = { side: upper ? 'top' : 'bottom', at: [end[0], upper ? 0 : height], end }
    } else {
      const isLeft = flip(x) < outline.width / 2
      pins[name] = { side: isLeft ? 'left' : 'right', at: [isLeft ? 0 : width, end[1]], end }
    }
  }
  const [middle, anchor] = beside
    ? [own / 2 + BESIDE, 'start' as const]
    : [right(width / 2), 'middle' as const]
  return {
    width,
    height,
    spot,
    pins,
    words: [
      ...head.map((text, k): Words => ({ text, at: [middle, LINE * (k + 1) - 4], anchor, class: 'name' })),
      ...foot.map(
        (text, k): Words => ({
          text,
          at: [middle, right(top + outline.height * GRID + LINE * (k + 1) - 2)],
          anchor,
          class: 'value',
        }),
      ),
    ],
  }
}

/** Upright, the words to the right of it. */
function standingFrame(piece: CircuitPiece, turn: 'down' | 'up'): Frame {
  const { outline } = piece
  const { head, foot } = wordsOf(piece)
  const words = [...head, ...foot]
  const widest = Math.max(...words.map(widthOf), piece.gate === undefined ? 0 : widthOf('closed'))
  const across = outline.height * GRID
  const along = outline.width * GRID
  const height = Math.ceil(Math.max(along, words.length * LINE + 4))
  const top = (height - along) / 2
  const spot = ([x, y]: readonly [number, number]): readonly [number, number] =>
    turn === 'down'
      ? [right((outline.height - y) * GRID), right(top + x * GRID)]
      : [right(y * GRID), right(top + (outline.width - x) * GRID)]
  const pins: Record<string, Gate> = {}
  for (const [name, at] of Object.entries(outline.pins)) {
    const end = spot(at)
    const upper = end[1] < height / 2
    pins[name] = { side: upper ? 'top' : 'bottom', at: [end[0], upper ? 0 : height], end }
  }
  const first = (height - words.length * LINE) / 2
  return {
    width: Math.ceil(across + 4 + widest),
    height,
    spot,
    pins,
    words: words.map((text, k) => ({
      text,
      at: [right(across + 4), right(first + LINE * (k + 1) - 4)],
      anchor: 'start',
      class: k < head.length ? 'name' : 'value',
    })),
  }
}

/** The room of a node: its circle in the middle, its name above. */
export interface NodeFrame {
  readonly width: number
  readonly height: number
  readonly middle: readonly [x: number, y: number]
  readonly words: Words
}

/** The room of a node. */
export function nodeFrame({ label, looks }: CircuitNode): NodeFrame {
  const width = Math.ceil(Math.max(widthOf(label) + 2, 4 * RADIUS))
  if (looks === 'earth') {
    const middle = [right(width / 2), 2] as const
    return {
      width,
      height: 36,
      middle,
      words: { text: label, at: [middle[0], 33], anchor: 'middle', class: 'name' },
    }
  }
  const middle = [right(width / 2), LINE + RADIUS + 2] as const
  return {
    width,
    height: LINE + 2 * RADIUS + 4,
    middle,
    words: { text: label, at: [middle[0], LINE - 3], anchor: 'middle', class: 'name' },
  }
}
