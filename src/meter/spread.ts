/** What parts within their tolerances do to a reading, figured twice. */
import { currentIn, type Solution, sizeOf } from '../solver/solution.ts'
import type { Band } from './accuracy.ts'
import type { Bench, Choice } from './bench.ts'
import type { Chosen } from './choose.ts'
import { choose } from './choose.ts'
import type { NamedRange } from './instrument.ts'
import type { Leads } from './leads.ts'
import type { Setting, Shown } from './show.ts'

/** A reading's spread by its parts alone, without the instrument. */
export interface Spread {
  /** Every value at the end that lowers the reading, and at the end that raises it. */
  readonly interval: Band
  /** The reading with the sum of what each value does alone. */
  readonly worst: Band
  /**
   * Whether the interval's ends are the true ones. With direct current and laws that do not bend they are: no
   * resistance between two points falls when any resistance in the network rises.
   * @source Rayleigh's monotonicity law; Doyle and Snell, Random Walks and Electric Networks (1984), 1.4; from memory
   */
  readonly exact: boolean
}

/** A current below this share of the instrument's makes no difference. */
const NOTHING = 1e-9

/**
 * The spread of a reading whose nominal value is a number.
 *
 * @param ranges those that may be turned to as the value moves: all of the instrument, or the one that was asked for
 */
export function spreadOf(
  bench: Bench,
  leads: Leads,
  ranges: readonly NamedRange[],
  setting: Setting,
  { range, shown }: Chosen,
): Spread {
  const nominal = Number(shown.value)
  const read = (choice: readonly Choice[]): number | null => {
    const { value } = choose(bench.at(choice), leads, ranges, setting).shown
    return typeof value === 'number' ? value : null
  }
  const felt = bench.loose.flatMap((_, k) => (matters(bench, k, shown) ? [k] : []))
  const moves = felt.map((k) => ({
    loose: k,
    least: read([{ loose: k, end: 'least' }]),
    most: read([{ loose: k, end: 'most' }]),
  }))
  const worst = summed(nominal, moves)
  const direct = range.method !== 'capacitance' && range.method !== 'alternating-volts'
  const exact = direct && !bends(bench, shown) && range.method !== 'volts'
  if (exact) return { interval: byRayleigh(bench, read), worst, exact }
  const raised = moves.map(({ loose, least, most }): Choice => {
    return { loose, end: (most ?? Infinity) >= (least ?? Infinity) ? 'most' : 'least' }
  })
  const lowered = raised.map(({ loose, end }): Choice => ({ loose, end: end === 'most' ? 'least' : 'most' }))
  const interval = bounded(read(lowered), read(raised), nominal)
  return { interval, worst, exact: felt.length === 0 }
}

/** All resistances low, all high; values of other units do nothing to direct current. */
function byRayleigh(bench: Bench, read: (choice: readonly Choice[]) => number | null): Band {
  const ohms = bench.loose.flatMap(({ unit }, k) => (unit === 'Ω' ? [k] : []))
  const corner = (end: Choice['end']): number | null => read(ohms.map((loose) => ({ loose, end })))
  return { least: corner('least') ?? 0, most: corner('most') }
}

function bounded(low: number | null, high: number | null, nominal: number): Band {
  return { least: Math.min(low ?? nominal, nominal), most: high === null ? null : Math.max(high, nominal) }
}

function summed(
  nominal: number,
  moves: readonly { readonly least: number | null; readonly most: number | null }[],
): Band {
  let down = 0
  let up: number | null = 0
  for (const { least, most } of moves) {
    const changes = [least, most].map((value) => (value === null ? null : value - nominal))
    down += Math.min(0, ...changes.filter((change) => change !== null))
    if (changes.includes(null)) up = null
    else if (up !== null) up += Math.max(0, ...changes.filter((change) => change !== null))
  }
  return { least: nominal + down, most: up === null ? null : nominal + up }
}

/** Whether a loose value's part carries any of the reading's current, in any of its branches. */
function matters(bench: Bench, loose: number, { solution, amps }: Shown): boolean {
  const part = bench.net.parts[bench.loose[loose]?.part ?? -1]
  if (part === undefined || solution === undefined) return false
  const branches = Array.from({ length: part.count }, (_, k) => part.first + k)
  const scale = Math.max(Math.abs(amps), largest(solution) * NOTHING)
  return branches.some((k) => sizeOf(currentIn(solution, k)) > NOTHING * scale)
}

/** Whether a part whose law bends carries any of the reading's current. */
function bends({ net, bent }: Bench, { solution, amps }: Shown): boolean {
  if (!bent) return false
  return (
    solution === undefined ||
    net.branches.some(
      ({ part, index }) =>
        part.law.bends?.(part.spec).includes('direct') === true &&
        sizeOf(currentIn(solution, index)) > NOTHING * Math.abs(amps),
    )
  )
}

function largest({ currents }: Solution): number {
  return currents.reduce((most, value) => Math.max(most, Math.abs(value)), 0)
}
