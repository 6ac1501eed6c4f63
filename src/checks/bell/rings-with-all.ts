/** Does the bell ring with everything plugged in as it stands? Where it does not: what would have to go. */

import type { Figure } from '../../figures/figure.ts'
import { amountOf } from '../../figures/figure.ts'
import { soundersOf } from '../../figures/ringing-share.ts'
import type { Branch } from '../../netlist/netlist.ts'
import { type CheckContext, type Rule, roleBranches } from '../context.ts'
import {
  BELL_RESISTOR,
  judgeAndMend,
  largestFirst,
  linksOfPlaces,
  type Mended,
  namesOf,
  otherPlaces,
} from '../mends.ts'
import { ringsFrom } from '../sheet-limit.ts'
import { bellCurrent, eachBell } from './rings.ts'
import { alone } from './rings-alone.ts'

export const ringsWithAll: Rule = {
  id: 'bell.rings-with-all',
  asks: 'Does the bell ring with everything plugged in?',
  run: (context) =>
    eachBell(context, ringsWithAll.id, ({ bell, least, remark }) => {
      const figure = bellCurrent(context, bell)
      const verdict = judgeAndMend(
        {
          check: ringsWithAll.id,
          subject: bell.id,
          figure,
          limit: ringsFrom(least),
          path: [],
          says: {
            good: 'With everything plugged in the bell rings.',
            bad: 'With everything plugged in the bell gets too little to ring.',
          },
          tight: 'little is left over: one bell more on this line would silence it',
        },
        () => mendOf(context, bell, least, figure),
      )
      return verdict.state === 'holds' && remark !== undefined ? { ...verdict, remark } : verdict
    }),
}

function mendOf(context: CheckContext, bell: Branch, least: number, figure: Figure): Mended {
  const lonely = bellCurrent(context, bell, alone(context))
  if (amountOf(lonely) < least)
    return { mend: 'mend first what keeps it from ringing alone (`bell.rings-alone`)' }
  return resistorMend(context, bell, least, figure) ?? unplugMend(context, bell, least, figure)
}

/** How much more than this bell another must take to be called hungry. */
const HUNGRY = 1.5

/** A bell resistor at the bell that takes the most, where that alone gives this bell enough. */
function resistorMend(
  context: CheckContext,
  bell: Branch,
  least: number,
  figure: Figure,
): Mended | undefined {
  const [most] = takers(context)
  if (most === undefined || most.current < HUNGRY * amountOf(figure)) return undefined
  const within = [{ branch: most.bell.index, ohms: BELL_RESISTOR.value }]
  const mended = bellCurrent(context, bell, { within })
  const own = bellCurrent(context, most.bell, { within })
  const its = most.bell.part.law.sounds?.(most.bell.part.spec)?.current ?? 0
  // what silences the other one is no mend
  if (amountOf(mended) < least || amountOf(own) < its) return undefined
  const mend = `put a bell resistor of ${BELL_RESISTOR.text} in series with ${most.bell.id}, which takes the greater part of the ringing current`
  return { mend, consequences: [{ figure, mended }] }
}

/** The fewest other sets, those that take the most first, that must be unplugged before this bell rings. */
function unplugMend(context: CheckContext, bell: Branch, least: number, figure: Figure): Mended {
  const taking = takers(context).map((one) => one.bell.part.place)
  const order = [...new Set([...taking, ...otherPlaces(context)])]
  const without = (count: number): Figure =>
    bellCurrent(context, bell, { lifted: linksOfPlaces(context, order.slice(0, count)) })
  // alone it rings, so that all of them are enough; what is enough stays enough with more of them gone
  let few = 0
  let enough = order.length
  while (enough - few > 1) {
    const middle = Math.floor((few + enough) / 2)
    if (amountOf(without(middle)) >= least) enough = middle
    else few = middle
  }
  return {
    mend: `unplug ${namesOf(order.slice(0, enough))}${enough > 1 ? ', who take the most; fewer are not enough' : ''}`,
    consequences: [{ figure, mended: without(enough) }],
  }
}

interface Taker {
  readonly bell: Branch
  readonly current: number
}

/** The bells of other sets and what they take, the hungriest first. */
function takers(context: CheckContext): readonly Taker[] {
  const own = new Set(roleBranches(context, 'sounder').map(({ index }) => index))
  const all = soundersOf(context.net)
    .filter(({ index }) => !own.has(index))
    .map((bell) => ({ bell, current: amountOf(bellCurrent(context, bell)) }))
  return largestFirst(all, ({ current }) => current)
}
