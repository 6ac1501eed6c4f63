/** What flows in a set on the bench in one condition, and the figures of that condition. */
import type { CheckContext } from '../../checks/context.ts'
import type { Figure } from '../../figures/figure.ts'
import { type Condition, shareOf } from '../../netlist/condition.ts'
import type { CircuitShown } from '../../picture/circuit/shown.ts'
import { circuitShown } from '../now.ts'
import { plansOf } from '../set-figures.ts'

/** What is looked at. */
export interface NowAsked {
  /** As it is written: `off-hook/make`. */
  readonly condition: string
  /** Hz; direct current, or the ringing while the line rings, when absent. */
  readonly frequency?: number
  /** The pair turned over where the set is plugged in, against how it stands there. */
  readonly reversed?: boolean
}

/** Solves it once, for the circuit; figures are read off solutions of their own. */
export function nowOf(
  upright: CheckContext,
  { condition, frequency, reversed = false }: NowAsked,
): { readonly shown: CircuitShown; readonly figures: readonly Figure[] } {
  const context = reversed ? turned(upright) : upright
  const { net, place } = context
  const shown = circuitShown(net, place.place, condition, frequency)
  const asked = stateOf(shown.condition, place.place)
  return {
    shown,
    figures: plansOf(context, true, 'checked')
      .filter((plan) => stateOf(plan.condition, place.place) === asked)
      .map((plan) => context.figure(plan)),
  }
}

/** The same set with the pair the other way round. */
function turned({ installation, place, trial }: CheckContext): CheckContext {
  const standing = installation.sets[place.place]
  if (standing === undefined) throw new RangeError(`no set stands at ${place.place}`)
  const sets = {
    ...installation.sets,
    [place.place]: { ...standing, reversed: !(standing.reversed ?? false) },
  }
  return trial({ ...installation, sets })
}

function stateOf(condition: Condition, place: string): string {
  const { hook, dial, key, line } = shareOf(condition, place)
  return [hook, dial, key, line].join('/')
}
