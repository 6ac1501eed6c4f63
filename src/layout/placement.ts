/** From the layout library's answer to where everything goes. */
import { type Circuit, frameOf, nodeFrame, type Placement } from '../index.ts'
import type { ElkEdge, ElkNode } from './elk.d.ts'
import type { MadeGraph } from './graph.ts'

type Point = readonly [x: number, y: number]

const round = (x: number): number => Math.round(x * 100) / 100

/** Reads a graph that has been laid out. */
export function placementOf(circuit: Circuit, { turns, wires }: MadeGraph, laid: ElkNode): Placement {
  const boxes: Record<string, Placement['boxes'][string]> = {}
  for (const { id, x = 0, y = 0, width = 0, height = 0 } of laid.children ?? []) {
    const turn = turns.get(id)
    boxes[id] = { x: round(x), y: round(y), width, height, ...(turn === undefined ? {} : { turn }) }
  }
  const ends = endsOf(circuit, boxes)
  const routed = new Map((laid.edges ?? []).map((edge) => [edge.id, edge]))
  return {
    width: Math.ceil(laid.width ?? 0),
    height: Math.ceil(laid.height ?? 0),
    boxes,
    wires: wires.map(({ id, turned }) => {
      const edge = routed.get(id)
      const points = edge === undefined ? [] : pointsOf(edge)
      const { first, last } = ends.get(id) ?? { first: [0, 0], last: [0, 0] }
      return { id, points: straight([first, ...(turned ? points.toReversed() : points), last]) }
    }),
  }
}

/** One placement below another. */
export function below(upper: Placement, lower: Placement): Placement {
  const down = upper.height
  return {
    width: Math.max(upper.width, lower.width),
    height: down + lower.height,
    boxes: {
      ...upper.boxes,
      ...Object.fromEntries(
        Object.entries(lower.boxes).map(([id, box]) => [id, { ...box, y: round(box.y + down) }]),
      ),
    },
    wires: [
      ...upper.wires,
      ...lower.wires.map(({ id, points }) => ({
        id,
        points: points.map(([x, y]): Point => [x, round(y + down)]),
      })),
    ],
  }
}

/** Where each wire begins and ends: in the middle of a node, at a symbol's pin. */
export function endsOf(
  circuit: Circuit,
  boxes: Placement['boxes'],
): ReadonlyMap<string, { readonly first: Point; readonly last: Point }> {
  const middles = new Map<string, Point>()
  for (const node of circuit.nodes) middles.set(node.id, moved(nodeFrame(node).middle, boxes[node.id]))
  const middle = (id: string): Point => middles.get(id) ?? [0, 0]
  const ends = new Map<string, { readonly first: Point; readonly last: Point }>()
  for (const { id, from, to } of circuit.links) ends.set(id, { first: middle(from), last: middle(to) })
  for (const piece of circuit.pieces) {
    const box = boxes[piece.id]
    const { pins } = frameOf(piece, box?.turn)
    for (const { pin, node } of piece.ends)
      ends.set(`${piece.id}:${pin}`, { first: middle(node), last: moved(pins[pin]?.end ?? [0, 0], box) })
  }
  return ends
}

function moved([x, y]: Point, box: { readonly x: number; readonly y: number } | undefined): Point {
  return [round(x + (box?.x ?? 0)), round(y + (box?.y ?? 0))]
}

function pointsOf({ sections = [] }: ElkEdge): readonly Point[] {
  return sections.flatMap(({ startPoint, bendPoints = [], endPoint }) =>
    [startPoint, ...bendPoints, endPoint].map(({ x, y }): Point => [round(x), round(y)]),
  )
}

/** Without points that stand twice or in the middle of a straight line. */
function straight(points: readonly Point[]): readonly Point[] {
  const kept: Point[] = []
  for (const point of points) {
    const last = kept.at(-1)
    if (last !== undefined && last[0] === point[0] && last[1] === point[1]) continue
    const before = kept.at(-2)
    const inLine =
      last !== undefined &&
      before !== undefined &&
      ((before[0] === last[0] && last[0] === point[0]) || (before[1] === last[1] && last[1] === point[1]))
    if (inLine) kept.pop()
    kept.push(point)
  }
  return kept
}
