/** Cords: cores that lie on other terminals than their own, on none, or touch each other. */

import type { Change } from '../../figures/variants.ts'
import type { NetCore } from '../../netlist/netlist.ts'
import { branchAt } from '../../netlist/netlist.ts'
import { STRAP_RESISTANCE, type StrapPartSpec } from '../../parts/strap.ts'
import type { BookFault } from '../fault.ts'
import { type Draft, type Ground, LINK, nodeShort, pairsOf, share } from './ground.ts'
import { unplugged } from './mends.ts'
import { besideOf } from './terminals.ts'

/** Every way in which the cores of a set's cords can lie wrongly or touch. */
export function coreFaults(ground: Ground): readonly BookFault[] {
  const { place, odds } = ground
  const isPair = lineWires(ground)
  const pairs = pairsOf(place.cores).filter(([one, two]) => one.cord === two.cord)
  const apart = pairs.filter(([one, two]) => one.lands !== two.lands)
  const { faults } = odds
  return [
    ...share(
      faults['pair-reversed'],
      draftAll(apart.filter(isPair), (pair) => reversed(ground, pair)),
    ),
    ...share(
      faults['cores-crossed'],
      draftAll(
        apart.filter((pair) => !isPair(pair)),
        (pair) => crossed(ground, pair),
      ),
    ),
    ...share(
      faults['core-one-off'],
      place.cores.flatMap((core) => onesOff(ground, core)),
    ),
    ...share(
      faults['core-parked'],
      place.cores.filter(({ branch }) => branch !== undefined).map((core) => parked(ground, core)),
    ),
    ...share(
      faults['cores-touching'],
      draftAll(pairs, (pair) => touching(ground, pair)),
    ),
  ]
}

type Pair = readonly [NetCore, NetCore]

function draftAll(pairs: readonly Pair[], make: (pair: Pair) => Draft): readonly Draft[] {
  return pairs.map(make)
}

/** Whether two cores are the pair of the line, by the contacts of the plug on which they end. */
function lineWires({ place }: Ground): (pair: Pair) => boolean {
  const { 5: a, 2: b } = place.plug
  return ([one, two]) =>
    a !== undefined && b !== undefined && [a, b].every((node) => node === one.far || node === two.far)
}

/** A core taken off its terminal; nothing where it lies on none. */
function lifted({ branch }: NetCore): readonly Change[] {
  return branch === undefined ? [] : [{ lifted: branch }]
}

/** A core put onto a terminal, with the resistance that it has wherever it lies. */
function landed({ net }: Ground, { far, branch }: NetCore, to: number): Change {
  const { resistance } =
    branch === undefined ? {} : (branchAt(net, branch).part.spec as Partial<StrapPartSpec>)
  const ohms = resistance === undefined || resistance === 'open' ? STRAP_RESISTANCE : resistance.value
  return { bridge: { from: far, to, ohms } }
}

/** Two cores that each lie where the other belongs; one of them may be parked in place of the other. */
function exchanged(ground: Ground, [one, two]: Pair): readonly Change[] {
  return [
    ...lifted(one),
    ...lifted(two),
    ...(two.lands === undefined ? [] : [landed(ground, one, two.lands)]),
    ...(one.lands === undefined ? [] : [landed(ground, two, one.lands)]),
  ]
}

function both({ place }: Ground, [one, two]: Pair): Pick<Draft, 'subjects'> & { readonly head: string } {
  return {
    head: `${place.place}/${one.name}+${two.name}`,
    subjects: [`${place.place}/${one.name}`, `${place.place}/${two.name}`],
  }
}

/** `on B2`, `parked`. */
function spot(ground: Ground, node: number | undefined): string {
  return node === undefined ? 'parked' : `on ${nodeShort(ground, node)}`
}

function home(ground: Ground, core: NetCore): string {
  return core.lands === undefined ? `park ${core.name}` : `land ${core.name} ${spot(ground, core.lands)}`
}

function crossed(ground: Ground, pair: Pair): Draft {
  const [one, two] = pair
  const { head, subjects } = both(ground, pair)
  return {
    id: `${head} crossed`,
    subjects,
    family: 'crossed',
    says: `the cores ${one.name} and ${two.name} are crossed`,
    sign:
      `${one.name} is ${spot(ground, two.lands)} and ${two.name} ${spot(ground, one.lands)}; ` +
      'follow both through the cord, since colours may be wrong',
    mend: unplugged(`${home(ground, one)} and ${home(ground, two)}`),
    changes: exchanged(ground, pair),
  }
}

/** The same of the two line wires, where a set with one polarity alone is moved by it. */
function reversed(ground: Ground, pair: Pair): Draft {
  const [one, two] = pair
  const { head, subjects } = both(ground, pair)
  return {
    ...crossed(ground, pair),
    id: `${head} reversed`,
    subjects,
    family: 'reversed',
    says: `the two line wires ${one.name} and ${two.name} are exchanged, at the plug or on the terminals`,
  }
}

function onesOff(ground: Ground, core: NetCore): readonly Draft[] {
  const { place } = ground
  const { lands, name } = core
  if (lands === undefined) return []
  const id = `${place.place}/${name}`
  return besideOf(ground, lands).map((node) => ({
    id: `${id} one-off ${nodeShort(ground, node)}`,
    subjects: [id],
    family: 'one-off',
    says: `the core ${name} lies on ${nodeShort(ground, node)}, one terminal off ${nodeShort(ground, lands)}`,
    sign: `${name} is under the screw of ${nodeShort(ground, node)}; ${nodeShort(ground, lands)} lacks it`,
    mend: unplugged(home(ground, core)),
    changes: [...lifted(core), landed(ground, core, node)],
  }))
}

function parked(ground: Ground, core: NetCore): Draft {
  const { place } = ground
  const id = `${place.place}/${core.name}`
  return {
    id: `${id} parked`,
    subjects: [id],
    family: 'missing',
    says: `the core ${core.name} lies on nothing`,
    sign: `${core.name} hangs free or is insulated; ${core.lands === undefined ? 'its terminal' : nodeShort(ground, core.lands)} lacks it`,
    mend: unplugged(home(ground, core)),
    changes: lifted(core),
  }
}

function touching(ground: Ground, pair: Pair): Draft {
  const [one, two] = pair
  const { head, subjects } = both(ground, pair)
  return {
    id: `${head} touching`,
    subjects,
    family: 'shorted',
    says: `the cores ${one.name} and ${two.name} touch in the cord`,
    sign: 'a frayed cord; it comes and goes while the cord is bent',
    mend: unplugged(`renew the cord ${one.cord}, or shorten it behind the frayed place`),
    changes: [{ bridge: { from: one.far, to: two.far, ohms: LINK } }],
  }
}
