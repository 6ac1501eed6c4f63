/** Whether a placement can be read: no wire runs over a symbol, a node or their words. */
import type { Circuit, PlacedBox, Placement } from '../index.ts'

type Point = readonly [x: number, y: number]

/** Less than this is rounding. */
const LEAST = 0.5

/** Whether every wire keeps off every box but those it begins and ends in, and no two boxes lie on each other. */
export function isClear(circuit: Circuit, { boxes, wires }: Placement): boolean {
  const ends = endsOf(circuit)
  const all = Object.entries(boxes)
  const apart = all.every(([, p], k) => all.slice(k + 1).every(([, q]) => !overlap(p, q)))
  return (
    apart &&
    wires.every(({ id, points }) => {
      const [first, last] = ends.get(id) ?? []
      return points.slice(1).every((to, k) => {
        const from = points[k] ?? to
        return all.every(([name, box]) => {
          const isOwn = (k === 0 && name === first) || (k === points.length - 2 && name === last)
          return isOwn || !runsOver(from, to, box)
        })
      })
    })
  )
}

/** The boxes in which each wire begins and ends. */
function endsOf({ links, pieces }: Circuit): ReadonlyMap<string, readonly [first: string, last: string]> {
  return new Map([
    ...links.map(({ id, from, to }) => [id, [from, to] as const] as const),
    ...pieces.flatMap(({ id, ends }) =>
      ends.map(({ pin, node }) => [`${id}:${pin}`, [node, id] as const] as const),
    ),
  ])
}

function overlap(p: PlacedBox, q: PlacedBox): boolean {
  return (
    p.x + LEAST < q.x + q.width &&
    q.x + LEAST < p.x + p.width &&
    p.y + LEAST < q.y + q.height &&
    q.y + LEAST < p.y + p.height
  )
}

function runsOver([x1, y1]: Point, [x2, y2]: Point, { x, y, width, height }: PlacedBox): boolean {
  return (
    Math.max(x1, x2) > x + LEAST &&
    Math.min(x1, x2) < x + width - LEAST &&
    Math.max(y1, y2) > y + LEAST &&
    Math.min(y1, y2) < y + height - LEAST
  )
}
