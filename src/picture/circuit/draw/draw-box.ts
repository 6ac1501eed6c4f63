/** Symbols and nodes with their words. */
import { type Mark, mark } from '../../mark.ts'
import type { CircuitNode, CircuitPiece, PlacedBox } from '../circuit.ts'
import { short, strokeMarks } from '../draw-symbol.ts'
import { frameOf, nodeFrame, RADIUS, type Words } from '../frame.ts'
import { drawnOnce } from './once.ts'
import type { DrawCircuitOptions } from './options.ts'
import { stateOf, thingGroup, thingWords, toldWith, weightClass } from './thing-group.ts'

/** A part with its symbol. */
export function pieceMark(
  piece: CircuitPiece,
  box: PlacedBox | undefined,
  path: ReadonlySet<string>,
  options: DrawCircuitOptions,
): Mark {
  const onPath = path.has(piece.id)
  return drawnOnce(piece, box, stateOf(piece.thing, onPath, options), () => {
    const { x = 0, y = 0, turn } = box ?? {}
    const frame = frameOf(piece, turn)
    const flows = new Map(piece.ends.map(({ pin, flow }) => [pin, weightClass(flow, options)]))
    const gate = piece.gate === undefined ? '' : ` gate ${piece.gate}`
    const says = [piece.label, piece.values, piece.gate]
      .filter((one) => one !== undefined && one !== '')
      .join(', ')
    return thingGroup(
      `piece${gate}${onPath ? ' on-way' : ''}${weightClass(piece.flow, options)}`,
      piece.thing,
      toldWith(says, piece.flow, options),
      options,
      hitMark(box),
      ...strokeMarks(piece.outline, frame, [x, y], (pin) => flows.get(pin) ?? ''),
      ...wordMarks(frame.words, x, y),
    )
  })
}

/** A node: a terminal's circle, a joint's dot, earth. */
export function nodeMark(
  node: CircuitNode,
  box: PlacedBox | undefined,
  path: ReadonlySet<string>,
  options: DrawCircuitOptions,
): Mark {
  const onPath = path.has(node.id)
  return drawnOnce(node, box, stateOf(node.thing, onPath, options), () => {
    const { x = 0, y = 0 } = box ?? {}
    const { middle, words } = nodeFrame(node)
    const [cx, cy] = [x + middle[0], y + middle[1]]
    const circle = (r: number, look: string): Mark =>
      mark('circle', { class: look, cx: short(cx), cy: short(cy), r })
    return thingGroup(
      `node at-${node.looks}${onPath ? ' on-way' : ''}`,
      node.thing,
      node.thing === undefined ? node.label : thingWords(node.thing),
      options,
      hitMark(box),
      ...(onPath && node.looks !== 'earth' ? [circle(radiusOf(node) + 4, 'halo')] : []),
      node.looks === 'earth' ? earthMark(cx, cy) : circle(radiusOf(node), 'knot'),
      ...wordMarks([words], x, y),
    )
  })
}

/** By how much the frame about something that is chosen stands off its words. */
const OFF = 2

function hitMark(box: PlacedBox | undefined): Mark {
  const { x = 0, y = 0, width = 0, height = 0 } = box ?? {}
  return mark('rect', {
    class: 'hit',
    x: short(x - OFF),
    y: short(y - OFF),
    width: width + 2 * OFF,
    height: height + 2 * OFF,
    rx: 4,
  })
}

function wordMarks(words: readonly Words[], x: number, y: number): readonly Mark[] {
  return words.map(({ text, at, anchor, class: look }) =>
    mark(
      'text',
      {
        class: look,
        x: short(x + at[0]),
        y: short(y + at[1]),
        ...(anchor === 'middle' ? { 'text-anchor': 'middle' } : {}),
      },
      text,
    ),
  )
}

function radiusOf({ looks }: CircuitNode): number {
  return looks === 'joint' ? 2.6 : looks === 'terminal' ? RADIUS : 3
}

/** Earth as IEC 60617 draws it, from memory: three strokes, each shorter than the one above. */
function earthMark(x: number, y: number): Mark {
  const stroke = (half: number, down: number): string => `M${short(x - half)} ${short(y + down)}h${2 * half}`
  return mark('path', {
    class: 'symbol',
    d: `M${short(x)} ${short(y)}v8${stroke(9, 8)}${stroke(6, 12)}${stroke(3, 16)}`,
  })
}
