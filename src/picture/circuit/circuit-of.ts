/** From a netlist to what its circuit picture shows. */
import { type Condition, gateState, ON_HOOK } from '../../netlist/condition.ts'
import { EARTH, type Netlist, type NetPart, nodeName } from '../../netlist/netlist.ts'
import type { GateState, Outline } from '../../parts/kind.ts'
import { strap } from '../../parts/strap.ts'
import { valuesOf } from '../board/board-parts.ts'
import type { Thing } from '../thing.ts'
import type { Circuit, CircuitEnd, CircuitLink, CircuitPiece, Flow } from './circuit.ts'
import { type Currents, flowOf, greatestOf, leaking } from './flows.ts'
import { type NodeBook, nodeBook } from './nodes.ts'
import { boxOutline, contactOutline } from './outlines.ts'
import { branchesOf, scopeOf, type Together } from './scope.ts'
import { thingOf } from './things.ts'
import { zoneOfPart } from './zones.ts'

/** Sorts that are drawn as a wire from node to node. */
const WIRES: ReadonlySet<NetPart['sort']> = new Set(['strap', 'core', 'plug'])

/** Places with nothing to speak of between them are joined by a wire too. */
function isWire({ sort, law }: NetPart): boolean {
  return WIRES.has(sort) || (sort === 'cable' && law.kind === strap.kind)
}

/** What is told of a picture besides its netlist. */
export interface CircuitOptions {
  /** Opens and closes contacts; everything at rest when absent. */
  readonly condition?: Condition
  /** What flows; nothing is said of it when absent. */
  readonly currents?: Currents
}

/**
 * The circuit of the set at a place, its socket and the way to the exchange. Its nodes, pieces and links are the same
 * in every condition, so that one placement serves them all; only contacts and currents differ.
 * @param place a place of the netlist; of a circuit that is no installation its name
 */
export function circuitOf(net: Netlist, place: string, options: CircuitOptions = {}): Circuit {
  const { condition = { line: 'idle', sets: {} }, currents } = options
  const scope = scopeOf(net, place)
  const shown = [
    ...scope.parts.flatMap((part) => branchesOf(net, part)),
    ...scope.together.flatMap(({ branches }) => branches),
  ]
  const greatest =
    currents === undefined
      ? 0
      : greatestOf(
          shown.map(({ index }) => index),
          currents,
        )
  const book = nodeBook(net, place, scope.nodes)
  const flows: FlowMaker = (signed) => flowIn(signed, currents, greatest)
  const links: CircuitLink[] = []
  const pieces: CircuitPiece[] = scope.together.map((one) => togetherPiece(net, one, book, flows))
  for (const part of scope.parts) {
    const branches = branchesOf(net, part)
    const [only] = branches
    if (only !== undefined && branches.length === 1 && isWire(part)) {
      const zone = zoneOfPart(net, part)
      links.push({
        id: only.id,
        from: book.node(only.from, zone, only.id),
        to: book.node(only.to, zone, only.id),
        sort: part.sort,
        thing: thingOf(part),
        ...flows([[only.index, 1]]),
      })
    } else pieces.push(partPiece(net, part, condition, book, flows))
  }
  return { name: place === '' ? net.name : place, nodes: book.nodes(), pieces, links }
}

type Signed = readonly (readonly [branch: number, sign: 1 | -1])[]
type FlowMaker = (signed: Signed) => { readonly flow?: Flow }

function flowIn(signed: Signed, currents: Currents | undefined, greatest: number): { readonly flow?: Flow } {
  if (currents === undefined) return {}
  let [re, im] = [0, 0]
  for (const [branch, sign] of signed) {
    const one = currents(branch)
    re += sign * one.re
    im += sign * one.im
  }
  return { flow: flowOf([re, im], greatest) }
}

