/** A bell without resistor among others that have one: it takes the current from its neighbours. */
import { type CheckContext, wireAt } from '../checks/context.ts'
import { everybody } from '../checks/line/everybody.ts'
import { BELL_RESISTOR, namesOf as namesInRow } from '../checks/mends.ts'
import type { Consequence } from '../checks/rule.ts'
import { nearest, toEnds } from '../checks/wiring/bell-ends.ts'
import type { Changes } from '../figures/figure.ts'
import { placeOf } from '../netlist/netlist.ts'
import { resistorMoves } from './bell-resistor.ts'
import { ableBells, bellsTogether, leastShare, type Ringing, sameBells } from './bells-together.ts'
import { rangeOf } from './fewest-out.ts'
import { become, milliamps } from './measure.ts'
import type { FaultRule, Finding } from './named-fault.ts'
import { enoughOrMore, type Sharing } from './resistor-enough.ts'
import { inWords, moved } from './try-mend.ts'
import { ids } from './wires.ts'

/** A bell that takes so many times what the middle one of the others takes is hungry. */
const HUNGRY = 2

/** The resistor is worth naming when the worst-off bell gets so many times what it got. */
const WORTH = 1.25

/** A bell behind less than this has no resistor of its own, ohms. */
const BARE = 1000

/** Named where some bell gets too little, and a resistor at the hungry one alone gives the worst-off more. */
export const bellWithoutResistor: FaultRule = {
  id: 'bell-without-resistor',
  title: 'bell without resistor among others',
  explains: ['bell.rings-with-all'],
  once: true,
  find(context, verdicts) {
    const able = ableBells(context, verdicts)
    const hungry = hungryBells(context, able)
    return hungry.map((one) => withoutResistor(context, one, hungry, able))
  },
}

/** A resistor of the usual value before each of some bells. */
export function resistorsAt(bells: readonly Ringing[]): Changes {
  return { within: bells.map(({ bell }) => ({ branch: bell.index, ohms: BELL_RESISTOR.value })) }
}

/**
 * Bells that lack a resistor, take clearly more than the others, and starve them; none where all ring or where a
 * resistor at it helps nobody.
 */
export function hungryBells(context: CheckContext, able: readonly Ringing[]): readonly Ringing[] {
  const all = bellsTogether(context)
  const before = leastShare(able)
  if (all.length < 2 || leastShare(all) >= 1 || before >= 1) return []
  const bare = able.filter((one) => {
    const others = able.filter((other) => other !== one)
    return others.length > 0 && takes(one) > HUNGRY * middle(others.map(takes)) && isBare(context, one)
  })
  const worth = (bells: readonly Ringing[]): boolean =>
    leastShare(sameBells(context, able, resistorsAt(bells))) >= WORTH * before
  const alone = bare.filter((one) => worth([one]))
  if (alone.length > 0 || bare.length < 2) return alone
  return worth(bare) ? bare : []
}

/** Whether next to nothing lies between the ringing lead and the bell; a bell on the pair shares no capacitor. */
function isBare(context: CheckContext, { bell, place }: Ringing): boolean {
  const there = { ...context, place: placeOf(context.net, place) }
  const lead = wireAt(there, 'ringing')
  const near = lead === undefined ? undefined : nearest(toEnds(there, bell, lead))
  return (near?.figure.value ?? Number.POSITIVE_INFINITY) < BARE
}

function takes({ figure }: Ringing): number {
  return figure.value ?? 0
}

/** The middle one of some values, of an even number the lower. */
function middle(values: readonly number[]): number {
  return [...values].sort((p, q) => p - q)[Math.floor((values.length - 1) / 2)] ?? Number.POSITIVE_INFINITY
}

function withoutResistor(
  context: CheckContext,
  one: Ringing,
  hungry: readonly Ringing[],
  able: readonly Ringing[],
): Finding {
  const { bell, place, figure } = one
  const there = context.place.place === place ? context : context.trial(context.installation, place)
  const moves = resistorMoves(there, bell)
  const tried = moves === undefined ? undefined : moved(there, moves)
  const others = able.filter((other) => other.bell !== bell)
  const starved = others.filter(({ share }) => share < 1)
  const sharing: Sharing = {
    context,
    able,
    one,
    rivals: hungry.filter((other) => other !== one),
    after:
      tried === undefined ? sameBells(context, able, resistorsAt([one])) : sameBells(tried.after, able, {}),
    fit:
      moves === undefined
        ? `with the set unplugged, put a bell resistor of ${BELL_RESISTOR.text} in series with the ${bell.part.name} of ${place}`
        : `${inWords(moves)} (in ${place})`,
  }
  const { mend, gets } = enoughOrMore(sharing)
  return {
    subject: bell.id,
    condition: everybody('ringing'),
    says:
      `The ${bell.part.name} of ${place} takes ${milliamps(figure)}, ${countOf(others)} ${rangeOf(others)}; ` +
      `${namesOf(starved)} ${starved.length === 1 ? 'gets' : 'get'} too little to ring. ` +
      'Bells share one capacitor as their impedances let them, and this one has no resistor to hold it back.',
    path: ids(context, [bell.from, bell.to]),
    consequences: [one, ...others].flatMap((other) => changeOf(other, gets)),
    mend,
  }
}

function changeOf({ bell, figure }: Ringing, gets: readonly Ringing[]): readonly Consequence[] {
  return become(figure, gets.find((one) => one.bell.id === bell.id)?.figure)
}

function countOf(others: readonly Ringing[]): string {
  return others.length === 1 ? 'the other' : `the ${others.length} others`
}

function namesOf(bells: readonly Ringing[]): string {
  return namesInRow([...new Set(bells.map(({ place }) => place))])
}
