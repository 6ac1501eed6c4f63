/** A spare core, or the earth core, that lies where it meets a line wire. */
import { type CheckContext, nodeShort, plugLinks, when, wireAt } from '../checks/context.ts'
import type { Verdict } from '../checks/rule.ts'
import { between } from '../figures/between.ts'
import type { Figure } from '../figures/figure.ts'
import { earthLeakage } from '../figures/loop.ts'
import { conducting, without } from '../netlist/conduct.ts'
import { branchAt, type NetCore, nodeOf } from '../netlist/netlist.ts'
import { type Path, pathBetween } from '../netlist/paths.ts'
import type { Move } from '../sheet/model.ts'
import { becomeAll, tells } from './measure.ts'
import { type FaultRule, type Finding, failing } from './named-fault.ts'
import { firstThatMends, mendOf } from './try-mend.ts'
import { ids, landCore, takeStrapOff } from './wires.ts'

const EXPLAINS = [
  'wiring.spares-free',
  'wiring.earth-free',
  'wiring.loop-through-set',
  'wiring.loop-open-on-hook',
]
const SHOWS = EXPLAINS.slice(0, 2)

/** A core whose plug contact carries neither the pair nor the ringing lead, on a line wire. */
export const spareCoreJoined: FaultRule = {
  id: 'spare-core-joined',
  title: 'spare core joined to a line wire',
  explains: EXPLAINS,
  yieldsTo: ['line-earthed', 'mirrored-numbering', 'extension-bell-in-series'],
  find(context, verdicts, told) {
    if (failing(verdicts, ...SHOWS).length === 0) return []
    const wires = (['a', 'b', 'ringing'] as const).flatMap((wire) => {
      const node = wireAt(context, wire)
      return node === undefined ? [] : [{ wire, node }]
    })
    return context.place.cores
      .filter(({ endsIn, far }) => endsIn === 'plug' && wires.every(({ node }) => node !== far))
      .filter(({ far, lands }) => !ids(context, [far, lands]).some((id) => told.has(id)))
      .flatMap((core) => {
        const met = nearestWire(context, core, wires)
        return met === undefined ? [] : joined(context, verdicts, core, met)
      })
  },
}

/** A wire at the plug. */
interface Wire {
  readonly wire: string
  readonly node: number
}

/** A wire that a core reaches, and the way from it. */
interface Met extends Wire {
  readonly path: Path
}

/** The wire that a core reaches within the set by the shortest way, by links or through parts. */
function nearestWire(context: CheckContext, core: NetCore, wires: readonly Wire[]): Met | undefined {
  const { net } = context
  const choice = without(conducting(net, when(context, 'on-hook'), 'alternating'), plugLinks(context))
  return wires
    .flatMap((one): readonly Met[] => {
      const path = pathBetween(net, choice, one.node, core.far)
      return path === undefined ? [] : [{ ...one, path }]
    })
    .sort((p, q) => p.path.nodes.length - q.path.nodes.length)[0]
}

/** Straps on the way to a core that is where it belongs, those next to the wire first. */
function strapsOn(
  context: CheckContext,
  { lands, meant }: NetCore,
  { branches }: Path,
): readonly (readonly Move[])[] {
  if (lands === undefined || !meant.includes(lands)) return []
  return branches
    .map((index) => branchAt(context.net, index))
    .filter(({ part }) => part.sort === 'strap')
    .map((strap) => [takeStrapOff(context, strap)])
}

/** How a core may come free of what it meets: a strap off, the core home, the core parked. */
export function waysFree(context: CheckContext, core: NetCore, path: Path): readonly (readonly Move[])[] {
  const home = core.meant.filter((terminal) => terminal !== core.lands)
  const park: Move = { do: 'park core', what: core.name }
  return [...strapsOn(context, core, path), ...home.map((one) => [landCore(context, core, one)]), [park]]
}

function joined(
  context: CheckContext,
  verdicts: readonly Verdict[],
  core: NetCore,
  { wire, node, path }: Met,
): readonly Finding[] {
  const { place } = context
  const tried = firstThatMends(context, verdicts, waysFree(context, core, path), SHOWS)
  if (tried === undefined) return []
  const earthed = place.socket?.earth === true && place.meets[4] === core.far
  const follows = earthed
    ? 'in this socket its contact is the earth, so that the line is earthed all the time'
    : 'its plug contact is live, and in a socket with earth the line would be earthed by it'
  const where = core.lands === undefined ? '' : ` on ${nodeShort(context, core.lands)}`
  const ends = ids(context, [core.far, node])
  const name = wire === 'ringing' ? 'ringing lead' : `${wire} wire`
  return [
    {
      subject: core.name,
      condition: when(context, 'on-hook'),
      says: `The core ${core.name} lies${where} and meets the ${name}: ${follows}.`,
      path: ids(context, [core.far, core.lands, node]),
      consequences: becomeAll(figuresOf(context, ends), figuresOf(tried.after, ends)).filter(tells),
      ...mendOf(tried),
    },
  ]
}

/** What lies between two ends, and what flows to earth. */
export function figuresOf(context: CheckContext, ends: readonly string[]): readonly Figure[] {
  const condition = when(context, 'on-hook')
  const lifted = plugLinks(context)
  const [from, to] = ends.map((id) => nodeOf(context.net, id))
  const leak = context.figure(earthLeakage(context.net, context.place, condition))
  if (from === undefined || to === undefined) return [leak]
  return [context.figure(between(context.net, from, to, { condition, lifted })), leak]
}
