/**
 * Where everything of a terminal picture goes. Each strip stands upright, a row to a terminal: lanes for straps, the
 * screw with its name, and right of it what lies there, one below the other. So every text has a line of its own.
 */
import type { Box } from '../shapes.ts'
import { BOLD, textWidth } from '../text-size.ts'
import type { Board, BoardCore, BoardPart, BoardSlot, BoardStrap } from './board.ts'
import { lanesOf } from './lanes.ts'

/** Sizes in units of the picture, one of which is a pixel when it is drawn 1 : 1. */
export const SIZES = {
  edge: 12,
  gap: 16,
  lane: 36,
  gutter: 44,
  heading: 34,
  row: 64,
  tag: 48,
  line: 20,
  content: 208,
  name: 17,
  words: 14,
  small: 13,
  sign: 20,
  screw: 13,
} as const

/** A line of text at a terminal: the end of a part, or the socket of a slot. */
export type RowLine = Box &
  ({ readonly part: BoardPart; readonly index: number } | { readonly slot: BoardSlot; readonly pin: string })

export interface RowLaid extends Box {
  readonly name: string
  readonly spare: boolean
  readonly cell: Box
  readonly screw: readonly [x: number, y: number]
  readonly cores: readonly (Box & { readonly core: BoardCore })[]
  readonly lines: readonly RowLine[]
}

export interface BlockLaid extends Box {
  readonly strip: string
  readonly rows: readonly RowLaid[]
}

export interface StrapLaid {
  readonly strap: BoardStrap
  readonly points: readonly (readonly [x: number, y: number])[]
  /** Its upright runs, where a hand takes hold of it. */
  readonly grips: readonly Box[]
}

export interface BoardLaid {
  readonly width: number
  /** Where the trays below the strips begin. */
  readonly bottom: number
  readonly column: number
  readonly blocks: readonly BlockLaid[]
  readonly straps: readonly StrapLaid[]
}

interface Content {
  readonly cores: readonly BoardCore[]
  readonly lines: readonly (
    | { readonly part: BoardPart; readonly index: number }
    | { readonly slot: BoardSlot; readonly pin: string }
  )[]
  readonly height: number
}

/** Boards that have been laid out: one is drawn again whenever something of it is pointed at. */
const laidOut = new WeakMap<Board, Map<string, BoardLaid>>()

/** Lays a board out in so many columns of strips at most. */
export function layOut(board: Board, columns: number, top: number): BoardLaid {
  const own = laidOut.get(board) ?? new Map<string, BoardLaid>()
  laidOut.set(board, own)
  const key = `${columns} ${top}`
  const laid = own.get(key) ?? laidAnew(board, columns, top)
  own.set(key, laid)
  return laid
}

function laidAnew(board: Board, columns: number, top: number): BoardLaid {
  const names = board.strips.flatMap(({ terminals }) => terminals.map(({ name }) => name))
  const longest = Math.max(0, ...names.map((name) => textWidth(name, SIZES.name * BOLD)))
  const cell = Math.max(126, 2 * SIZES.screw + 16 + longest + SIZES.sign)
  const contents = new Map(names.map((name) => [name, contentOf(board, name)]))
  const heightOf = (strip: Board['strips'][number]): number =>
    SIZES.heading +
    strip.terminals.reduce((sum, { name }) => sum + (contents.get(name)?.height ?? SIZES.row), 0)
  const shared = shareOut(board.strips, heightOf, columns)
  const columnOf = new Map(
    shared.flatMap((strips, column) =>
      strips.flatMap(({ terminals }) => terminals.map(({ name }) => [name, column])),
    ),
  )
  const straps = board.straps.filter(({ from, to }) => columnOf.has(from) && columnOf.has(to))
  const across = straps.filter(({ from, to }) => columnOf.get(from) !== columnOf.get(to))
  const start = top + (across.length === 0 ? 0 : across.length * SIZES.gutter + SIZES.gap / 2)
  // heights do not hang on lanes, so the rows are stacked before the lanes are known
  const middles = new Map<string, number>()
  for (const strips of shared) {
    let y = start
    for (const strip of strips) {
      y += SIZES.heading
      for (const { name } of strip.terminals) {
        const height = contents.get(name)?.height ?? SIZES.row
        middles.set(name, y + SIZES.row / 2)
        y += height
      }
      y += SIZES.gap
    }
  }
  const touches = touchesOf(straps, middles)
  const stretches = shared.map((_, column) =>
    straps.flatMap(({ thing, from, to }) => {
      const ys = [from, to].filter((end) => columnOf.get(end) === column).map((end) => touches(thing, end))
      if (ys.length === 0) return []
      const all = ys.length === 1 ? [top, ...ys] : ys
      return [{ id: thing, from: Math.min(...all), to: Math.max(...all) }]
    }),
  )
  const lanes = stretches.map(lanesOf)
  const room = lanes.map((one) => (one.size === 0 ? 0 : Math.max(...one.values()) + 1) * SIZES.lane)
  const lefts: number[] = []
  let x: number = SIZES.edge
  for (const lane of room) {
    x += lane + 4
    lefts.push(x)
    x += cell + SIZES.content + SIZES.gap
  }
  const blocks = shared.flatMap((strips, column) => {
    let y = start
    return strips.map((strip): BlockLaid => {
      const block = blockAt(strip, lefts[column] ?? 0, y, cell, contents)
      y += block.height + SIZES.gap
      return block
    })
  })
  const laneX = (thing: string, end: string): number => {
    const column = columnOf.get(end) ?? 0
    return (lefts[column] ?? 0) - 4 - SIZES.lane * ((lanes[column]?.get(thing) ?? 0) + 0.5)
  }
  const screwX = (end: string): number => (lefts[columnOf.get(end) ?? 0] ?? 0) + 6
  return {
    width: x - SIZES.gap + SIZES.edge,
    bottom: Math.max(start, ...blocks.map((block) => block.y + block.height)),
    column: cell + SIZES.content,
    blocks,
    straps: straps.map((strap): StrapLaid => {
      const { thing, from, to } = strap
      const [y1, y2] = [touches(thing, from), touches(thing, to)]
      const [x1, x2] = [laneX(thing, from), laneX(thing, to)]
      const k = across.indexOf(strap)
      const gutter = top + (k + 0.5) * SIZES.gutter
      const middle: readonly (readonly [number, number])[] =
        k < 0
          ? [
              [x1, y1],
              [x1, y2],
            ]
          : [
              [x1, y1],
              [x1, gutter],
              [x2, gutter],
              [x2, y2],
            ]
      return {
        strap,
        points: [[screwX(from), y1], ...middle, [screwX(to), y2]],
        grips: k < 0 ? [gripOf(x1, y1, y2)] : [acrossGrip(x1, x2, gutter)],
      }
    }),
  }
}

