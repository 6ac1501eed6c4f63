/** One terminal with all that lies at it. */
import type { Flow } from '../circuit/circuit.ts'
import { branchKey } from '../circuit/flows.ts'
import { type Mark, mark } from '../mark.ts'
import { arrowHead, boxAt, circleAt, crossAt, lineThrough, plusAt, shapeOf, textAt } from '../shapes.ts'
import { fitText } from '../text-size.ts'
import type { Thing } from '../thing.ts'
import { drawCore } from './draw-core.ts'
import { type RowLaid, type RowLine, SIZES } from './lay-out.ts'
import type { DrawBoardOptions } from './options.ts'
import { sayPart, saySlot } from './say.ts'
import { thingMark } from './thing-mark.ts'

export function drawRow(row: RowLaid, isFirst: boolean, options: DrawBoardOptions): Mark {
  return mark(
    'g',
    { class: 'row', 'data-at': row.name },
    boxAt(row, 'row-back'),
    ...(isFirst
      ? []
      : [
          lineThrough(
            [
              [row.x, row.y],
              [row.x + row.width, row.y],
            ],
            'row-line',
          ),
        ]),
    terminalMark(row, options),
    ...row.cores.map(({ core, ...box }) => drawCore(core, box, options)),
    ...row.lines.map((line) => lineMark(line, row.name, options)),
  )
}

function terminalMark(row: RowLaid, options: DrawBoardOptions): Mark {
  const { name, spare, cell, screw } = row
  const [x, y] = screw
  const thing: Thing = `terminal:${name}`
  const lead = leadAt(name, options)
  const onPath = options.path?.includes(name) ?? false
  const says = [
    `terminal ${name}`,
    ...(spare ? ['spare'] : []),
    ...(row.cores.length === 0
      ? []
      : [`cores ${row.cores.map(({ core }) => `${core.cord} ${core.core}`).join(' and ')}`]),
    ...(lead === undefined ? [] : [`${lead} of the meter`]),
    ...(onPath ? ['on the path'] : []),
  ].join(', ')
  const left = x + SIZES.screw + 8
  const sign: readonly [number, number] = [cell.x + cell.width - SIZES.sign, y - 6]
  const room = cell.width - (left - cell.x) - 4
  return thingMark(
    {
      thing,
      look: 'thing terminal',
      says,
      at: name,
      states: [...(spare ? ['spare'] : []), ...(onPath ? ['on-path'] : [])],
    },
    options,
    boxAt({ x: cell.x + 2, y: cell.y + 2, width: cell.width - 6, height: cell.height - 4 }, 'hit', { rx: 6 }),
    ...(onPath ? [circleAt(screw, SIZES.screw + 4.5, 'ring')] : []),
    circleAt(screw, SIZES.screw, 'screw'),
    lineThrough(
      [
        [x - 7, y + 7],
        [x + 7, y - 7],
      ],
      'slot-line',
    ),
    textAt(
      [left, spare && lead !== undefined ? y - 8 : spare || lead !== undefined ? y : y + 6],
      SIZES.name,
      name,
      'name',
    ),
    ...(spare ? [textAt([left, lead === undefined ? y + 16 : y + 8], SIZES.small, 'spare', 'soft')] : []),
    ...(lead === undefined ? [] : leadMarks(row, lead, options, room)),
    ...(options.offered?.has(thing) ? [plusAt(sign, 7, 'sign')] : []),
    ...(options.refused?.has(thing) ? [crossAt(sign, 6, 'sign')] : []),
  )
}

function leadAt(name: string, { leads }: DrawBoardOptions): string | undefined {
  if (leads?.red === name) return leads.black === name ? 'both leads' : 'red lead'
  return leads?.black === name ? 'black lead' : undefined
}

/** A point for the red lead, a square for the black one, and the word. */
function leadMarks(row: RowLaid, words: string, { leads }: DrawBoardOptions, room: number): readonly Mark[] {
  const [x, y] = row.screw
  const red = shapeOf(
    [
      [x - 7, y - 30],
      [x + 7, y - 30],
      [x, y - 16],
    ],
    'lead lead-red',
  )
  const black = boxAt({ x: x - 6, y: y + 16, width: 12, height: 12 }, 'lead lead-black')
  return [
    ...(leads?.red === row.name ? [red] : []),
    ...(leads?.black === row.name ? [black] : []),
    textAt(
      [x + SIZES.screw + 8, y + (row.spare ? 25 : 16)],
      SIZES.small,
      fitText(words, SIZES.small, room),
      'soft',
    ),
  ]
}

/** The end of a part, with where its other end goes, or the socket of a slot. */
function lineMark(line: RowLine, at: string, options: DrawBoardOptions): Mark {
  const base = line.y + 14
  const left = line.x + 22
  const words = (text: string): Mark =>
    textAt([left, base], SIZES.small, fitText(text, SIZES.small, line.width - 24), 'end')
  const middle = line.y + SIZES.line / 2
  if ('slot' in line) {
    const { slot, pin } = line
    const told = { thing: slot.thing, look: 'thing line', says: saySlot(slot), at, beside: true as const }
    const fitted = slot.fitted === undefined ? 'empty' : slot.fitted
    return thingMark(
      told,
      options,
      boxAt({ x: line.x + 4, y: middle - 5, width: 10, height: 10 }, 'socket'),
      words(`${slot.name} ${pin}, ${fitted}`),
    )
  }
  const { part, index } = line
  const end = part.ends[index]
  const branch = end?.branch === undefined ? '' : ` ${end.branch}`
  const carrier = end?.branch === undefined ? part.thing : branchKey(part.thing, end.branch)
  const flow = options.carries?.[carrier]
  return thingMark(
    {
      thing: part.thing,
      look: 'thing line',
      says: sayPart(part),
      at,
      beside: true,
      ...(part.change === undefined ? {} : { change: part.change }),
    },
    options,
    ...(part.change === 'taken out'
      ? [crossAt([line.x + 9, middle], 5, 'cross')]
      : flow === undefined || flow.weight === 0
        ? [
            lineThrough(
              [
                [line.x + 4, middle],
                [line.x + 14, middle],
              ],
              'lead-out',
            ),
          ]
        : [endFlow(flow, line.x, middle, index % 2 === 0 ? flow.sense : -flow.sense)]),
    words(`${part.name}${branch} → ${end?.other ?? ''}`),
  )
}

/** The current at a part’s end: to the right it flows into the part; without an arrow where no more flows than leaks. */
function endFlow(flow: Flow, x: number, y: number, away: number): Mark {
  return mark(
    'g',
    { class: `flow flow-${flow.weight}` },
    lineThrough(
      [
        [away < 0 ? x + 6 : x, y],
        [away > 0 ? x + 12 : x + 18, y],
      ],
      'run',
    ),
    ...(away === 0 ? [] : [arrowHead([away > 0 ? x + 19 : x - 1, y], away > 0 ? 'right' : 'left', 5)]),
  )
}
