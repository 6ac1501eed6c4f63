/** Too many bells on one capacitor or one line: each would ring alone, and together some or all are silent. */

import type { CheckContext } from '../checks/context.ts'
import { everybody } from '../checks/line/everybody.ts'
import { BELL_RESISTOR } from '../checks/mends.ts'
import type { Verdict } from '../checks/rule.ts'
import { hungryBells, resistorsAt } from './bell-without-resistor.ts'
import {
  ableBells,
  bellsTogether,
  currentOf,
  leastShare,
  type Ringing,
  sameBells,
  withoutPlaces,
} from './bells-together.ts'
import { fewestOut, justWords, type Spread, spreadOverLines } from './fewest-out.ts'
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
    if (able.length < 2 || leastShare(able) >= 1 || resistorsDo(context, able)) return []
    const out = fewestOut(context, able)
    return out === undefined ? [] : [tooMany(context, able, out, verdicts)]
  },
}

/** Whether a resistor at each hungry bell is enough. */
function resistorsDo(context: CheckContext, able: readonly Ringing[]): boolean {
  const hungry = hungryBells(context, able)
  return hungry.length > 0 && leastShare(sameBells(context, able, resistorsAt(hungry))) >= 1
}

function tooMany(
  context: CheckContext,
  all: readonly Ringing[],
  out: readonly string[],
  verdicts: readonly Verdict[],
): Finding {
  const { installation, net } = context
  const [load] = failing(verdicts, 'line.ringing-load')
  const more = load?.state === 'fails' ? `; for the ringing load that this line allows, ${load.mend}` : ''
  const sets = Object.fromEntries(Object.entries(installation.sets).filter(([place]) => !out.includes(place)))
  const [first] = Object.keys(sets)
  const after = context.trial({ ...installation, sets }, first)
  const silent = all.filter(({ share }) => share < 1).length
  const rest = withoutPlaces(context, all, out)
  const left = rest.length
  const count = silent === all.length ? 'none rings' : `${silent} of them do not ring`
  return {
    subject: net.name,
    condition: everybody('ringing'),
    says: `${all.length} bells share what the line gives through its ringing capacitor, and ${count}, though each would alone. With ${out.length} of the sets unplugged the other ${left} ring${justWords(rest)}.`,
    path: all.map(({ bell }) => bell.id),
    consequences: all
      .filter(({ place }) => !out.includes(place))
      .flatMap(({ bell, figure }) => become(figure, currentOf(after, bell))),
    mend: `unplug ${out.join(', ')}, or give ${out.length === 1 ? 'it a line of its own' : 'them lines of their own'}; the other ${left} then ring${justWords(rest)}${more}; ${lasting(spreadOverLines(context, all))}`,
  }
}

const COUNTS = [
  'no',
  'one',
  'two',
  'three',
  'four',
  'five',
  'six',
  'seven',
  'eight',
  'nine',
  'ten',
  'eleven',
  'twelve',
]

function countWord(count: number): string {
  return COUNTS[count] ?? String(count)
}

/** On how many lines all would ring within the load that each allows, and who on which. */
function lasting({ lines, tooMuch, resistorsDo: eased }: Spread): string {
  const most = Math.max(...lines.map(({ length }) => length))
  const each = lines.map((places, k) => `${k + 1}: ${places.join(', ')}`).join('; ')
  const wants = eased ? ` without a bell resistor of ${BELL_RESISTOR.text}` : ''
  const heavy =
    tooMuch.length === 0 ? '' : `; ${tooMuch.join(', ')} by itself is too much for such a line${wants}`
  return `for good, no more than ${countWord(most)} on a line, so that bells and ringing load hold with something to spare: ${countWord(lines.length)} lines, each with a master socket of its own (${each})${heavy}`
}
