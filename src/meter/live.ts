/**
 * Readings that need a live line: volts between the contacts of a set's plug, which are the wires of its socket. The
 * set stays shut: what lies inside it is read only where somebody names the points himself.
 */
import type { NetPlace } from '../netlist/netlist.ts'
import { nodeName } from '../netlist/netlist.ts'
import type { Bench } from './bench.ts'
import { corePairs, type Point } from './points.ts'
import { canShow, readBetween } from './read.ts'
import { conditionIn, type Table } from './table.ts'

/** Direct voltage idle and with the handset up, alternating voltage while the line rings. */
export function liveTableOf(bench: Bench, place: NetPlace): Table {
  const { net } = bench
  const points = outerPoints(bench, place)
  const pairs = corePairs(points)
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

/** The contacts of the plug, each a point of its own. */
function outerPoints({ net }: Bench, place: NetPlace): readonly Point[] {
  return place.cores
    .filter(({ endsIn }) => endsIn === 'plug')
    .map(({ far: node }) => ({ node, name: nodeName(net, node), ids: [nodeName(net, node)], core: true }))
}

/** Whether a point can be reached with the set shut: a contact of its plug, and all that is of no set. */
export function isOuter({ net }: Bench, node: number): boolean {
  const place = net.places.find((one) => nodeName(net, node).startsWith(`${one.place}/`))
  return place === undefined || place.cores.some(({ far, endsIn }) => endsIn === 'plug' && far === node)
}
