/**
 * Wires as they are drawn. Wires of one node may share a stretch; there their currents add up, so a stretch is drawn
 * once, by what flows in it altogether.
 */
import type { Circuit, Flow, Placement } from './circuit.ts'
import { flowOf } from './flows.ts'

type Point = readonly [x: number, y: number]

/** A stretch of wire between two places where wires part, with all that flows in it from its first point on. */
export interface Stretch {
  readonly points: readonly Point[]
  /** Wires that share it, by id. */
  readonly wires: readonly string[]
  readonly flow: Flow | undefined
}

interface Use {
  readonly wire: string
  /** Whether the wire runs from the smaller to the larger point. */
  readonly forward: boolean
}

interface Unit {
  readonly from: Point
  readonly to: Point
  readonly uses: Use[]
}

const keyOf = ([x, y]: Point): string => `${x},${y}`
const isBefore = (p: Point, q: Point): boolean => p[0] < q[0] || (p[0] === q[0] && p[1] < q[1])

/** What flows in each wire from its first point to its last, by id. */
export function wireFlows(circuit: Circuit): ReadonlyMap<string, Flow | undefined> {
  return new Map([
    ...circuit.links.map(({ id, flow }): [string, Flow | undefined] => [id, flow]),
    ...circuit.pieces.flatMap(({ id, ends }) =>
      ends.map(({ pin, flow }): [string, Flow | undefined] => [`${id}:${pin}`, flow]),
    ),
  ])
}

/** All wires as they are drawn. */
export interface Wires {
  readonly stretches: readonly Stretch[]
  /** Where three or more meet. */
  readonly dots: readonly Point[]
}

/** Those of the circuits that have been drawn: a picture is drawn again whenever something is pointed at. */
const made = new WeakMap<Circuit, { readonly placement: Placement; readonly wires: Wires }>()

/** The stretches of all wires, and the points where three or more meet. */
export function stretchesOf(circuit: Circuit, placement: Placement): Wires {
  const before = made.get(circuit)
  if (before?.placement === placement) return before.wires
  const flows = wireFlows(circuit)
  let greatest = 0
  for (const flow of flows.values()) greatest = Math.max(greatest, flow?.size ?? 0)
  const { runs, dots } = runsOf(circuit, placement)
  const wires = { stretches: runs.map((run) => stretchOf(run, flows, greatest)), dots }
  made.set(circuit, { placement, wires })
  return wires
}

/** A stretch before it is known what flows in it. */
interface Run {
  readonly points: readonly Point[]
  readonly uses: readonly Use[]
}

interface Runs {
  readonly runs: readonly Run[]
  readonly dots: readonly Point[]
}

/** A placement serves every condition, and so does how its wires part; the key tells which wires hang on which nodes. */
const parted = new WeakMap<Placement, { readonly key: string; readonly runs: Runs }>()

function runsOf(circuit: Circuit, placement: Placement): Runs {
  const nets = netsOf(circuit)
  const key = JSON.stringify([...nets])
  const before = parted.get(placement)
  if (before?.key === key) return before.runs
  const runs = partRuns(nets, placement)
  parted.set(placement, { key, runs })
  return runs
}

