/** From a circuit to the graph that the layout library places. */
import { type Circuit, type CircuitPiece, frameOf, nodeFrame, type Placement, type Turn } from '../index.ts'
import type { ElkEdge, ElkNode } from './elk.d.ts'
import { ranksOf, zoneNumber } from './ranks.ts'

/** A wire of the circuit as an edge; `turned` where the library sees it the other way round. */
export interface WireEdge {
  readonly id: string
  readonly turned: boolean
}

/** The graph, and what has to be known to read its answer. */
export interface MadeGraph {
  readonly graph: ElkNode
  readonly turns: ReadonlyMap<string, Turn>
  readonly wires: readonly WireEdge[]
}

const OPTIONS: Readonly<Record<string, string>> = {
  'elk.algorithm': 'layered',
  'elk.direction': 'RIGHT',
  'elk.edgeRouting': 'ORTHOGONAL',
  'elk.partitioning.activate': 'true',
  'elk.randomSeed': '4',
  'elk.padding': '[top=12,left=12,bottom=12,right=12]',
  'elk.spacing.nodeNode': '12',
  'elk.spacing.edgeNode': '9',
  'elk.spacing.edgeEdge': '9',
  'elk.layered.spacing.nodeNodeBetweenLayers': '8',
  'elk.layered.spacing.edgeNodeBetweenLayers': '7',
  'elk.layered.spacing.edgeEdgeBetweenLayers': '7',
  'elk.separateConnectedComponents': 'false',
  'elk.layered.thoroughness': '10',
  'elk.layered.nodePlacement.strategy': 'NETWORK_SIMPLEX',
  'elk.layered.nodePlacement.favorStraightEdges': 'true',
  'elk.layered.unnecessaryBendpoints': 'false',
}

/** Layers set closer once everything has its height: a sixth less in width, a quarter less of wire. */
const CLOSE: Readonly<Record<string, string>> = {
  ...OPTIONS,
  'elk.layered.compaction.postCompaction.strategy': 'EDGE_LENGTH',
}

/** The same from another start, where the first one led to nothing that can be read. */
const ANEW: Readonly<Record<string, string>> = { ...CLOSE, 'elk.randomSeed': '1' }

/** What hangs on nothing else lies in rows, broad rather than tall. */
const APART: Readonly<Record<string, string>> = {
  ...OPTIONS,
  'elk.partitioning.activate': 'false',
  'elk.separateConnectedComponents': 'true',
  'elk.spacing.componentComponent': '24',
  'elk.aspectRatio': '12',
}

/** Ends of a symbol that differ by less in their ranks have it stand between them. */
const LEVEL = 1e-3

/** More than any rank. */
const BEHIND = 10

const FACES: Readonly<Record<string, string>> = { left: 'WEST', right: 'EAST', top: 'NORTH', bottom: 'SOUTH' }

/** How a graph is laid out: as it comes, with its layers set close (twice, from two starts), or as wires that hang on nothing else. */
export type Manner = 'plain' | 'close' | 'anew' | 'apart'

const MANNERS: Readonly<Record<Manner, Readonly<Record<string, string>>>> = {
  plain: OPTIONS,
  close: CLOSE,
  anew: ANEW,
  apart: APART,
}

/** Nodes of a layer in the order that they have already, instead of that with the fewest crossings. */
const AS_BEFORE: Readonly<Record<string, string>> = {
  'elk.layered.crossingMinimization.strategy': 'INTERACTIVE',
}

/**
 * The graph of a circuit.
 * @param like where much of it lay before: what is above something else stays above it where that can be
 */
