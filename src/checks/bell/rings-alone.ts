/** Does the bell ring when the set is the only one on the line? */

import type { Changes, Figure } from '../../figures/figure.ts'
import type { Installation } from '../../netlist/compile.ts'
import type { Branch } from '../../netlist/netlist.ts'
import { nodeName } from '../../netlist/netlist.ts'
import type { CheckContext, Rule } from '../context.ts'
import {
  judgeAndMend,
  LEAD_CAPACITANCE,
  LEAD_RESISTANCE,
  linksOfPlaces,
  type Mended,
  otherPlaces,
  thirdWireWords,
  withExchangedPair,
  withLead,
  withSocket,
  withThirdWire,
} from '../mends.ts'
import { ringsFrom } from '../sheet-limit.ts'
import { bellCurrent, eachBell } from './rings.ts'

export const ringsAlone: Rule = {
  id: 'bell.rings-alone',
  asks: 'Does the bell ring when the set is the only one?',
  run: (context) =>
    eachBell(context, ringsAlone.id, ({ bell, least, remark }) => {
      const figure = bellCurrent(context, bell, alone(context))
      const verdict = judgeAndMend(
        {
          check: ringsAlone.id,
          subject: bell.id,
          figure,
          limit: ringsFrom(least),
          path: emptyContact(context),
          says: {
            good: 'Alone on this line the bell rings.',
            bad: 'Even alone on this line the bell gets too little to ring.',
          },
          tight: 'little is left over: age, damp and a longer cable will take it',
        },
        () => mendOf(context, bell, least, figure),
      )
      return verdict.state === 'holds' && remark !== undefined ? { ...verdict, remark } : verdict
    }),
}

/** The ringing contact of a plug that meets nothing in its socket. */
function emptyContact({ net, place }: CheckContext): readonly string[] {
  const node = place.socket?.ringing === undefined ? place.plug[3] : undefined
  return node === undefined ? [] : [nodeName(net, node)]
}

/** All other sets unplugged. */
export function alone(context: CheckContext): Changes {
  const lifted = linksOfPlaces(context, otherPlaces(context))
  return lifted.length === 0 ? {} : { lifted }
}

interface Trial {
  readonly says: string
  readonly installation: Installation | undefined
}

/** What could stand before the set, or how it could stand; a set without ringing core is helped by none of it. */
function trialsOf(context: CheckContext): readonly Trial[] {
  const { installation, net, place } = context
  if (place.meets[3] === undefined) return []
  const here = place.socket?.name
  const others = Object.keys(installation.premises?.sockets ?? {}).filter((name) => name !== here)
  const used = new Set(net.places.map((one) => one.socket?.name))
  const third = withThirdWire(context)
  const free = others.filter((name) => !used.has(name)).slice(0, 3)
  return [
    ...(third === undefined ? [] : [{ says: thirdWireWords(third), installation: third.installation }]),
    {
      says: 'exchange the two line cores of the set',
      installation: withExchangedPair(installation, place.place),
    },
    {
      says: `put an adapter lead with its own capacitor of ${LEAD_CAPACITANCE.text} and resistor of ${LEAD_RESISTANCE.text} between socket and set`,
      installation: withLead(installation, place.place),
    },
    ...free.map((name) => ({
      says: `plug the set into the socket ${name}`,
      installation: withSocket(installation, place.place, name),
    })),
  ]
}

/** Share of the needed current from which a mend that is not enough is worth a word. */
const WORTH = 0.1

/** Tries each mend, and names the first that makes the bell ring; or says how near the best of them came. */
function mendOf(context: CheckContext, bell: Branch, least: number, figure: Figure): Mended {
  let best: { readonly says: string; readonly figure: Figure } | undefined
  for (const { says, installation } of trialsOf(context)) {
    if (installation === undefined) continue
    const mended = tried(context, installation, bell.id)
    if (mended?.value == null) continue
    if (mended.value >= least) return { mend: says, consequences: [{ figure, mended }] }
    const before = best?.figure.value ?? figure.value ?? 0
    if (mended.value > Math.max(2 * before, WORTH * least)) best = { says, figure: mended }
  }
  if (best === undefined) {
    return {
      mend: 'nothing that was tried outside the set mends it; look at the way of the ringing current inside it, then for a line that rings harder',
    }
  }
  return {
    mend: `${best.says}: it gets more, but not enough; the ringing of this line is too weak for this bell`,
    consequences: [{ figure, mended: best.figure }],
  }
}

/** The bell's current alone in another installation. */
function tried(context: CheckContext, installation: Installation, id: string): Figure | undefined {
  const trial = context.trial(installation)
  const index = trial.net.branchIndex.get(id)
  const bell = index === undefined ? undefined : trial.net.branches[index]
  return bell && bellCurrent(trial, bell, alone(trial))
}
