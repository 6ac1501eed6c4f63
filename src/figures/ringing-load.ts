/** The ringing load of a set by each published definition, and of several sets within one of them. */
import type { Condition } from '../netlist/condition.ts'
import type { Netlist, NetPlace } from '../netlist/netlist.ts'
import type { Complex } from '../parts/complex.ts'
import type { Changes } from '../solver/question.ts'
import type { FigurePlan, RingingLoadName, State } from './figure.ts'
import { LOAD_DEFINITIONS, type LoadDefinition } from './ringing-definitions.ts'
import { acrossPlug, hangsOnSize, type PlugSource, type PlugTaps } from './set-admittance.ts'
import { setCount } from './unit-ringer.ts'

/**
 * Ringing load of the set at a place, on-hook, the rest of the premises out of the way: the worst of the definition's
 * samples, or by counting sets where it says so. A set on three wires is measured as its definition sees it: `line`
 * puts the 1.8 µF of the socket into its ringing lead, since without it the set would draw direct current and no
 * laboratory could put it on the battery that those definitions ask for; a set on two wires has its own capacitor.
 * The ringing lead is tied to that contact of the pair to which the bell does not return, so that equal sets have equal
 * loads, one that is reversed at its own cord, inside or outside, among them. What such a set takes from others' current
 * is in the figures of the house, not here.
 * The battery itself is left out of the sum: on-hook nothing that passes it may be in the way.
 * @source the table of definitions, by its sources and grades
 */
export function ringingLoad(
  net: Netlist,
  place: NetPlace,
  name: RingingLoadName,
  condition: Condition,
  changes: Changes = {},
): FigurePlan {
  const definition = LOAD_DEFINITIONS[name]
  const runs = sourcesOf(net, place, definition).map((source) => ({
    source,
    across: acrossPlug(net, place, condition, source, changes),
  }))
  return {
    id: `ringing.load.${name}`,
    subject: place.place,
    condition,
    unit: '1',
    taps: runs.flatMap(({ across }) => across?.taps ?? []),
    mixed: true,
    value: (readings) => {
      const admittances = readRuns(runs, readings, definition)
      if (admittances === undefined) return 'open'
      const { samples } = definition
      if (samples === undefined) return setCount(admittances)
      return Math.max(...samples.map(({ ohms }, k) => ohms * size(admittances[k])))
    },
  }
}

/** The loads of several sets added, all by one definition; the sum of what is there. */
export function ringingLoadTotal(
  net: Netlist,
  places: readonly NetPlace[],
  name: RingingLoadName,
  condition: Condition,
  subject: string,
  changes: Changes = {},
): FigurePlan {
  const plans = places.map((place) => ringingLoad(net, place, name, condition, changes))
  return {
    id: `ringing.load.${name}`,
    subject,
    condition,
    unit: '1',
    taps: plans.flatMap(({ taps }) => taps),
    mixed: true,
    value: (readings) => {
      let sum = 0
      let at = 0
      for (const plan of plans) {
        const next = at + 2 * plan.taps.length
        const value: number | State = plan.value(readings.subarray(at, next))
        at = next
        // a set whose plug has no pair loads no line
        if (value === 'open') continue
        if (typeof value !== 'number') return value
        sum += value
      }
      return sum
    },
  }
}

interface Run {
  readonly source: PlugSource
  readonly across: PlugTaps | undefined
}

function readRuns(
  runs: readonly Run[],
  readings: Float64Array,
  { seen }: LoadDefinition,
): readonly Complex[] | undefined {
  const admittances: Complex[] = []
  let at = 0
  for (const { across } of runs) {
    if (across === undefined) return undefined
    const next = at + 2 * across.taps.length
    admittances.push(across.admittance(readings.subarray(at, next), seen))
    at = next
  }
  return admittances
}

/** The sources of a definition: one for each sample, or one for each number of sets where the set's law hangs on size. */
function sourcesOf(net: Netlist, place: NetPlace, definition: LoadDefinition): readonly PlugSource[] {
  const { samples, counting, volts } = definition
  if (samples !== undefined) return samples.map(({ frequency }) => ({ volts, behind: 0, frequency }))
  if (counting === undefined) return []
  const { frequency, source, most } = counting
  if (!hangsOnSize(net, place)) return [{ volts, behind: 0, frequency }]
  // n sets behind one source are each a set behind n times that source
  return Array.from({ length: most }, (_, k) => ({ volts, behind: (k + 1) * source, frequency }))
}

function size(one: Complex | undefined): number {
  return one === undefined ? 0 : Math.hypot(one.re, one.im)
}
