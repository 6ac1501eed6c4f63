/** The tag of a core: pattern, name, colour word and code, and what became of it. */
import type { Flow } from '../circuit/circuit.ts'
import { type Mark, mark } from '../mark.ts'
import { arrowHead, type Box, boxAt, lineThrough, shapeOf, textAt } from '../shapes.ts'
import { BOLD, fitText } from '../text-size.ts'
import type { BoardCore, CoreColour } from './board.ts'
import { SIZES } from './lay-out.ts'
import type { DrawBoardOptions } from './options.ts'
import { colourText, sayCore, sayFlow } from './say.ts'
import { thingMark } from './thing-mark.ts'

const SWATCH = 18
/** Room for the arrow of a current. */
const FLOW = 34

export function drawCore(core: BoardCore, box: Box, options: DrawBoardOptions): Mark {
  const { x, y, width } = box
  const flow = options.carries?.[core.thing]
  const room = width - SWATCH - 20 - (flow === undefined ? 0 : FLOW)
  const left = x + SWATCH + 12
  const colour = core.colour === undefined ? '' : colourText(core.colour)
  const at = core.lands === undefined ? {} : { at: core.lands }
  const states = core.lands === undefined ? { states: ['parked'] } : {}
  const change = core.change === undefined ? {} : { change: core.change }
  const says = [sayCore(core), ...sayFlow(flow, `the ${core.endsIn}`, core.lands ?? '')].join(', ')
  return thingMark(
    { thing: core.thing, look: 'thing tag', says, ...at, ...states, ...change },
    options,
    boxAt(box, 'body', { rx: 6 }),
    ...swatch(core.colour, { x: x + 6, y: y + 6, width: SWATCH, height: SIZES.tag - 12 }),
    textAt(
      [left, y + 20],
      SIZES.words,
      fitText(`${core.cord} ${core.core}`, SIZES.words * BOLD, room),
      'strong',
    ),
    textAt([left, y + 38], SIZES.small, fitText(colour, SIZES.small, room), 'soft'),
    ...(core.was === undefined
      ? []
      : [textAt([left, y + 57], SIZES.small, fitText(wasText(core.was), SIZES.small, room), 'soft')]),
    ...(flow === undefined ? [] : [flowArrow(flow, x + width - FLOW, y + SIZES.tag / 2)]),
  )
}

function wasText(was: string): string {
  return was === 'parked' ? 'moved, was parked' : `moved, was ${was}`
}

/** The current of a core: to the left it flows to the terminal, to the right away from it. */
function flowArrow(flow: Flow, x: number, y: number): Mark {
  const left = flow.sense > 0
  const heads = flow.sense === 0 ? [] : [arrowHead([left ? x : x + 28, y], left ? 'left' : 'right', 6)]
  return mark(
    'g',
    { class: `flow flow-${flow.weight}` },
    lineThrough(
      [
        [left ? x + 6 : x, y],
        [left ? x + 28 : x + 22, y],
      ],
      'run',
    ),
    ...heads,
  )
}

/** One colour is plain, two are bands one above the other in turn, none that is known is left open with a stroke across. */
function swatch(colour: CoreColour | undefined, box: Box): readonly Mark[] {
  const { x, y, width, height } = box
  const [first, second] = colour?.colours ?? []
  if (first === undefined) {
    return [
      boxAt(box, 'swatch core-unknown', { rx: 3 }),
      lineThrough(
        [
          [x, y + height],
          [x + width, y],
        ],
        'swatch-line',
      ),
    ]
  }
  const plain = boxAt(box, `swatch core-${first}`, { rx: 3 })
  if (second === undefined) return [plain]
  const band = height / 6
  const bands = [0, 1, 2].map((k) => {
    const top = y + band * (2 * k + 0.25)
    return shapeOf(
      [
        [x, top + band],
        [x + width, top],
        [x + width, top + band],
        [x, top + 2 * band],
      ],
      `swatch-band core-${second}`,
    )
  })
  return [plain, ...bands]
}
