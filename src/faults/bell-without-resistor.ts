/** A bell without resistor among others that have one: it takes the current from its neighbours. */
import { type CheckContext, nodeShort, when, wireAt } from '../checks/context.ts'
import { everybody } from '../checks/line/everybody.ts'
import { BELL_RESISTOR } from '../checks/mends.ts'
import type { Verdict } from '../checks/rule.ts'
import { conducting, linksOf, without } from '../netlist/conduct.ts'
import { pathBetween } from '../netlist/paths.ts'
import type { PartSpec } from '../parts/kind.ts'
import type { Move } from '../sheet/model.ts'
import { ableBells, bellsTogether, currentOf, leastShare, type Ringing, sameBells } from './bells-together.ts'
import { become, milliamps } from './measure.ts'
import type { FaultRule, Finding } from './named-fault.ts'
import { inWords, moved } from './try-mend.ts'
import { ids, ownBranches, takeStrapOff } from './wires.ts'

/** A bell that takes so many times what the middle one of the others takes is hungry. */
const HUNGRY = 2

/** The resistor is worth naming when the worst-off bell gets so many times what it got. */
const WORTH = 1.25

/** Named where some bell gets too little, and a resistor at the hungry one gives the worst-off more. */
export const bellWithoutResistor: FaultRule = {
  id: 'bell-without-resistor',
  title: 'bell without resistor among others',
  explains: ['bell.rings-with-all'],
  once: true,
  find(context, verdicts) {
    const hungry = hungryBells(context, verdicts)
    return hungry.map((one) => withoutResistor(context, one, hungry, ableBells(context, verdicts)))
  },
}

/** Bells that starve the others and would not with a resistor each; none where all ring or it helps nobody. */
export function hungryBells(context: CheckContext, verdicts: readonly Verdict[]): readonly Ringing[] {
  const all = bellsTogether(context)
  if (all.length < 2 || leastShare(all) >= 1) return []
  const able = ableBells(context, verdicts)
  const hungry = able.filter(
    (one) => takes(one) > HUNGRY * middle(able.filter((other) => other !== one).map(takes)),
  )
  if (hungry.length === 0 || leastShare(able) >= 1) return []
  const within = hungry.map(({ bell }) => ({ branch: bell.index, ohms: BELL_RESISTOR }))
  return leastShare(sameBells(context, able, { within })) >= WORTH * leastShare(able) ? hungry : []
}

function takes({ figure }: Ringing): number {
  return figure.value ?? 0
}

function middle(values: readonly number[]): number {
  return [...values].sort((p, q) => p - q)[Math.floor(values.length / 2)] ?? Number.POSITIVE_INFINITY
}

function withoutResistor(
  context: CheckContext,
  one: Ringing,
  hungry: readonly Ringing[],
  all: readonly Ringing[],
): Finding {
  const { bell, place, figure } = one
  const there = context.place.place === place ? context : context.trial(context.installation, place)
  const moves = resistorMoves(there, one)
  const tried = moves === undefined ? undefined : moved(there, moves)
  const within = hungry.map((other) => ({ branch: other.bell.index, ohms: BELL_RESISTOR }))
  const after = (other: Ringing) =>
    tried === undefined || hungry.length > 1
      ? currentOf(context, other.bell, { within })
      : currentOf(tried.after, other.bell)
  const others = all.filter((other) => other.bell !== bell)
  const starved = others.filter(({ share }) => share < 1).length
  return {
    subject: bell.id,
    condition: everybody('ringing'),
    says:
      `The ${bell.part.name} of ${place} takes ${milliamps(figure)}, and each of the ${others.length} others ` +
      `${milliamps(others[0]?.figure)} or thereabouts; ${starved} of them get too little to ring. ` +
      'Bells share one capacitor as their impedances let them, and this one has no resistor to hold it back.',
    path: ids(context, [bell.from, bell.to]),
    consequences: [one, ...others].flatMap((other) => become(other.figure, after(other))),
    mend:
      moves === undefined
        ? `with the set unplugged, put a bell resistor of 3.3 kΩ in series with the ${bell.part.name} of ${place}`
        : `${inWords(moves)} (in ${place})`,
  }
}

/** A resistor in place of a strap that alone leads from the ringing lead to the bell. */
function resistorMoves(there: CheckContext, { bell }: Ringing): readonly Move[] | undefined {
  const { net, place } = there
  const lead = wireAt(there, 'ringing')
  if (lead === undefined) return undefined
  const links = linksOf(without(conducting(net, when(there, 'on-hook'), 'direct'), [bell.index]))
  const path = [bell.from, bell.to]
    .map((end) => pathBetween(net, links, lead, end))
    .find((one) => one !== undefined)
  const strap = path?.branches.map((k) => net.branches[k]).find((one) => one?.part.sort === 'strap')
  if (strap === undefined || ![strap.from, strap.to].every((node) => place.terminals.includes(node)))
    return undefined
  const [from = '', to = ''] = [strap.from, strap.to].map((node) => nodeShort(there, node))
  const resistance = { value: BELL_RESISTOR, unit: 'Ω', text: '3.3 kΩ' }
  const spec: PartSpec = Object.assign({ kind: 'resistor' }, { from, to, resistance })
  return [takeStrapOff(there, strap), { do: 'fit part', what: freeName(there), with: spec }]
}

function freeName(there: CheckContext): string {
  const taken = new Set(ownBranches(there).map(({ part }) => part.name))
  let name = 'bell-resistor'
  for (let k = 2; taken.has(name); k += 1) name = `bell-resistor-${k}`
  return name
}
