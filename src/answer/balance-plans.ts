/** How the ringing lead of a house upsets the balance of its pair, for speech and for broadband. */
import type { CheckContext } from '../checks/context.ts'
import { conversionLoss, type Stray } from '../figures/conversion-loss.ts'
import type { FigurePlan } from '../figures/figure.ts'
import { wireOverEarth } from '../figures/wire-over-earth.ts'
import type { NetLine, Netlist } from '../netlist/netlist.ts'

/** Hz: the speech band of AS/CA S002:2010 clause 5.4.4, then what broadband uses of a pair. */
const FREQUENCIES: readonly number[] = [300, 1000, 3400, 10e3, 100e3, 1e6]

/** A run of house cable with a wire for the ringing lead. */
interface LeadRun {
  readonly from: string
  readonly to: string
  /** Branch of the lead's wire. */
  readonly wire: number
  /** F to earth of the whole length */
  readonly farads: number
}

/**
 * Longitudinal conversion loss at the socket from which the ringing lead leaves, all on-hook, the exchange and its cable
 * lifted: with the ringing lead, and with it taken off its first socket. The lead's capacitance to earth is that of its
 * length of wire near a wall, since cables here have none (`figures/conversion-loss.ts`): what it does to the pair is
 * told to the size, not to the digit. Empty where no cable has the lead.
 */
export function balancePlans({ net, installation, place }: CheckContext): readonly FigurePlan[] {
  const { line } = net
  const runs = leadRuns(net, installation.premises?.sockets ?? {})
  const [first] = runs
  if (line === undefined || first === undefined || place !== net.places[0]) return []
  const [a, b, node] = ['a', 'b']
    .map((wire) => net.nodeIndex.get(`${first.from}/${wire}`))
    .concat(net.nodeIndex.get(`${first.to}/ringing`))
  if (a === undefined || b === undefined || node === undefined) return []
  const stray: Stray = { node, farads: runs.reduce((sum, { farads }) => sum + farads, 0) }
  const exchange = exchangeOf(net, line)
  const taken = runs.filter(({ from }) => from === first.from).map(({ wire }) => wire)
  const condition = { line: 'idle', sets: {} } as const
  return [
    { name: first.from, lifted: exchange },
    { name: `${first.from} with its ringing lead taken off`, lifted: [...exchange, ...taken] },
  ].flatMap(({ name, lifted }) =>
    FREQUENCIES.map((frequency) => conversionLoss({ name, a, b }, condition, frequency, { lifted }, stray)),
  )
}

/** What the sheets say of a socket, as far as it matters here. */
interface Fed {
  readonly 'fed from'?: string
  readonly over?: { readonly gauge: { readonly value: number }; readonly length: { readonly value: number } }
}

function leadRuns(net: Netlist, sockets: Readonly<Record<string, Fed>>): readonly LeadRun[] {
  return Object.entries(sockets).flatMap(([to, { 'fed from': from, over }]) => {
    const wire = net.branchIndex.get(`${to}/cable.ringing`)
    if (from === undefined || over === undefined || wire === undefined) return []
    return [{ from, to, wire, farads: wireOverEarth(over.gauge.value) * over.length.value }]
  })
}

/** The branches of the exchange and of the cable that leads to it. */
function exchangeOf(net: Netlist, line: NetLine): readonly number[] {
  const ends = [line.a, line.b]
  const cable = net.branches
    .filter(({ part, from, to }) => part.sort === 'cable' && (ends.includes(from) || ends.includes(to)))
    .flatMap(({ part }) => Array.from({ length: part.count }, (_, k) => part.first + k))
  return [...new Set([...line.exchange, ...cable])].sort((p, q) => p - q)
}
