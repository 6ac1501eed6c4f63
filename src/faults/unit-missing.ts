/** A slot that needs a unit and is empty. */
import { type CheckContext, nodeShort, when } from '../checks/context.ts'
import { speechFigures } from '../checks/wiring/landing.ts'
import { unitAsNeeded } from '../checks/wiring/parts.ts'
import type { NetSlot } from '../netlist/netlist.ts'
import type { Move } from '../sheet/model.ts'
import { become, becomeAll, loopNow } from './measure.ts'
import { type FaultRule, type Finding, failing } from './named-fault.ts'
import { moved, type Tried } from './try-mend.ts'
import { fitStrap, ids } from './wires.ts'

const EXPLAINS = [
  unitAsNeeded.id,
  'wiring.loop-through-set',
  'wiring.loop-closed-off-hook',
  'wiring.cores-reach-parts',
  'wiring.no-part-left-out',
]

/** The unit that belongs in the slot is out; a link between two of its sockets shows what it would close. */
export const unitMissing: FaultRule = {
  id: 'unit-missing',
  title: 'unit missing',
  explains: EXPLAINS,
  find: (context, verdicts) =>
    failing(verdicts, unitAsNeeded.id).flatMap(({ subject }) =>
      context.place.slots.filter(({ name }) => name === subject).map((slot) => missing(context, slot)),
    ),
}

function missing(context: CheckContext, slot: NetSlot): Finding {
  const { tried, unit } = fill(context, slot)
  const where = slot.sockets.map((node) => nodeShort(context, node)).join(', ')
  const link = tried?.moves[0]?.what
  const shown =
    unit === undefined && link !== undefined ? ` A link ${link} in its place shows what it closes.` : ''
  const stuck =
    tried === undefined
      ? ' Even with its sockets linked the loop stays open: something else is wrong too.'
      : ''
  return {
    subject: slot.name,
    condition: when(context, 'off-hook'),
    says: `The slot ${slot.name} (${where}) is empty, and this set needs its unit: the loop is open there.${shown}${stuck}`,
    path: ids(context, slot.sockets),
    consequences: [
      ...become(loopNow(context), tried && loopNow(tried.after)),
      ...becomeAll(speechFigures(context), tried && speechFigures(tried.after)),
    ],
    mend: `with the set unplugged, plug ${unit === undefined ? 'the unit that belongs there' : `unit ${unit}`} into slot ${slot.name}`,
    // a link in its place shows what the unit closes; it is no mend
    ...(unit === undefined || tried === undefined ? {} : { moves: tried.moves }),
  }
}

/** A unit in reach that fits, or else the link between two sockets that gives most speech. */
function fill(context: CheckContext, slot: NetSlot): { readonly tried?: Tried; readonly unit?: string } {
  const names = Object.values(context.installation.sets).flatMap(({ set }) => Object.keys(set.units))
  for (const unit of new Set(names)) {
    const tried = moved(context, [{ do: 'plug unit', what: unit, in: slot.name }])
    if (tried !== undefined && closes(tried)) return { tried, unit }
  }
  const links = slot.sockets.flatMap((from, k) =>
    slot.sockets.slice(k + 1).map((to): Move => fitStrap(context, { from, to })),
  )
  const trials = links.map((move) => moved(context, [move])).filter((one) => one !== undefined && closes(one))
  const [best] = trials.sort((p, q) => sends(q) - sends(p))
  return best === undefined ? {} : { tried: best }
}

function closes({ after }: Tried): boolean {
  return (loopNow(after).value ?? 0) > (after.limits.get('loop-make')?.value ?? 0)
}

function sends(tried: Tried | undefined): number {
  return tried === undefined ? 0 : (speechFigures(tried.after)[0]?.value ?? 0)
}
