/** Parts that no reading tells: whatever becomes of them, the instrument shows the same at every pair of points. */
import type { Netlist, NetPart, NetPlace } from '../netlist/netlist.ts'
import { currentIn, sizeOf } from '../solver/solution.ts'
import type { Bench } from './bench.ts'
import type { Range } from './instrument.ts'
import type { Leads } from './leads.ts'
import type { MeterReading } from './reading.ts'
import { type Setting, type Shown, show } from './show.ts'
import { differs } from './table.ts'
import { valuesOf, withChanges } from './vary.ts'

/** By these a part's values are multiplied to see whether any reading notices. */
const CHANGES = [0.5, 1.5]
/** Units of the values that a direct or small alternating current may feel. */
const FELT: ReadonlySet<string> = new Set(['Ω', 'F', 'H', 'V'])
/** A current below this share of the instrument's makes no difference. */
const NOTHING = 1e-6

/** A reading with the leads that it was made with: the table's, or those of a cord off its terminals. */
export interface Held {
  readonly reading: MeterReading
  readonly lifted?: readonly number[]
}

interface Made {
  readonly leads: Leads
  readonly range: Range
  readonly reading: MeterReading
  readonly shown: Shown
}

/** Ids of the parts of a place whose values, half as large or half as large again, change nothing that is shown. */
export function untoldParts(
  { net, kit }: Bench,
  { place }: NetPlace,
  readings: readonly Held[],
): readonly string[] {
  const setting: Setting = { redLead: kit.instrument['red lead'] }
  const made = readings.flatMap((held): Made[] => {
    const range = kit.instrument.ranges[held.reading.range]
    if (range === undefined) return []
    const leads = leadsOf(net, held)
    return [{ leads, range, reading: held.reading, shown: show(net, leads, range, setting) }]
  })
  return net.parts.flatMap((part, index): string[] => {
    if (part.place !== place || part.role === 'link') return []
    const values = valuesOf(part, index).filter(({ unit }) => FELT.has(unit))
    if (values.length === 0) return []
    const concerned = made.filter((one) => carries(part, one.shown))
    const told = CHANGES.some((factor) => {
      if (concerned.length === 0) return false
      const changed = withChanges(
        net,
        values.map((loose) => ({ loose, factor })),
      )
      return concerned.some((one) =>
        differs(one.reading, { ...one.reading, ...again(changed, one, setting) }),
      )
    })
    return told ? [] : [part.id]
  })
}

function leadsOf({ nodeIndex }: Netlist, { reading, lifted }: Held): Leads {
  const node = (id: string): number => nodeIndex.get(id) ?? 0
  const { red, black, condition } = reading
  return { red: node(red), black: node(black), condition, ...(lifted === undefined ? {} : { lifted }) }
}

function again(
  net: Netlist,
  { leads, range, shown }: Made,
  setting: Setting,
): Pick<MeterReading, 'value' | 'state'> {
  const { value } = show(net, leads, range, setting)
  if (typeof value === 'number') return { value }
  // what a table calls open, its widest range may call beyond it
  return typeof shown.value === 'number' ? { value: null, state: value } : { value: null }
}

function carries(part: NetPart, { solution, amps }: Shown): boolean {
  if (solution === undefined) return false
  const branches = Array.from({ length: part.count }, (_, k) => part.first + k)
  return branches.some((k) => sizeOf(currentIn(solution, k)) > NOTHING * Math.abs(amps))
}
