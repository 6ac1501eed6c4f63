/** A strap in its lane, and by what it is held. */
import { type Mark, mark } from '../mark.ts'
import { arrowHead, boxAt, crossAt, lineThrough, lockAt, shapeOf } from '../shapes.ts'
import type { StrapLaid } from './lay-out.ts'
import type { DrawBoardOptions } from './options.ts'
import { sayFlow, sayStrap } from './say.ts'
import { thingMark } from './thing-mark.ts'

export function drawStrap({ strap, points, grips }: StrapLaid, options: DrawBoardOptions): Mark {
  const { thing, from, to, hold, change, fixed } = strap
  const flow = change === 'taken out' ? undefined : options.carries?.[thing]
  const [start, ...rest] = points
  const end = rest.at(-1)
  const [middle, sense] = middleOf(points)
  const asked = options.carries !== undefined && change !== 'taken out'
  const weight = asked ? ` flow flow-${flow?.weight ?? 0}` : ''
  return thingMark(
    {
      thing,
      look: `thing strap hold-${hold}`,
      says: [sayStrap(strap), ...sayFlow(flow, from, to)].join(', '),
      ...(change === undefined ? {} : { change }),
      ...(fixed === undefined ? {} : { fixed }),
    },
    options,
    lineThrough(points, 'reach'),
    ...grips.map((grip) => boxAt(grip, 'hit', { rx: 6 })),
    lineThrough(points, `run${weight}`),
    ...(hold === 'board' ? [lineThrough(points, 'core-line')] : []),
    ...[start, end].flatMap((point) => (point === undefined ? [] : [holdMark(point, hold)])),
    ...(change === 'taken out' ? [crossAt(middle, 7, 'cross')] : []),
    ...(fixed === undefined ? [] : [lockBeside(middle)]),
    ...(flow === undefined || flow.sense === 0 || flow.weight === 0
      ? []
      : [mark('g', { class: 'flow' }, arrowHead(middle, flow.sense * sense > 0 ? 'down' : 'up', 8))]),
  )
}

/** The lock sits on a patch of its own, above the middle, where no arrow is. */
function lockBeside([x, y]: readonly [number, number]): Mark {
  return mark(
    'g',
    { class: 'locked' },
    boxAt({ x: x - 10, y: y - 30, width: 20, height: 20 }, 'lock-back', { rx: 4 }),
    lockAt([x - 6, y - 19]),
  )
}

/** Solder is a lozenge at each end; the board needs no mark at its ends. */
function holdMark([x, y]: readonly [number, number], hold: StrapLaid['strap']['hold']): Mark {
  if (hold === 'solder')
    return shapeOf(
      [
        [x - 7, y],
        [x, y - 7],
        [x + 7, y],
        [x, y + 7],
      ],
      'solder',
    )
  return mark('circle', { class: 'strap-end', cx: x, cy: y, r: hold === 'screw' ? 4 : 2.5 })
}

/** The middle of its first upright run, and whether that goes down (1) or up (−1) from the first end to the second. */
function middleOf(points: StrapLaid['points']): readonly [point: readonly [number, number], sense: 1 | -1] {
  const [, [x = 0, y1 = 0] = [], [, y2 = 0] = []] = points
  return [[x, (y1 + y2) / 2], y2 >= y1 ? 1 : -1]
}