function partPiece(
  net: Netlist,
  part: NetPart,
  condition: Condition,
  book: NodeBook,
  flows: FlowMaker,
): CircuitPiece {
  const zone = zoneOfPart(net, part)
  const ends = new Map<string, { node: number; signed: [number, 1 | -1][] }>()
  const plans = part.law.branches(part.spec)
  branchesOf(net, part).forEach((branch, k) => {
    const plan = plans[k]
    if (plan === undefined) return
    for (const [pin, node, sign] of [
      [plan.from, branch.from, 1],
      [plan.to, branch.to, -1],
    ] as const) {
      const end = ends.get(pin) ?? { node, signed: [] }
      end.signed.push([branch.index, sign])
      ends.set(pin, end)
    }
  })
  const gate = gateOf(part, condition)
  const own: FlowMaker = (signed) => {
    const { flow } = flows(signed)
    if (flow === undefined) return {}
    return { flow: gate === 'open' ? leaking(flow) : flow }
  }
  const [first, second] = plans.length === 1 && plans[0] !== undefined ? [plans[0].from, plans[0].to] : []
  const outline =
    gate !== undefined && first !== undefined && second !== undefined
      ? contactOutline([first, second], gate, part.gate?.closed === false)
      : outlineOf(part, [...ends.keys()])
  return {
    id: part.id,
    label: part.name,
    values: gate === undefined ? shortValues(part) : workedBy(part),
    zone,
    outline,
    ends: [...ends].map(
      ([pin, { node, signed }]): CircuitEnd => ({
        pin,
        node: book.node(node, zone, `${part.id}:${pin}`),
        ...own(signed),
      }),
    ),
    ...(gate === undefined ? {} : { gate }),
    thing: thingOf(part),
    ...(plans.length === 1 ? own([[part.first, 1]]) : {}),
  }
}

/** Values without their tolerances, which a circuit picture has no room for. */
function shortValues({ spec }: NetPart): string {
  return valuesOf(spec).replace(/ ?±[^,;]*%/g, '')
}

/** When a contact is worked, for a person. */
const WORKED: Readonly<Record<string, string>> = {
  'off-hook': 'off-hook',
  'off-normal': 'dial turned',
  make: 'between pulses',
  break: 'in a pulse',
  key: 'key pressed',
}

function workedBy({ gate }: NetPart): string {
  if (gate === undefined) return ''
  return `${gate.closed ? 'closes' : 'opens'}, ${WORKED[gate.word] ?? gate.word}`
}

/** How a contact stands in a condition; undefined of what is none. */
export function gateOf(part: NetPart, condition: Condition): GateState | undefined {
  if (part.gate === undefined) return undefined
  const one = Object.hasOwn(condition.sets, part.place) ? condition.sets[part.place] : undefined
  return gateState(part.gate, one ?? ON_HOOK)
}

function outlineOf({ law, spec }: NetPart, ends: readonly string[]): Outline {
  const own = law.outline?.(spec)
  if (own !== undefined && ends.every((end) => Object.hasOwn(own.pins, end))) return own
  const half = Math.ceil(ends.length / 2)
  return boxOutline(ends.slice(0, half), ends.slice(half))
}

function togetherPiece(net: Netlist, one: Together, book: NodeBook, flows: FlowMaker): CircuitPiece {
  const zone = one.exchange ? 'exchange' : 'premises'
  const names = one.meets.map((node) => nodeName(net, node))
  const earths = names.filter((name) => name === EARTH)
  const wires = names.filter((name) => name !== EARTH)
  const [left, right] = one.exchange ? [earths, wires] : [wires, earths]
  const thing: Thing = `branch:${one.id}`
  return {
    id: one.id,
    label: one.label,
    values: one.exchange ? suppliesOf(net) : '',
    zone,
    outline: boxOutline(left, right),
    ends: one.meets.map((node) => ({
      pin: nodeName(net, node),
      node: book.node(node, zone, `${one.id}:${nodeName(net, node)}`),
      ...flows(intoOf(one, node)),
    })),
    thing,
  }
}

/** What flows from a node into branches. */
function intoOf({ branches }: Together, node: number): Signed {
  return branches.flatMap(
    ({ index, from, to }): Signed => [
      ...(from === node ? [[index, 1] as const] : []),
      ...(to === node ? [[index, -1] as const] : []),
    ],
  )
}

/** What an exchange sends: its battery, its ringing. */
function suppliesOf({ line }: Netlist): string {
  if (line === undefined) return ''
  const { feed, ringing } = line.sheet
  const ring = ringing === undefined ? [] : [`rings ${ringing.voltage.text}`, ringing.frequency.text]
  return [`feeds ${feed.voltage.text}`, ...ring].join(', ')
}
