/** What a bell resistor does to bells that are equal: put into all of them, and into one alone. */
import { type CheckContext, ringingFrequency, when } from '../checks/context.ts'
import { BELL_RESISTOR } from '../checks/mends.ts'
import { ringingCurrent } from '../figures/ringing.ts'
import { soundersOf } from '../figures/ringing-share.ts'
import type { Branch } from '../netlist/netlist.ts'

/** Bells that get the same, and what of that a resistor changes; A rms. */
export interface EqualBells {
  readonly bells: number
  /** The least and the most that one gets. */
  readonly least: number
  readonly most: number
  /** Ohms that were put in series, to see. */
  readonly resistor: number
  /** What each gets with such a resistor more in all of them. */
  readonly 'in all': number
  /** With one in the first bell alone: what that one gets, and what each of the others gets. */
  readonly 'in one': { readonly itself: number; readonly others: number }
}

/** Bells of which none gets this share less than another are equal. */
const EQUAL = 0.05

/** Bells that get less than this share nothing worth a word, A. */
const SILENT = 1e-4

const RESISTOR = BELL_RESISTOR.value

/**
 * Puts resistors in series with bells that get the same, all plugged in; nothing where there is one bell, where they
 * are unequal, or where the line cannot ring.
 */
export function equalBells(context: CheckContext): EqualBells | undefined {
  const { net } = context
  const { line } = net
  if (line?.ringingFrequency === undefined) return undefined
  const bells = soundersOf(net)
  const [first] = bells
  if (first === undefined || bells.length < 2) return undefined
  const ringing = when(context, 'on-hook/ringing')
  const current = (bell: Branch, within: readonly Branch[]): number => {
    const changes =
      within.length === 0 ? {} : { within: within.map(({ index }) => ({ branch: index, ohms: RESISTOR })) }
    const plan = ringingCurrent(bell, ringing, ringingFrequency(context), line.ringingHarmonics, changes)
    return context.figure(plan).value ?? 0
  }
  const now = bells.map((bell) => current(bell, []))
  const [least, most] = [Math.min(...now), Math.max(...now)]
  if (least < SILENT || most - least > EQUAL * most) return undefined
  return {
    bells: bells.length,
    least,
    most,
    resistor: RESISTOR,
    'in all': current(first, bells),
    'in one': { itself: current(first, [first]), others: current(bells[1] ?? first, [first]) },
  }
}
