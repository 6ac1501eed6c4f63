/** Readings that need a live line: volts between the wires of a set and across its parts that speak and ring. */
import { type NetPlace, nodeName } from '../netlist/netlist.ts'
import type { Bench } from './bench.ts'
import { corePairs, type Pair, type Point, pointsOf } from './points.ts'
import { canShow, readBetween } from './read.ts'
import { conditionIn, type Table } from './table.ts'

/** Direct voltage idle and with the handset up, alternating voltage while the line rings. */
export function liveTableOf(bench: Bench, place: NetPlace): Table {
  const { net } = bench
  const points = pointsOf(net, place)
  const plugged = new Set(place.cores.filter(({ endsIn }) => endsIn === 'plug').map(({ far }) => far))
  const wires = corePairs(points.filter(({ node }) => plugged.has(node)))
  const pairs = [...wires, ...speaking(bench, place, points)]
  const frequency = net.line?.ringingFrequency
  const rings = frequency !== undefined && canShow(bench, 'alternating-volts')
  const pages = ['on-hook', ...(rings ? ['on-hook/ringing'] : []), 'off-hook'].map((words) => {
    const condition = conditionIn(net, place, words)
    const wanted =
      condition.line === 'ringing' && frequency !== undefined
        ? ({ shows: 'alternating-volts', frequency } as const)
        : ({ shows: 'volts' } as const)
    const readings = pairs.map(([red, black]) =>
      readBetween(bench, { red: red.node, black: black.node, condition }, wanted),
    )
    return { condition, readings }
  })
  return { points, pages }
}

/** Across transmitter, receiver and bells, where both ends are within reach. */
function speaking({ net }: Bench, place: NetPlace, points: readonly Point[]): readonly Pair[] {
  const at = new Map(points.flatMap((point) => point.ids.map((id) => [id, point] as const)))
  return net.branches.flatMap((branch): Pair[] => {
    const { role, place: own } = branch.part
    if (own !== place.place || (role !== 'sender' && role !== 'receiver' && role !== 'sounder')) return []
    const from = at.get(nodeName(net, branch.from))
    const to = at.get(nodeName(net, branch.to))
    return from === undefined || to === undefined || from === to ? [] : [[from, to]]
  })
}