/** Where a hand takes hold of an upright run: at least as tall as a finger is broad. */
function gripOf(x: number, y1: number, y2: number): Box {
  const height = Math.max(44, Math.abs(y2 - y1))
  return {
    x: x - SIZES.lane / 2 + 2,
    y: (y1 + y2) / 2 - height / 2,
    width: SIZES.lane - 4,
    height,
  }
}

function acrossGrip(x1: number, x2: number, y: number): Box {
  return { x: Math.min(x1, x2), y: y - 22, width: Math.abs(x2 - x1), height: 44 }
}

/** The height at which each strap meets its screws: several at one screw do not lie on each other. */
function touchesOf(
  straps: readonly BoardStrap[],
  middles: ReadonlyMap<string, number>,
): (thing: string, end: string) => number {
  const at = new Map<string, string[]>()
  for (const { thing, from, to } of straps) {
    for (const end of [from, to]) at.set(end, [...(at.get(end) ?? []), thing])
  }
  return (thing, end) => {
    const all = at.get(end) ?? []
    const step = Math.min(12, 44 / Math.max(1, all.length))
    return (middles.get(end) ?? 0) + (all.indexOf(thing) - (all.length - 1) / 2) * step
  }
}

/** A core that was moved says where it was on a line of its own. */
export function tagHeight({ was }: BoardCore): number {
  return was === undefined ? SIZES.tag : SIZES.tag + 18
}

function tagsHeight(cores: readonly BoardCore[]): number {
  return cores.reduce((sum, core) => sum + tagHeight(core) + 4, 0)
}

function contentOf(board: Board, terminal: string): Content {
  const cores = board.cores.filter(({ lands }) => lands === terminal)
  const lines = [
    ...board.parts.flatMap((part) =>
      part.ends.flatMap(({ on, core }, index) => (on === terminal && !core ? [{ part, index }] : [])),
    ),
    ...board.slots.flatMap((slot) =>
      slot.sockets.filter((one) => one.terminal === terminal).map(({ pin }) => ({ slot, pin })),
    ),
  ]
  const tall = tagsHeight(cores) + lines.length * SIZES.line + 16
  return { cores, lines, height: Math.max(SIZES.row, tall) }
}

/** Strips in their order, the columns about as tall as each other. */
function shareOut<Strip>(
  strips: readonly Strip[],
  heightOf: (strip: Strip) => number,
  columns: number,
): readonly (readonly Strip[])[] {
  const most = Math.max(1, Math.min(Math.floor(columns) || 1, strips.length))
  const total = strips.reduce((sum, strip) => sum + heightOf(strip), 0)
  const tallest = Math.max(0, ...strips.map(heightOf))
  // the least height at which the strips fill no more columns than there are
  for (let room = Math.max(tallest, total / most); ; room *= 1.02) {
    const filled: Strip[][] = [[]]
    let taken = 0
    for (const strip of strips) {
      const height = heightOf(strip)
      if (taken > 0 && taken + height > room) {
        filled.push([])
        taken = 0
      }
      filled.at(-1)?.push(strip)
      taken += height
    }
    if (filled.length <= most) return filled
  }
}

function blockAt(
  strip: Board['strips'][number],
  x: number,
  top: number,
  cell: number,
  contents: ReadonlyMap<string, Content>,
): BlockLaid {
  let y = top + SIZES.heading
  const width = cell + SIZES.content
  const rows = strip.terminals.map(({ name, spare }): RowLaid => {
    const { cores = [], lines = [], height = SIZES.row } = contents.get(name) ?? {}
    const inner = { x: x + cell, width: SIZES.content - 8 }
    const row: RowLaid = {
      name,
      spare,
      x,
      y,
      width,
      height,
      cell: { x, y, width: cell, height },
      screw: [x + 6 + SIZES.screw, y + SIZES.row / 2],
      cores: cores.map((core, k) => ({
        core,
        ...inner,
        y: y + 8 + tagsHeight(cores.slice(0, k)),
        height: tagHeight(core),
      })),
      lines: lines.map((line, k) => ({
        ...line,
        ...inner,
        y: y + 8 + tagsHeight(cores) + k * SIZES.line,
        height: SIZES.line,
      })),
    }
    y += height
    return row
  })
  return { strip: strip.name, rows, x, y: top, width, height: y - top }
}
