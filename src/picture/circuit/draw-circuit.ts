/** The circuit picture. */
import { type Mark, mark } from '../mark.ts'
import { type Thing, thingParts } from '../thing.ts'
import type { Circuit, CircuitNode, CircuitPiece, Flow, PlacedBox, Placement } from './circuit.ts'
import { short, strokeMarks } from './draw-symbol.ts'
import { type Stretch, stretchesOf } from './draw-wires.ts'
import { frameOf, nodeFrame, RADIUS, TEXT, type Words } from './frame.ts'
import { flowText } from './words.ts'

/** How a circuit is drawn. */
export interface DrawCircuitOptions {
  readonly selected?: Thing
  /** Things that a next step may go to. */
  readonly offered?: readonly Thing[]
  /** Node or branch ids of a way through the circuit that is marked. */
  readonly path?: readonly string[]
  /** Marks that stand for things can be reached and worked by keyboard. */
  readonly live?: boolean
  /** Draws what flows; it does when absent. */
  readonly flows?: boolean
}

/** Draws a circuit where it was placed. Words and shapes say everything; styles come from outside. */
export function drawCircuit(circuit: Circuit, placement: Placement, options: DrawCircuitOptions = {}): Mark {
  const { width, height, boxes } = placement
  const { stretches, dots } = stretchesOf(circuit, placement)
  const circles = new Set(
    circuit.nodes.map((node) => {
      const box = boxes[node.id]
      const [x, y] = nodeFrame(node).middle
      return `${short(x + (box?.x ?? 0))},${short(y + (box?.y ?? 0))}`
    }),
  )
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
      'aria-label': `Circuit of ${circuit.name}`,
    },
    mark('g', { class: 'wires' }, ...stretches.map((one) => stretchMark(one, circuit, options))),
    ...stretches.flatMap((one) => arrowMarks(one, options)),
    mark(
      'g',
      { class: 'junctions' },
      ...dots
        .filter(([x, y]) => !circles.has(`${x},${y}`))
        .map(([x, y]) => mark('circle', { class: 'junction', cx: short(x), cy: short(y), r: 2.6 })),
    ),
    ...circuit.pieces.map((piece) => pieceMark(piece, boxes[piece.id], options)),
    ...circuit.nodes.map((node) => nodeMark(node, boxes[node.id], options)),
  )
}

function pathOf(points: Stretch['points']): string {
  return `M${points.map(([x, y]) => `${short(x)} ${short(y)}`).join('L')}`
}

function weightClass(flow: Flow | undefined, options: DrawCircuitOptions): string {
  return options.flows === false || flow === undefined ? '' : ` flow-${flow.weight}`
}

function stretchMark(stretch: Stretch, circuit: Circuit, options: DrawCircuitOptions): Mark {
  const [only] = stretch.wires
  const link = stretch.wires.length === 1 ? circuit.links.find(({ id }) => id === only) : undefined
  const onPath = stretch.wires.some((wire) => liesOn(wire, circuit, options.path))
  const d = pathOf(stretch.points)
  const wire = mark('path', { class: `wire${weightClass(stretch.flow, options)}`, d })
  const marks = onPath ? [mark('path', { class: 'way', d }), wire] : [wire]
  if (link?.thing === undefined) return mark('g', { class: 'join' }, ...marks)
  const says = `${thingWords(link.thing)}, ${endName(circuit, link.from)} to ${endName(circuit, link.to)}`
  const told = options.flows === false ? says : toldWith(says, link.flow)
  const touch = options.live === true ? [mark('path', { class: 'reach', d })] : []
  return mark(
    'g',
    thingAttributes(`link ${link.sort}`, link.thing, told, options),
    ...touch,
    ...marks,
    ...strapMarks(link.sort, stretch.points),
  )
}

