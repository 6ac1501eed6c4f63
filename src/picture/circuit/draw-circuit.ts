/** The circuit picture. */
import { type Mark, mark } from '../mark.ts'
import type { Circuit, Placement } from './circuit.ts'
import { nodeMark, pieceMark } from './draw/draw-box.ts'
import { arrowMarks, stretchMark, wireBook } from './draw/draw-stretch.ts'
import type { DrawCircuitOptions } from './draw/options.ts'
import { short } from './draw-symbol.ts'
import { stretchesOf } from './draw-wires.ts'
import { nodeFrame, TEXT } from './frame.ts'

/** Draws a circuit where it was placed. Words and shapes say everything; styles come from outside. */
export function drawCircuit(circuit: Circuit, placement: Placement, options: DrawCircuitOptions = {}): Mark {
  const { width, height, boxes } = placement
  const { stretches, dots } = stretchesOf(circuit, placement)
  const path = new Set(options.path)
  const book = wireBook(circuit)
  const says = `Circuit of ${circuit.name}`
  return mark(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      class: `picture circuit${options.live === true ? ' live' : ''}`,
      viewBox: `0 0 ${width} ${height}`,
      width,
      height,
      'font-size': TEXT,
      role: options.live === true ? 'group' : 'img',
      'aria-label': says,
    },
    mark('title', {}, says),
    mark('g', { class: 'wires' }, ...stretches.map((one) => stretchMark(one, book, path, options))),
    ...stretches.flatMap((one) => arrowMarks(one, book, options)),
    junctionMarks(circuit, boxes, dots),
    ...circuit.pieces.map((piece) => pieceMark(piece, boxes[piece.id], path, options)),
    ...circuit.nodes.map((node) => nodeMark(node, boxes[node.id], path, options)),
  )
}

/** Dots where wires meet without a node's own mark. */
function junctionMarks(
  circuit: Circuit,
  boxes: Placement['boxes'],
  dots: readonly (readonly [x: number, y: number])[],
): Mark {
  const marked = new Set(
    circuit.nodes.map((node) => {
      const box = boxes[node.id]
      const [x, y] = nodeFrame(node).middle
      return `${short(x + (box?.x ?? 0))},${short(y + (box?.y ?? 0))}`
    }),
  )
  return mark(
    'g',
    { class: 'junctions' },
    ...dots
      .filter(([x, y]) => !marked.has(`${short(x)},${short(y)}`))
      .map(([x, y]) => mark('circle', { class: 'junction', cx: short(x), cy: short(y), r: 2.6 })),
  )
}
