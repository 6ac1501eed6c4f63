/** What an instrument cannot show of the parts that a reading leads through. */
import type { Branch, Netlist } from '../netlist/netlist.ts'
import type { Role } from '../parts/kind.ts'
import { currentIn, sizeOf } from '../solver/solution.ts'
import type { Leads } from './leads.ts'
import { across, alternatingWay, type Meaning, stores } from './meaning.ts'
import type { Shown } from './show.ts'

/** A note that goes with a reading. */
export interface Blind {
  readonly branch: string
  readonly says: string
  /** What it carries in this reading, A, where what it reads hangs on that. */
  readonly current?: number
}

/** For roles whose health no instrument shows. All common practice, no source. */
const BY_ROLE: Readonly<Partial<Record<Role, string>>> = {
  sounder:
    'a right resistance is no sound bell: magnet, clapper and gongs show only when it rings, shorted turns hardly at all',
  sender: 'granules move: shake it and read again; whether they are packed shows only in speech',
  receiver: 'a right resistance is no loud receiver: magnet and diaphragm show only by ear',
}

const CAPACITOR =
  'leakage shows only at working voltage, about 100 V, and losses not at all; neither ohms nor capacitance tell'

/** What cannot be shown of a reading's parts, each said once. */
export function blindSpots(
  net: Netlist,
  leads: Leads,
  { parts, beside }: Meaning,
  shown: Pick<Shown, 'amps' | 'solution'>,
): readonly Blind[] {
  const charges = stores(net, leads)
  const concerned = new Set([...parts, ...beside, ...across(net, leads), ...alternatingWay(net, leads)])
  return [...concerned].flatMap((branch): Blind[] => {
    const says = blindness(branch) ?? (charges(branch) ? CAPACITOR : undefined)
    return says === undefined ? [] : [{ branch: branch.id, says, ...currentOf(branch, shown) }]
  })
}

/** A smaller share of the instrument's current than this is not worth a word. */
const WORTH = 0.01

/** The direct current of a part whose law bends with it and that says of itself what a meter does not show. */
function currentOf(
  { part, index }: Branch,
  { amps, solution }: Pick<Shown, 'amps' | 'solution'>,
): Pick<Blind, 'current'> {
  const bends = part.law.meterBlind !== undefined && part.law.bends?.(part.spec).includes('direct') === true
  if (!bends || solution?.question.analysis !== 'direct') return {}
  const current = sizeOf(currentIn(solution, index))
  return amps === 0 || current < WORTH * Math.abs(amps) ? {} : { current }
}

function blindness({ part }: Branch): string | undefined {
  return part.law.meterBlind ?? (part.role === undefined ? undefined : BY_ROLE[part.role])
}
