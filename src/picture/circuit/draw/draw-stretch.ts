/** Stretches of wire: links that are things, joins, and arrows of what flows. */
import { type Mark, mark } from '../../mark.ts'
import type { Circuit } from '../circuit.ts'
import { short } from '../draw-symbol.ts'
import type { Stretch } from '../draw-wires.ts'
import { drawnOnce } from './once.ts'
import type { DrawCircuitOptions } from './options.ts'
import { stateOf, thingGroup, thingWords, toldWith, weightClass } from './thing-group.ts'

/** What a circuit picture looks up about its wires. */
export interface WireBook {
  readonly links: ReadonlyMap<string, Circuit['links'][number]>
  /** The symbol of each wire that ends at a pin. */
  readonly pieces: ReadonlyMap<string, Circuit['pieces'][number]>
  readonly labels: ReadonlyMap<string, string>
}

const books = new WeakMap<Circuit, WireBook>()

/** The wires of a circuit by id. */
export function wireBook(circuit: Circuit): WireBook {
  const before = books.get(circuit)
  if (before !== undefined) return before
  const made: WireBook = {
    links: new Map(circuit.links.map((link) => [link.id, link])),
    pieces: new Map(
      circuit.pieces.flatMap((piece) => piece.ends.map(({ pin }) => [`${piece.id}:${pin}`, piece] as const)),
    ),
    labels: new Map(circuit.nodes.map(({ id, label }) => [id, label])),
  }
  books.set(circuit, made)
  return made
}

/** A stretch of wire; a thing where it is one wire of a link. */
export function stretchMark(
  stretch: Stretch,
  book: WireBook,
  path: ReadonlySet<string>,
  options: DrawCircuitOptions,
): Mark {
  const [only = ''] = stretch.wires
  const link = stretch.wires.length === 1 ? book.links.get(only) : undefined
  const onPath = path.size > 0 && stretch.wires.some((wire) => liesOn(wire, book, path))
  return drawnOnce(stretch, undefined, stateOf(link?.thing, onPath, options), () => {
    const d = `M${stretch.points.map(([x, y]) => `${short(x)} ${short(y)}`).join('L')}`
    const wire = mark('path', { class: `wire${weightClass(stretch.flow, options)}`, d })
    const marks = onPath
      ? [mark('path', { class: 'way', d }), mark('path', { class: 'way-inside', d }), wire]
      : [wire]
    if (link?.thing === undefined) return mark('g', { class: 'join' }, ...marks)
    const name = (id: string): string => book.labels.get(id) ?? id
    const says = `${thingWords(link.thing)}, ${name(link.from)} to ${name(link.to)}`
    return thingGroup(
      `link ${link.sort}${onPath ? ' on-way' : ''}`,
      link.thing,
      toldWith(says, link.flow, options),
      options,
      mark('path', { class: 'reach', d }),
      mark('path', { class: 'reach-inside', d }),
      ...marks,
      ...plateMarks(link.sort, stretch.points),
    )
  })
}

/** A strap is marked as the thing with two tags that it is: a small plate near its first end. */
function plateMarks(sort: string, points: Stretch['points']): readonly Mark[] {
  const { at, along, length } = longest(points)
  if (sort !== 'strap' || length < 14) return []
  const [right, down] = along
  const [x, y] = [at[0] - right * (length / 2 - 6), at[1] - down * (length / 2 - 6)]
  return [mark('rect', { class: 'plate', x: short(x - 3), y: short(y - 3), width: 6, height: 6 })]
}

/** The longest straight piece of a stretch: its middle, where it runs, how long it is. */
function longest(points: Stretch['points']): {
  readonly at: readonly [number, number]
  readonly along: readonly [number, number]
  readonly length: number
} {
  let best = {
    at: [0, 0] as readonly [number, number],
    along: [1, 0] as readonly [number, number],
    length: 0,
  }
  points.slice(1).forEach(([x, y], k) => {
    const [u, v] = points[k] ?? [x, y]
    const length = Math.abs(x - u) + Math.abs(y - v)
    if (length <= best.length) return
    best = { at: [(x + u) / 2, (y + v) / 2], along: [Math.sign(x - u), Math.sign(y - v)], length }
  })
  return best
}

function liesOn(wire: string, { links, pieces }: WireBook, path: ReadonlySet<string>): boolean {
  const link = links.get(wire)
  if (link !== undefined) return path.has(wire) || (path.has(link.from) && path.has(link.to))
  const piece = pieces.get(wire)
  if (piece === undefined) return false
  const nodes = piece.ends.filter(({ node }) => path.has(node))
  return path.has(piece.id) || (nodes.length > 1 && nodes.some(({ pin }) => `${piece.id}:${pin}` === wire))
}

/** How far an arrowhead reaches, by weight. */
const HEADS: readonly number[] = [0, 4, 5, 6, 7]

/** An arrowhead in the middle of the longest straight piece, where there is room for it. */
export function arrowMarks(
  stretch: Stretch,
  { pieces }: WireBook,
  options: DrawCircuitOptions,
): readonly Mark[] {
  const { points, flow, wires } = stretch
  // nothing goes through an open contact, so none points at it
  if (wires.every((wire) => pieces.get(wire)?.gate === 'open')) return []
  if (options.flows === false || flow === undefined || flow.weight === 0 || flow.sense === 0) return []
  const head = HEADS[flow.weight] ?? 4
  const { at, along, length } = longest(points)
  if (length < 2 * head + 12) return []
  const sense = flow.sense
  return [
    drawnOnce(stretch, undefined, 'arrow', () => {
      const [dx, dy] = [along[0] * sense * head, along[1] * sense * head]
      const half = 0.75
      const corner = (ahead: number, across: number): string =>
        `${short(at[0] + ahead * dx - across * dy)} ${short(at[1] + ahead * dy + across * dx)}`
      const d = `M${corner(1, 0)}L${corner(-0.8, half)}L${corner(-0.8, -half)}Z`
      return mark('path', { class: `arrowhead flow-${flow.weight}`, d })
    }),
  ]
}