/** A strap is marked as the thing with two tags that it is: a small plate near its first end. */
function strapMarks(sort: string, points: Stretch['points']): readonly Mark[] {
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

function toldWith(says: string, flow: Flow | undefined): string {
  const text = flow === undefined ? '' : flowText(flow)
  return text === '' ? says : `${says}, ${text}`
}

function endName(circuit: Circuit, id: string): string {
  return circuit.nodes.find((node) => node.id === id)?.label ?? id
}

function liesOn(wire: string, circuit: Circuit, path: readonly string[] | undefined): boolean {
  if (path === undefined) return false
  const link = circuit.links.find(({ id }) => id === wire)
  if (link !== undefined) return path.includes(wire) || (path.includes(link.from) && path.includes(link.to))
  const piece = circuit.pieces.find(({ id, ends }) => ends.some(({ pin }) => `${id}:${pin}` === wire))
  if (piece === undefined) return false
  const nodes = piece.ends.filter(({ node }) => path.includes(node))
  return (
    path.includes(piece.id) || (nodes.length > 1 && nodes.some(({ pin }) => `${piece.id}:${pin}` === wire))
  )
}

/** A thing in words: `core handset.r2`. */
function thingWords(thing: Thing): string {
  const { sort, name } = thingParts(thing)
  return sort === 'branch' || sort === 'part' ? name : `${sort} ${name}`
}

function thingAttributes(
  base: string,
  thing: Thing | undefined,
  says: string,
  { live, selected, offered }: DrawCircuitOptions,
): Mark['attributes'] {
  if (thing === undefined) return { class: base }
  const chosen = thing === selected
  const isOffered = offered?.includes(thing) === true
  const classes = `thing ${base}${chosen ? ' selected' : ''}${isOffered ? ' offered' : ''}`
  if (live !== true) return { class: classes, 'data-thing': thing }
  return {
    class: classes,
    'data-thing': thing,
    tabindex: 0,
    role: 'button',
    'aria-label': isOffered ? `${says}, can be chosen now` : says,
    'aria-pressed': chosen ? 'true' : 'false',
  }
}

/** How far an arrowhead reaches, by weight. */
const HEADS: readonly number[] = [0, 4, 5, 6, 7]

/** An arrowhead in the middle of the longest straight piece, where there is room for it. */
function arrowMarks({ points, flow }: Stretch, options: DrawCircuitOptions): readonly Mark[] {
  if (options.flows === false || flow === undefined || flow.weight === 0 || flow.sense === 0) return []
  const {
    at: [x, y],
    along: [right, down],
    length,
  } = longest(points)
  const head = HEADS[flow.weight] ?? 4
  if (length < 2 * head + 12) return []
  const [dx, dy] = [right * flow.sense * head, down * flow.sense * head]
  const half = 0.75
  const corner = (along: number, across: number): string =>
    `${short(x + along * dx - across * dy)} ${short(y + along * dy + across * dx)}`
  const d = `M${corner(1, 0)}L${corner(-0.8, half)}L${corner(-0.8, -half)}Z`
  return [mark('path', { class: `arrow flow-${flow.weight}`, d })]
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

function pieceMark(piece: CircuitPiece, box: PlacedBox | undefined, options: DrawCircuitOptions): Mark {
  const { x = 0, y = 0, turn, width = 0, height = 0 } = box ?? {}
  const frame = frameOf(piece, turn)
  const gate = piece.gate === undefined ? '' : ` gate ${piece.gate}`
  const onPath = options.path?.includes(piece.id) ? ' on-way' : ''
  const base = `piece${gate}${onPath}${weightClass(piece.flow, options)}`
  const says = [piece.label, piece.values, piece.gate]
    .filter((one) => one !== undefined && one !== '')
    .join(', ')
  const told = options.flows === false ? says : toldWith(says, piece.flow)
  return mark(
    'g',
    thingAttributes(base, piece.thing, told, options),
    mark('rect', { class: 'hit', x: short(x), y: short(y), width, height, rx: 4 }),
    ...strokeMarks(piece.outline.strokes, frame, [x, y]),
    ...wordMarks(frame.words, x, y),
  )
}

function nodeMark(node: CircuitNode, box: PlacedBox | undefined, options: DrawCircuitOptions): Mark {
  const { x = 0, y = 0, width = 0, height = 0 } = box ?? {}
  const { middle, words } = nodeFrame(node)
  const [cx, cy] = [x + middle[0], y + middle[1]]
  const onPath = options.path?.includes(node.id) ? ' on-way' : ''
  const touch = mark('rect', { class: 'hit', x: short(x), y: short(y), width, height, rx: 4 })
  return mark(
    'g',
    thingAttributes(
      `node at-${node.looks}${onPath}`,
      node.thing,
      node.thing === undefined ? node.label : thingWords(node.thing),
      options,
    ),
    touch,
    node.looks === 'earth'
      ? earthMark(cx, cy)
      : mark('circle', { class: 'point', cx: short(cx), cy: short(cy), r: radiusOf(node) }),
    ...wordMarks([words], x, y),
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
