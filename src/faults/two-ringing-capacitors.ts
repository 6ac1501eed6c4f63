/** A second master socket by mistake: two capacitors where one is meant. */
import type { CheckContext } from '../checks/context.ts'
import { everybody } from '../checks/line/everybody.ts'
import type { Figure } from '../figures/figure.ts'
import { ringingLineCurrent } from '../figures/line-current.ts'
import { ringingCurrent } from '../figures/ringing.ts'
import { soundersOf } from '../figures/ringing-share.ts'
import { joinedTo } from '../netlist/paths.ts'
import type { PremisesSheet, SocketSpec } from '../sheet/model.ts'
import { becomeAll } from './measure.ts'
import type { FaultRule, Finding } from './named-fault.ts'
import { inPremises } from './try-mend.ts'

/** Sockets in which a ringing lead begins at the line itself, more than one. */
export const twoRingingCapacitors: FaultRule = {
  id: 'two-ringing-capacitors',
  title: 'two ringing capacitors: a second master socket',
  explains: [
    'wiring.one-ringing-capacitor',
    'bell.silent-own-dial',
    'bell.silent-other-dials',
    'line.ringing-load',
  ],
  once: true,
  find(context) {
    const { premises } = context.installation
    const masters = Object.entries(premises?.sockets ?? {}).filter(([, { is }]) => is === 'master')
    return premises === undefined || masters.length < 2
      ? []
      : [
          second(
            context,
            premises,
            masters.map(([name]) => name),
          ),
        ]
  },
}

function second(context: CheckContext, premises: PremisesSheet, masters: readonly string[]): Finding {
  const first = masters.find((name) => premises.sockets[name]?.['fed from'] === undefined) ?? masters[0] ?? ''
  const others = masters.filter((name) => name !== first)
  const follows = onOneLead(context, masters)
    ? 'and every bell on the lead gets more than it is meant to'
    : 'and no hush of one set reaches the bells on the other’s lead'
  const after = inPremises(context, withOneMaster(premises, first, others))
  return {
    subject: others.join(', '),
    condition: everybody('ringing'),
    says: `${others.join(' and ')} ${others.length === 1 ? 'is a master socket' : 'are master sockets'} as ${first} is, each with a ringing capacitor of its own: the capacitors stand side by side across the pair, the line gives more ringing current than one capacitor lets through, ${follows}.`,
    path: masters.flatMap((name) => [`${name}/b`, `${name}/ringing`, `${name}/a`]),
    consequences: becomeAll(figuresOf(context), figuresOf(after)),
    mend: `make ${others.join(' and ')} a secondary socket on ${first}, with its ringing lead from there and without a capacitor; the wires of a socket are live, and on the line side of the master socket local codes and licensed practice decide who may work`,
  }
}

/** Whether the ringing leads of these sockets are one. */
function onOneLead({ net }: CheckContext, masters: readonly string[]): boolean {
  const leads = masters.flatMap((name) => net.nodeIndex.get(`${name}/ringing`) ?? [])
  const [first] = leads
  // the wires of a cable are equations, what lies between them is not
  const joined =
    first === undefined
      ? new Set<number>()
      : joinedTo(net, ({ part, form }) => part.sort === 'cable' && form === 'equation', first)
  return leads.every((node) => joined.has(node))
}

/** The further masters as secondary sockets on the first. */
function withOneMaster(premises: PremisesSheet, first: string, others: readonly string[]): PremisesSheet {
  const changed = others.map((name): readonly [string, SocketSpec] => {
    const { over, earth, mirrored, 'fed from': feeder = first } = premises.sockets[name] ?? {}
    const extra = { ...(over && { over }), ...(earth && { earth }), ...(mirrored && { mirrored }) }
    return [name, { is: 'secondary', 'fed from': feeder, ...extra }]
  })
  return { ...premises, sockets: { ...premises.sockets, ...Object.fromEntries(changed) } }
}

/** What the line gives while it rings, and what each bell gets of it. */
function figuresOf(context: CheckContext): readonly Figure[] {
  const { net } = context
  const { line } = net
  if (line?.ringingFrequency === undefined) return []
  const { ringingFrequency, ringingHarmonics } = line
  const condition = everybody('ringing')
  const bells = soundersOf(net).map((bell) =>
    ringingCurrent(bell, condition, ringingFrequency, ringingHarmonics),
  )
  const plans = [ringingLineCurrent(net, line, condition), ...bells]
  return plans.flatMap((plan) => (plan === undefined ? [] : [context.figure(plan)]))
}