export function graphOf(circuit: Circuit, manner: Manner, like?: Placement): MadeGraph {
  const ranks = ranksOf(circuit)
  const earths = new Set(circuit.nodes.filter(({ looks }) => looks === 'earth').map(({ id }) => id))
  const rank = (id: string): number => ranks.get(id) ?? 0
  // earth hangs behind whatever uses it
  const rankOf = (id: string): number => (earths.has(id) ? BEHIND : rank(id))
  const turns = new Map(
    circuit.pieces.map((piece) => [piece.id, turnOf(piece, piece.zone === 'exchange' ? () => 0 : rankOf)]),
  )
  const wires: WireEdge[] = []
  const edges: ElkEdge[] = []
  for (const { id, from, to } of circuit.links) {
    const turned = rank(from) > rank(to)
    const [first, second] = turned ? [to, from] : [from, to]
    wires.push({ id, turned })
    edges.push({ id, sources: [`${first}>`], targets: [`<${second}`] })
  }
  for (const piece of circuit.pieces) {
    const { pins } = frameOf(piece, turns.get(piece.id))
    for (const { pin, node } of piece.ends) {
      const side = pins[pin]?.side
      const id = `${piece.id}:${pin}`
      const outward = side === 'right'
      wires.push({ id, turned: outward })
      edges.push(
        outward
          ? { id, sources: [`${id}|`], targets: [`<${node}`] }
          : { id, sources: [`${node}>`], targets: [`${id}|`] },
      )
    }
  }
  const children = [...circuit.nodes.map(nodeBox), ...circuit.pieces.map((one) => pieceBox(one, turns))]
  if (like === undefined)
    return { graph: { id: '', children, edges, layoutOptions: MANNERS[manner] }, turns, wires }
  const layoutOptions = { ...MANNERS[manner], ...AS_BEFORE }
  return {
    graph: { id: '', children: children.map((one) => put(one, like)), edges, layoutOptions },
    turns,
    wires,
  }
}

/** A box where it lay before; one that is new has no place yet. */
function put(box: ElkNode, { boxes }: Placement): ElkNode {
  const before = boxes[box.id]
  if (before === undefined) return box
  const { x, y } = before
  return { ...box, x, y, layoutOptions: { ...box.layoutOptions, 'elk.position': `(${x}, ${y})` } }
}

/** A symbol lies with its earlier end to the left. */
function turnOf(piece: CircuitPiece, rank: (id: string) => number): Turn {
  const { outline, ends } = piece
  let [left, right] = [0, 0]
  let [lefts, rights] = [0, 0]
  for (const { pin, node } of ends) {
    const x = outline.pins[pin]?.[0] ?? 0
    if (x === 0) {
      left += rank(node)
      lefts += 1
    } else if (x === outline.width) {
      right += rank(node)
      rights += 1
    }
  }
  if (lefts === 0 || rights === 0) return 'plain'
  if (left === right) return 'plain'
  const across = ends.length === 2 && Math.abs(left - right) < LEVEL
  if (across && outline.pins[ends[0]?.pin ?? '']?.[1] === outline.pins[ends[1]?.pin ?? '']?.[1]) return 'down'
  return left / lefts > right / rights ? 'flipped' : 'plain'
}

function nodeBox(node: Circuit['nodes'][number]): ElkNode {
  const { width, height, middle } = nodeFrame(node)
  const port = (id: string, side: string, x: number, y: number): ElkNode => ({
    id,
    x,
    y,
    width: 0,
    height: 0,
    layoutOptions: { 'elk.port.side': side },
  })
  const earth = node.looks === 'earth'
  return {
    id: node.id,
    width,
    height,
    ports: [
      port(`<${node.id}`, earth ? 'NORTH' : 'WEST', earth ? middle[0] : 0, earth ? 0 : middle[1]),
      port(`${node.id}>`, earth ? 'NORTH' : 'EAST', earth ? middle[0] : width, earth ? 0 : middle[1]),
    ],
    layoutOptions: {
      'elk.portConstraints': 'FIXED_POS',
      'elk.partitioning.partition': String(zoneNumber(node.zone)),
    },
  }
}

function pieceBox(piece: CircuitPiece, turns: ReadonlyMap<string, Turn>): ElkNode {
  const { width, height, pins } = frameOf(piece, turns.get(piece.id))
  return {
    id: piece.id,
    width,
    height,
    ports: piece.ends.map(({ pin }): ElkNode => {
      const gate = pins[pin]
      return {
        id: `${piece.id}:${pin}|`,
        x: gate?.at[0] ?? 0,
        y: gate?.at[1] ?? 0,
        width: 0,
        height: 0,
        layoutOptions: { 'elk.port.side': FACES[gate?.side ?? 'left'] ?? 'WEST' },
      }
    }),
    layoutOptions: {
      'elk.portConstraints': 'FIXED_POS',
      'elk.partitioning.partition': String(zoneNumber(piece.zone)),
    },
  }
}
