/** A recall key that earths a wire, on a line that knows no earth recall. */
import { type CheckContext, nodeShort, plugLinks, when, wireAt } from '../checks/context.ts'
import type { Figure } from '../figures/figure.ts'
import { earthLeakage } from '../figures/loop.ts'
import { conducting, without } from '../netlist/conduct.ts'
import { EARTH, nodeOf } from '../netlist/netlist.ts'
import { type Path, pathBetween } from '../netlist/paths.ts'
import { become, milliamps } from './measure.ts'
import type { FaultRule, Finding } from './named-fault.ts'
import { inPremises, inWords, moved } from './try-mend.ts'
import { coreAt, ids } from './wires.ts'

const PRESSED = 'off-hook/key'

/** The key leads a line wire to earth, or to the plug contact where earth is in a socket that has one. */
export const earthRecallUnknown: FaultRule = {
  id: 'earth-recall-unknown',
  title: 'earth-recall key on a line that knows none',
  explains: [],
  find(context) {
    const { net, place } = context
    const keyed = net.parts.some((part) => part.place === place.place && part.gate?.word === 'key')
    if (!keyed || net.line === undefined || net.line.sheet.recall === 'earth') return []
    const way = wayToEarth(context)
    return way === undefined ? [] : [unknown(context, way)]
  },
}

/** The way from a line wire to earth that only the pressed key closes. */
function wayToEarth(context: CheckContext): Path | undefined {
  const { net, place } = context
  const closed = (written: string) =>
    without(conducting(net, when(context, written), 'direct'), plugLinks(context))
  const earths = [place.meets[4], nodeOf(net, EARTH)].filter((node) => node !== undefined)
  for (const wire of [wireAt(context, 'b'), wireAt(context, 'a')]) {
    for (const earth of earths) {
      if (wire === undefined || pathBetween(net, closed('off-hook'), wire, earth) !== undefined) continue
      const path = pathBetween(net, closed(PRESSED), wire, earth)
      if (path !== undefined) return path
    }
  }
  return undefined
}

function unknown(context: CheckContext, { nodes }: Path): Finding {
  const { place } = context
  const core = coreAt(context, nodes.at(-1))
  const tried = core && moved(context, [{ do: 'park core', what: core.name }])
  const earthed = place.socket?.earth === true ? context : withEarth(context)
  const now = earthed && leak(earthed)
  const then = tried && (place.socket?.earth === true ? tried.after : withEarth(tried.after))
  const here =
    place.socket?.earth === true
      ? `Here it draws ${milliamps(now)} to earth.`
      : `This socket has no earth, so that the key does nothing; in one that has, it draws ${milliamps(now)} to earth.`
  return {
    subject: place.place,
    condition: when(context, PRESSED),
    says: `The key joins a line wire to earth, and this line knows no earth recall: to the exchange it is a fault of the line, and no call is passed on. ${here}`,
    path: ids(context, nodes),
    consequences: become(now, then && leak(then)),
    ...(core === undefined || tried === undefined
      ? { mend: `with the set unplugged, free ${nodeShort(context, nodes.at(-1) ?? 0)} from earth` }
      : { mend: inWords(tried.moves), moves: tried.moves }),
  }
}

/** The set in a socket with earth. */
function withEarth(context: CheckContext): CheckContext | undefined {
  const { premises } = context.installation
  const name = context.place.socket?.name
  const socket = name === undefined ? undefined : premises?.sockets[name]
  if (premises === undefined || name === undefined || socket === undefined) return undefined
  return inPremises(context, {
    ...premises,
    sockets: { ...premises.sockets, [name]: { ...socket, earth: true } },
  })
}

function leak(context: CheckContext): Figure {
  return context.figure(earthLeakage(context.net, context.place, when(context, PRESSED)))
}
