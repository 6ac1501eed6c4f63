/** Nothing quenches the impulse contact: its quench shared a capacitor that was taken out. */
import { type CheckContext, nodeShort, plugLinks, when } from '../checks/context.ts'
import type { Verdict } from '../checks/rule.ts'
import { quenchPresent } from '../checks/wiring/parts.ts'
import { between } from '../figures/between.ts'
import type { Figure } from '../figures/figure.ts'
import { SPEECH_FREQUENCY } from '../figures/speech.ts'
import type { Branch } from '../netlist/netlist.ts'
import type { Move } from '../sheet/model.ts'
import { become, sameBranch } from './measure.ts'
import { type FaultRule, type Finding, failing } from './named-fault.ts'
import { firstThatMends, mendOf } from './try-mend.ts'
import { ids, ownBranches } from './wires.ts'

/** A quench as it is fitted where one is missing. Common practice, no source. */
const QUENCH = {
  kind: 'quench',
  resistance: { value: 100, unit: 'Ω', text: '100 Ω' },
  capacitance: { value: 0.1e-6, unit: 'F', text: '0.1 µF' },
} as const

/** The sparks of the impulse contact are no longer quenched. */
export const quenchLost: FaultRule = {
  id: 'quench-lost',
  title: 'quench lost with a capacitor taken out',
  explains: [quenchPresent.id],
  find: (context, verdicts) =>
    failing(verdicts, quenchPresent.id)
      // what bridges the contact is no lost quench
      .filter(({ limit }) => limit?.side === 'at-most')
      .flatMap((verdict) => {
        const contact = ownBranches(context).find(({ id }) => id === verdict.subject)
        return contact === undefined ? [] : [lost(context, verdicts, contact)]
      }),
}

function lost(context: CheckContext, verdicts: readonly Verdict[], contact: Branch): Finding {
  const fit = quenchFor(context, contact.id)
  const tried =
    fit && firstThatMends(context, verdicts, [[fit]], [quenchPresent.id, 'wiring.ringing-lead-alone'])
  const left = leftOver(context)
  const rest = left.length === 0 ? '' : ` ${left.join(' and ')} is what is left of the old quench.`
  const [from, to] = [contact.from, contact.to].map((node) => nodeShort(context, node))
  return {
    subject: contact.id,
    condition: when(context, 'off-hook/break'),
    says: `Nothing lies across the ${contact.part.name} contact between ${from} and ${to} while it is open: its sparks burn it, and the exchange reads ragged pulses.${rest}`,
    path: ids(context, [contact.from, contact.to]),
    consequences: become(across(context, contact), tried && across(tried.after, contact)),
    ...(tried === undefined ? { mend: 'put a quench across the impulse contact again' } : mendOf(tried)),
  }
}

/** Impedance at 1 kHz of what lies across an open contact, within the set. */
function across(context: CheckContext, contact: Branch): Figure | undefined {
  const here = sameBranch(context.net, contact)
  if (here === undefined) return undefined
  const condition = when(context, 'off-hook/break')
  const lifted = [here.index, ...plugLinks(context)]
  return context.figure(
    between(context.net, here.from, here.to, { condition, lifted, frequency: SPEECH_FREQUENCY }),
  )
}

/** Parts of the set of which one end leads nowhere. */
function leftOver(context: CheckContext): readonly string[] {
  const own = ownBranches(context)
  const meets = (node: number): number => own.filter(({ from, to }) => from === node || to === node).length
  return own
    .filter(
      ({ part, from, to }) => part.sort === 'part' && part.count === 1 && (meets(from) < 2 || meets(to) < 2),
    )
    .map(({ part }) => part.name)
}

/** The move that fits a quench across a contact, between the terminals where the contact lies. */
export function quenchFor(context: CheckContext, id: string): Move | undefined {
  const contact = ownBranches(context).find((one) => one.id === id)
  if (contact === undefined) return undefined
  const [from = '', to = ''] = [contact.from, contact.to].map((node) => nodeShort(context, node))
  const taken = new Set(ownBranches(context).map(({ part }) => part.name))
  let name = 'new-quench'
  for (let k = 2; taken.has(name); k += 1) name = `new-quench-${k}`
  const spec = { ...QUENCH, from, to }
  return { do: 'fit part', what: name, with: spec }
}
