/** Below the strips: parked cores, slots, every part with its values, and what the signs mean. */
import { type Mark, mark } from '../mark.ts'
import { type Box, boxAt, crossAt, lineThrough, lockAt, plusAt, shapeOf, textAt } from '../shapes.ts'
import { BOLD, fitText, textWidth } from '../text-size.ts'
import type { Board, BoardPart, BoardSlot } from './board.ts'
import { drawCore } from './draw-core.ts'
import { type BoardLaid, SIZES, tagHeight } from './lay-out.ts'
import type { DrawBoardOptions } from './options.ts'
import { sayFlow, sayPart, saySlot, waysOf } from './say.ts'
import { type Told, thingMark } from './thing-mark.ts'

const CHIP = 52
/** A parked core may say on a third line where it was. */
const PARKED = 66
const GAP = 8

/** Trays from a height on, and where they end. */
export function drawTrays(
  board: Board,
  laid: BoardLaid,
  options: DrawBoardOptions,
): { readonly marks: readonly Mark[]; readonly bottom: number } {
  const marks: Mark[] = []
  let y = laid.bottom + SIZES.gap
  const width = laid.width - 2 * SIZES.edge
  const perRow = Math.max(1, Math.floor((width + GAP) / (laid.column + GAP)))
  const chip = (width - (perRow - 1) * GAP) / perRow
  const tray = <T>(
    heading: string,
    all: readonly T[],
    draw: (one: T, box: Box) => Mark,
    tall: number = CHIP,
  ): void => {
    if (all.length === 0) return
    marks.push(
      textAt([SIZES.edge, y + 20], SIZES.name, fitText(heading, SIZES.name * BOLD, width), 'heading'),
    )
    y += 30
    all.forEach((one, k) => {
      const column = k % perRow
      const box = { x: SIZES.edge + column * (chip + GAP), y, width: chip, height: tall }
      marks.push(draw(one, box))
      if (column === perRow - 1 || k === all.length - 1) y += tall + GAP
    })
    y += GAP
  }
  const parked = board.cores.filter(({ lands }) => lands === undefined)
  tray(
    'Parked cores, on nothing',
    parked,
    (core, box) => drawCore(core, { ...box, height: tagHeight(core) }, options),
    parked.some(({ was }) => was !== undefined) ? PARKED : CHIP,
  )
  tray('Slots', board.slots, (slot, box) => slotChip(slot, box, options))
  tray('Parts', board.parts, (part, box) => partChip(part, box, options))
  const signs = signsOf(board, options)
  if (signs.length > 0) {
    marks.push(textAt([SIZES.edge, y + 20], SIZES.name, 'Signs', 'heading'))
    y += 30
    let x: number = SIZES.edge
    for (const [words, look, draw] of signs) {
      const room = 36 + textWidth(words, SIZES.small) + 20
      if (x > SIZES.edge && x + room > laid.width) {
        x = SIZES.edge
        y += 28
      }
      marks.push(
        mark('g', { class: look }, ...draw([x + 14, y + 13])),
        textAt([x + 36, y + 18], SIZES.small, fitText(words, SIZES.small, width - 36), 'soft'),
      )
      x += room
    }
    y += 28
  }
  return { marks, bottom: y + SIZES.edge }
}

function chipMark(
  told: Omit<Told, 'look'>,
  box: Box,
  first: string,
  second: string,
  weight: number,
  options: DrawBoardOptions,
): Mark {
  const { x, y, width } = box
  const signs =
    (told.change === undefined ? 0 : textWidth(told.change, SIZES.small) + 8) +
    (told.fixed === undefined ? 0 : 26)
  const right = x + width - 10
  return thingMark(
    { ...told, look: `thing chip${weight === 0 ? '' : ` flow flow-${weight}`}` },
    options,
    boxAt(box, 'body', { rx: 6 }),
    ...(weight === 0
      ? []
      : [
          lineThrough(
            [
              [x + 5, y + 8],
              [x + 5, y + CHIP - 8],
            ],
            'run',
          ),
        ]),
    textAt([x + 14, y + 21], SIZES.words, fitText(first, SIZES.words * BOLD, width - 24 - signs), 'strong'),
    textAt([x + 14, y + 41], SIZES.small, fitText(second, SIZES.small, width - 24), 'soft'),
    ...(told.fixed === undefined ? [] : [lockAt([right - 12, y + 12])]),
    ...(told.change === undefined
      ? []
      : [
          textAt(
            [right - (told.fixed === undefined ? 0 : 20), y + 21],
            SIZES.small,
            told.change,
            'soft',
            'end',
          ),
        ]),
  )
}

