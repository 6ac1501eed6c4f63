/** The points of a meter as requests name them and answers show them. */
import type { Point } from '../meter/points.ts'
import type { Netlist, NetPlace } from '../netlist/netlist.ts'
import { nodeName } from '../netlist/netlist.ts'
import { bothNumbers } from '../netlist/plug-numbers.ts'
import { refuse } from '../problem.ts'
import { nearest } from '../quantities/nearest.ts'
import type { MeterAnswer } from './meter-answer.ts'

/** `plug.5`, `hall/plug.5`: a contact of a plug by its number. */
const CONTACT = /^(?:(.+)\/)?plug\.(\d+)$/

/**
 * The node that a person's word means, with or without the place before it.
 * @throws ProblemError for a word that is no point
 */
export function namedPoint(net: Netlist, places: readonly string[], id: string): number {
  for (const known of [id, ...places.map((place) => `${place}/${id}`)]) {
    const found = net.nodeIndex.get(known)
    if (found !== undefined) return found
  }
  const byNumber = CONTACT.exec(id)
  const [place = ''] = places
  if (byNumber !== null) refuseNumber(net, byNumber[1] ?? place, Number(byNumber[2]), id)
  const short = net.nodes.map((one) => (one.startsWith(`${place}/`) ? one.slice(place.length + 1) : one))
  const near = nearest(id, [...short, ...net.nodes])
  refuse({
    code: 'request-wrong',
    found: `the point \`${id}\``,
    expected: 'a terminal, a joint, a core’s end such as `plug.a` or `handset.r1`, or a socket’s wire',
    ...(near === undefined ? {} : { mend: `perhaps \`${near}\`` }),
  })
}

/** A number alone means two contacts, since the two numberings mirror each other: both are said, none is guessed. */
function refuseNumber(net: Netlist, place: string, number: number, id: string): never {
  const plug = net.places.find((one) => one.place === place)?.plug ?? {}
  const cores = Object.entries(plug).map(([key, node]) => [Number(key), nodeName(net, node)] as const)
  const word = (name: string | undefined): string =>
    name === undefined ? 'no core' : `\`${name.slice(name.indexOf('/') + 1)}\``
  const at = (wiring: number) => word(cores.find(([key]) => key === wiring)?.[1])
  refuse({
    code: 'request-wrong',
    found: `the point \`${id}\`, a number that two numberings of the plug count from opposite ends`,
    expected: 'a core by its name, such as `plug.a`',
    mend: `${number} is ${at(number)} by the wiring numbering and ${at(bothNumbers(number).contact)} by the numbers of the contacts: name the core`,
  })
}

/** A point as an answer shows it. */
export function pointJson(
  { name, ids }: Point,
  net: Netlist,
  place: NetPlace,
): MeterAnswer['points'][number] {
  const colours = place.cores.flatMap(({ far, colour }): [string, string][] => {
    const id = net.nodes[far] ?? ''
    return colour === undefined || !ids.includes(id) ? [] : [[id, colour]]
  })
  return { name, ids, colours: Object.fromEntries(colours) }
}
