/** Too many bells on one capacitor or one line: each would ring alone, and together some or all are silent. */
import type { CheckContext } from '../checks/context.ts'
import { everybody } from '../checks/line/everybody.ts'
import { BELL_RESISTOR } from '../checks/mends.ts'
import type { Verdict } from '../checks/rule.ts'
import { hungryBells } from './bell-without-resistor.ts'
import {
  ableBells,
  bellsTogether,
  currentOf,
  leastShare,
  type Ringing,
  sameBells,
  withoutPlaces,
} from './bells-together.ts'
import { become } from './measure.ts'
import { type FaultRule, type Finding, failing } from './named-fault.ts'

/** Says which sets to unplug so that the rest ring, as few as solving finds. */
export const tooManyBells: FaultRule = {
  id: 'too-many-bells',
  title: 'too many bells',
  explains: ['bell.rings-with-all', 'line.ringing-load'],
  once: true,
  find(context, verdicts) {
    const all = bellsTogether(context)
    if (all.length < 2 || leastShare(all) >= 1) return []
    // a bell that is silent alone has another fault
    const able = ableBells(context, verdicts)
    if (able.length < 2 || leastShare(able) >= 1 || resistorsDo(context, able, verdicts)) return []
    const out = unplugged(context, able)
    return out === undefined ? [] : [tooMany(context, able, out, verdicts)]
  },
}

/** Whether a resistor at each hungry bell is enough. */
function resistorsDo(context: CheckContext, able: readonly Ringing[], verdicts: readonly Verdict[]): boolean {
  const within = hungryBells(context, verdicts).map(({ bell }) => ({
    branch: bell.index,
    ohms: BELL_RESISTOR,
  }))
  return within.length > 0 && leastShare(sameBells(context, able, { within })) >= 1
}

/** The places to unplug, as few as found, so that the other bells ring. */
function unplugged(context: CheckContext, able: readonly Ringing[]): readonly string[] | undefined {
  const places = [...new Set(able.map(({ place }) => place))]
  const rest = (out: readonly string[]): readonly Ringing[] => withoutPlaces(context, able, out)
  let out: readonly string[] = []
  for (let left = rest(out); leastShare(left) < 1; left = rest(out)) {
    const candidates = candidatesOf(left).map((place) => [...out, place])
    const [best] = candidates.sort((p, q) => leastShare(rest(q)) - leastShare(rest(p)))
    if (best === undefined || best.length >= places.length) return undefined
    out = best
  }
  // one that went early may come back
  return out.filter((place, _, gone) => leastShare(rest(gone.filter((one) => one !== place))) < 1)
}

/** Whom to unplug next: who takes the most, or who is worst off. */
function candidatesOf(left: readonly Ringing[]): readonly string[] {
  const [most] = [...left].sort((p, q) => (q.figure.value ?? 0) - (p.figure.value ?? 0))
  const [worst] = [...left].sort((p, q) => p.share - q.share)
  return [...new Set([most?.place, worst?.place].filter((one) => one !== undefined))]
}

function tooMany(
  context: CheckContext,
  all: readonly Ringing[],
  out: readonly string[],
  verdicts: readonly Verdict[],
): Finding {
  const { installation, net } = context
  const [load] = failing(verdicts, 'line.ringing-load')
  const more = load?.state === 'fails' ? ` (for the ringing load that this line allows: ${load.mend})` : ''
  const sets = Object.fromEntries(Object.entries(installation.sets).filter(([place]) => !out.includes(place)))
  const [first] = Object.keys(sets)
  const after = context.trial({ ...installation, sets }, first)
  const silent = all.filter(({ share }) => share < 1).length
  const left = all.length - all.filter(({ place }) => out.includes(place)).length
  const count = silent === all.length ? 'none rings' : `${silent} of them do not ring`
  return {
    subject: net.name,
    condition: everybody('ringing'),
    says: `${all.length} bells share what the line gives through its ringing capacitor, and ${count}, though each would alone. With ${out.length} of the sets unplugged the other ${left} ring.`,
    path: all.map(({ bell }) => bell.id),
    consequences: all
      .filter(({ place }) => !out.includes(place))
      .flatMap(({ bell, figure }) => become(figure, currentOf(after, bell))),
    mend: `unplug ${out.join(', ')}, or give them a line of their own; the other ${left} then ring${more}`,
  }
}
