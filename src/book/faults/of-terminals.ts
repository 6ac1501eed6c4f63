/** Between terminals: straps that are missing or should not be there, damp, and units that are not plugged in. */

import type { NetCore } from '../../netlist/netlist.ts'
import type { Hold } from '../../sheet/model.ts'
import type { BookFault } from '../fault.ts'
import { type Draft, type Ground, LINK, nodeShort, share } from './ground.ts'
import { unplugged } from './mends.ts'
import { canJoin, neighbours } from './terminals.ts'

/** Faults of straps that the modes of a strap do not know. */
export function strapFaults(ground: Ground): readonly BookFault[] {
  const pairs = neighbours(ground).filter((pair) => canJoin(ground, pair))
  return [
    ...strapsMissing(ground),
    ...share(
      ground.odds.faults['strap-extra'],
      pairs.map((pair) => extra(ground, pair)),
    ),
  ]
}

/** How often a strap is taken off, by how it is held; what belongs to the board is never. From memory. */
const TAKEN_OFF: Readonly<Record<Hold, number>> = { screw: 1, solder: 0.2, board: 0 }

function strapsMissing({ net, place, odds, holds }: Ground): readonly BookFault[] {
  const straps = net.parts.filter((part) => part.place === place.place && part.sort === 'strap')
  return share(
    odds.faults['strap-missing'],
    straps.map(
      ({ id, name, first }): Draft => ({
        id: `${id} missing`,
        subjects: [id],
        family: 'missing',
        says: `the strap ${name} is missing`,
        sign: `nothing joins ${name.replace('-', ' and ')}; screws with bare threads, or a cut wire`,
        mend: unplugged(`fit the strap ${name}`),
        changes: [{ lifted: first }],
      }),
    ),
  ).flatMap((fault, k) => {
    const held = TAKEN_OFF[holds[straps[k]?.name ?? ''] ?? 'screw']
    return held === 0 ? [] : [{ ...fault, weight: fault.weight * held }]
  })
}

/** Two terminals as a strap between them would be called. */
function between(
  ground: Ground,
  [one, two]: readonly [number, number],
): Pick<Draft, 'subjects'> & {
  readonly name: string
  readonly head: string
} {
  const { place } = ground.place
  const [p, q] = [nodeShort(ground, one), nodeShort(ground, two)]
  return { name: `${p}-${q}`, head: `${place}/${p}-${q}`, subjects: [`${place}/${p}`, `${place}/${q}`] }
}

function extra(ground: Ground, pair: readonly [number, number]): Draft {
  const { name, head, subjects } = between(ground, pair)
  return {
    id: `${head} extra`,
    subjects,
    family: 'extra',
    says: `a strap ${name} is there that is not in the sheet`,
    sign: `a strap, a tag or a stray strand of wire joins ${name.replace('-', ' and ')}`,
    mend: unplugged(`take the strap ${name} off`),
    changes: [{ bridge: { from: pair[0], to: pair[1], ohms: LINK } }],
  }
}

/** Damp between terminals next to each other, and between core ends next to each other in handset and plug. */
export function dampFaults(ground: Ground): readonly BookFault[] {
  return share(ground.odds.faults.damp, [
    ...neighbours(ground)
      .filter((pair) => canJoin(ground, pair))
      .map((pair) => dampBetween(ground, pair)),
    ...['handset', 'plug'].flatMap((end) => coreEnds(ground, end).map((pair) => dampEnds(ground, end, pair))),
  ])
}

/** Cores next to each other at the far end of their cord: in the order in which the sheet has them, or of the plug. */
function coreEnds({ place }: Ground, end: string): readonly (readonly [NetCore, NetCore])[] {
  const ends = place.cores.filter(({ endsIn }) => endsIn === end)
  const at = (core: NetCore): number =>
    Number(Object.entries(place.plug).find(([, node]) => node === core.far)?.[0] ?? 0)
  const inOrder = end === 'plug' ? [...ends].sort((p, q) => at(p) - at(q)) : ends
  return inOrder.slice(1).flatMap((two, k) => {
    const one = inOrder[k]
    return one === undefined || one.cord !== two.cord ? [] : [[one, two] as const]
  })
}

function dampBetween(ground: Ground, [from, to]: readonly [number, number]): Draft {
  const { name, head, subjects } = between(ground, [from, to])
  return {
    id: `${head} damp`,
    subjects,
    family: 'damp',
    says: `it is damp between ${name.replace('-', ' and ')}`,
    sign: 'green or white crust between the screws; it comes and goes with the weather',
    mend: unplugged('brush the strip clean and dry it'),
    changes: [{ bridge: { from, to, ohms: ohmsOf(ground) } }],
  }
}

function dampEnds(ground: Ground, end: string, [one, two]: readonly [NetCore, NetCore]): Draft {
  const { place } = ground.place
  return {
    id: `${place}/${one.name}+${two.name} damp`,
    subjects: [`${place}/${one.name}`, `${place}/${two.name}`],
    family: 'damp',
    says: `it is damp between the ends of the cores ${one.name} and ${two.name} in the ${end}`,
    sign: 'crust between the ends of the cores; it comes and goes with the weather and with breath',
    mend: unplugged(`clean and dry the inside of the ${end}`),
    changes: [{ bridge: { from: one.far, to: two.far, ohms: ohmsOf(ground) } }],
  }
}

function ohmsOf({ odds }: Ground): number {
  return odds['damp-resistance'].value.value
}

/** Units that are not in their slots. */
export function unitFaults({ net, place, odds }: Ground): readonly BookFault[] {
  const drafts = place.slots.flatMap(({ name, fitted }): Draft[] => {
    const own = net.parts.filter(
      (part) => part.place === place.place && part.sort === 'unit' && part.name.startsWith(`${name}.`),
    )
    if (fitted === undefined || own.length === 0) return []
    return [
      {
        id: `${place.place}/${name} missing`,
        subjects: [`${place.place}/${name}`],
        family: 'missing',
        says: `the unit ${fitted} is not in the slot ${name}`,
        sign: 'the slot is empty, or the unit sits askew in it',
        mend: unplugged(`plug a ${fitted} into the slot ${name}`),
        changes: own.flatMap(({ first, count }) =>
          Array.from({ length: count }, (_, k) => ({ lifted: first + k })),
        ),
      },
    ]
  })
  return share(odds.faults['unit-missing'], drafts)
}