function partChip(part: BoardPart, box: Box, options: DrawBoardOptions): Mark {
  const { thing, name, says, values, change, fixed, bridged, ends } = part
  const flow = options.carries?.[thing]
  const [first] = ends
  const way = ends.length === 2 ? sayFlow(flow, first?.on ?? '', first?.other ?? '') : sayFlow(flow, '', '')
  const what = [
    ...(says === name ? [] : [says]),
    ...(values === '' ? [] : [values]),
    ...(bridged ? ['bridged'] : []),
  ]
  return chipMark(
    {
      thing,
      says: [sayPart(part), ...way].join(', '),
      ...(change === undefined ? {} : { change }),
      ...(fixed === undefined ? {} : { fixed }),
    },
    box,
    `${name}: ${waysOf(part).replaceAll(' to ', '–')}`,
    what.join(', '),
    flow?.weight ?? 0,
    options,
  )
}

function slotChip(slot: BoardSlot, box: Box, options: DrawBoardOptions): Mark {
  const { thing, name, fitted, needsUnit, sockets, change } = slot
  const holds = fitted ?? (needsUnit ? 'empty, needs a unit' : 'empty')
  return chipMark(
    { thing, says: saySlot(slot), ...(change === undefined ? {} : { change }) },
    box,
    `${name}: ${holds}`,
    sockets.map(({ pin, terminal }) => `${pin} ${terminal}`).join(', '),
    options.carries?.[thing]?.weight ?? 0,
    options,
  )
}

type Point = readonly [x: number, y: number]
type Sign = readonly [words: string, look: string, draw: (at: Point) => readonly Mark[]]

/** Only signs that occur are explained. */
function signsOf(board: Board, options: DrawBoardOptions): readonly Sign[] {
  const run = ([x, y]: Point): Mark =>
    lineThrough(
      [
        [x - 12, y],
        [x + 12, y],
      ],
      'run',
    )
  const holds = new Set(board.straps.map(({ hold }) => hold))
  const fixed = [...board.straps, ...board.parts].some((one) => one.fixed !== undefined)
  const gone = board.straps.some(({ change }) => change === 'taken out')
  const all: readonly (readonly [occurs: boolean, sign: Sign])[] = [
    [holds.has('screw'), ['strap under screws', 'strap hold-screw', (at) => [run(at)]]],
    [
      holds.has('solder'),
      [
        'soldered strap',
        'strap hold-solder',
        ([x, y]) => [
          run([x, y]),
          shapeOf(
            [
              [x - 7, y],
              [x, y - 7],
              [x + 7, y],
              [x, y + 7],
            ],
            'solder',
          ),
        ],
      ],
    ],
    [
      holds.has('board'),
      [
        'strap of the board',
        'strap hold-board',
        ([x, y]) => [
          run([x, y]),
          lineThrough(
            [
              [x - 12, y],
              [x + 12, y],
            ],
            'core-line',
          ),
        ],
      ],
    ],
    [gone, ['strap taken out', 'strap taken-out', (at) => [run(at), crossAt(at, 7, 'cross')]]],
    [fixed, ['cannot be moved', 'sample', ([x, y]) => [lockAt([x - 6, y - 2])]]],
    [(options.offered?.size ?? 0) > 0, ['it can go here', 'sample', (at) => [plusAt(at, 7, 'sign')]]],
    [
      (options.path?.length ?? 0) > 0,
      [
        'on the path of the verdict',
        'sample',
        ([x, y]) => [mark('circle', { class: 'ring', cx: x, cy: y, r: 9 })],
      ],
    ],
  ]
  return all.filter(([occurs]) => occurs).map(([, sign]) => sign)
}