function partRuns(nets: ReadonlyMap<string, readonly string[]>, placement: Placement): Runs {
  const at = new Map<string, Point[]>()
  for (const { id, points } of placement.wires)
    for (const node of nets.get(id) ?? []) {
      const own = at.get(node) ?? []
      for (const point of points) own.push(point)
      at.set(node, own)
    }
  const cut = placement.wires.map(({ id, points }) => ({
    id,
    points: cutUp(
      points,
      (nets.get(id) ?? []).flatMap((node) => at.get(node) ?? []),
    ),
  }))
  const units = unitsOf(cut)
  const degree = new Map<string, number>()
  for (const { from, to } of units.values())
    for (const end of [from, to]) degree.set(keyOf(end), (degree.get(keyOf(end)) ?? 0) + 1)
  const runs: Run[] = []
  const drawn = new Set<string>()
  for (const { id, points } of cut) {
    let run: Point[] = []
    let uses: readonly Use[] = []
    let shared = ''
    const close = (): void => {
      if (run.length > 1) runs.push({ points: run, uses })
      run = []
    }
    points.slice(1).forEach((to, k) => {
      const from = points[k] ?? to
      const key = unitKey(from, to)
      const unit = units.get(key)
      const users = unit?.uses.map(({ wire }) => wire).join('\n') ?? id
      if (users !== shared || drawn.has(key) || (degree.get(keyOf(from)) ?? 0) > 2) close()
      shared = users
      if (drawn.has(key)) return
      drawn.add(key)
      if (run.length === 0) {
        run.push(from)
        uses = unit?.uses ?? []
      }
      run.push(to)
    })
    close()
  }
  const dots = [...degree].filter(([, count]) => count > 2).map(([key]) => key.split(',').map(Number))
  return { runs, dots: dots.map(([x = 0, y = 0]): Point => [x, y]) }
}

/** Nodes of each wire. */
function netsOf(circuit: Circuit): ReadonlyMap<string, readonly string[]> {
  return new Map([
    ...circuit.links.map(({ id, from, to }): [string, readonly string[]] => [id, [from, to]]),
    ...circuit.pieces.flatMap(({ id, ends }) =>
      ends.map(({ pin, node }): [string, readonly string[]] => [`${id}:${pin}`, [node]]),
    ),
  ])
}

/** A wire's points with those of wires of the same node that lie on it. */
function cutUp(points: readonly Point[], others: readonly Point[]): readonly Point[] {
  return points.flatMap((to, k) => {
    const from = points[k - 1]
    if (from === undefined) return [to]
    const on = others.filter((point) => liesWithin(point, from, to))
    if (on.length === 0) return [to]
    const steps = [...new Map(on.map((point) => [keyOf(point), point])).values()]
    const away = ([x, y]: Point): number => Math.abs(x - from[0]) + Math.abs(y - from[1])
    return [...steps.sort((p, q) => away(p) - away(q)), to]
  })
}

function isBetween(one: number, a: number, b: number): boolean {
  return a < b ? one > a && one < b : one > b && one < a
}

function liesWithin([x, y]: Point, from: Point, to: Point): boolean {
  if (from[0] === to[0]) return x === from[0] && isBetween(y, from[1], to[1])
  return y === from[1] && from[1] === to[1] && isBetween(x, from[0], to[0])
}

function unitKey(from: Point, to: Point): string {
  return isBefore(from, to) ? `${keyOf(from)} ${keyOf(to)}` : `${keyOf(to)} ${keyOf(from)}`
}

function unitsOf(
  wires: readonly { readonly id: string; readonly points: readonly Point[] }[],
): ReadonlyMap<string, Unit> {
  const units = new Map<string, Unit>()
  for (const { id, points } of wires)
    points.slice(1).forEach((to, k) => {
      const from = points[k] ?? to
      const key = unitKey(from, to)
      const forward = isBefore(from, to)
      const unit = units.get(key) ?? { from: forward ? from : to, to: forward ? to : from, uses: [] }
      unit.uses.push({ wire: id, forward })
      units.set(key, unit)
    })
  return units
}

function stretchOf(
  { points, uses }: Run,
  flows: ReadonlyMap<string, Flow | undefined>,
  greatest: number,
): Stretch {
  const [from = [0, 0], to = [0, 0]] = points
  const along = isBefore(from, to)
  let [re, im, known] = [0, 0, false]
  for (const { wire, forward } of uses) {
    const flow = flows.get(wire)
    if (flow === undefined) continue
    known = true
    const [own, quarter] = flow.current ?? [flow.size * flow.sense, 0]
    re += forward === along ? own : -own
    im += forward === along ? quarter : -quarter
  }
  return {
    points,
    wires: uses.map(({ wire }) => wire),
    flow: known ? flowOf([re, im], greatest) : undefined,
  }
}
