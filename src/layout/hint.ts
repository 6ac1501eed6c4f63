/** What a placement of before is worth for a circuit: everything, an order to keep, or nothing. */
import { type Circuit, frameOf, nodeFrame, type Placement } from '../index.ts'
import { endsOf } from './placement.ts'

/** A circuit with fewer of its boxes in a placement, as a share, is another circuit. */
const LEAST_KNOWN = 0.75

/** Whether a placement is one of this very circuit: every box as large as it was, every wire from and to where it goes. */
export function fits(circuit: Circuit, { boxes, wires }: Placement): boolean {
  const sizes = new Map<string, { readonly width: number; readonly height: number }>([
    ...circuit.nodes.map((node) => [node.id, nodeFrame(node)] as const),
    ...circuit.pieces.map((piece) => [piece.id, frameOf(piece, boxes[piece.id]?.turn)] as const),
  ])
  if (Object.keys(boxes).length !== sizes.size) return false
  for (const [id, { width, height }] of sizes) {
    const box = boxes[id]
    if (box === undefined || box.width !== width || box.height !== height) return false
  }
  const ends = endsOf(circuit, boxes)
  return (
    wires.length === ends.size &&
    wires.every(({ id, points }) => {
      const own = ends.get(id)
      return own !== undefined && isAt(points[0], own.first) && isAt(points.at(-1), own.last)
    })
  )
}

/** Whether most of a circuit lay in a placement, so that its order can be kept. */
export function isLike({ nodes, pieces }: Circuit, { boxes }: Placement): boolean {
  const all = [...nodes, ...pieces]
  const known = all.filter(({ id }) => boxes[id] !== undefined)
  return known.length >= LEAST_KNOWN * all.length
}

/** Half a hundredth, to which places are rounded, and a little. */
const NEAR = 0.02

function isAt(point: readonly [number, number] | undefined, [x, y]: readonly [number, number]): boolean {
  return point !== undefined && Math.abs(point[0] - x) < NEAR && Math.abs(point[1] - y) < NEAR
}
