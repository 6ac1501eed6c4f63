/** The terminal picture. */
import { type Mark, mark } from '../mark.ts'
import { boxAt, textAt } from '../shapes.ts'
import { BOLD, fitText, wrapText } from '../text-size.ts'
import type { Board } from './board.ts'
import { drawRow } from './draw-row.ts'
import { drawStrap } from './draw-strap.ts'
import { drawTrays } from './draw-trays.ts'
import { type BlockLaid, layOut, SIZES } from './lay-out.ts'
import type { DrawBoardOptions } from './options.ts'

/** Strips that may stand side by side when nothing else is said. */
const USUAL_COLUMNS = 3

/** The sizes of letters of the title. */
const TITLE = 20

/**
 * Draws a board: an `svg` element with a view box, the same for the same board and options. Marks that stand for a
 * thing carry it as `data-thing`, and as `data-at` the terminal at which they lie. With `live` they are buttons.
 */
export function drawBoard(board: Board, options: DrawBoardOptions = {}): Mark {
  const columns = options.columns ?? USUAL_COLUMNS
  // on a page the page's own heading names the set
  const isNamed = options.live !== true
  const words = !isNamed || board.title === undefined ? [] : [board.title]
  // the width hangs on the columns alone, the heights on how many lines the title takes in it
  const { width } = layOut(board, columns, 0)
  const room = width - 2 * SIZES.edge
  const titles = words.flatMap((text) => wrapText(text, SIZES.words, room))
  const top = isNamed ? 40 + titles.length * 20 : SIZES.edge
  const laid = layOut(board, columns, top)
  const trays = drawTrays(board, laid, options)
  const height = trays.bottom
  const says = `Terminals of ${board.set}${board.title === undefined ? '' : `, ${board.title}`}`
  return mark(
    'svg',
    {
      class: `picture board${options.live ? ' live' : ''}`,
      width,
      height,
      viewBox: `0 0 ${width} ${height}`,
      role: options.live ? 'group' : 'img',
      'aria-label': says,
    },
    mark('title', {}, says),
    ...(isNamed ? [textAt([SIZES.edge, 28], TITLE, fitText(board.set, TITLE * BOLD, room), 'title')] : []),
    ...titles.map((text, k) => textAt([SIZES.edge, 48 + k * 20], SIZES.words, text, 'soft')),
    ...laid.blocks.map((block) => drawBlock(block, options)),
    mark('g', { class: 'straps' }, ...laid.straps.map((strap) => drawStrap(strap, options))),
    ...trays.marks,
  )
}

function drawBlock(block: BlockLaid, options: DrawBoardOptions): Mark {
  const { x, y, width, height, strip, rows } = block
  const body = { x, y: y + SIZES.heading, width, height: height - SIZES.heading }
  return mark(
    'g',
    { class: 'block' },
    textAt([x + 6, y + 24], SIZES.name, fitText(`Strip ${strip}`, SIZES.name * BOLD, width - 12), 'heading'),
    boxAt(body, 'strip', { rx: 8 }),
    ...rows.map((row, k) => drawRow(row, k === 0, options)),
  )
}
