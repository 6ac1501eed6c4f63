/** `check`: all checks of all sets concerned, with their figures. */
import { CHECKS } from '../checks/catalogue.ts'
import type { CheckContext } from '../checks/context.ts'
import type { Verdict } from '../checks/rule.ts'
import { findFaults } from '../faults/find-faults.ts'
import type { NamedFault } from '../faults/named-fault.ts'
import type { Figure } from '../figures/figure.ts'
import { freshSupplier, readFigure } from '../figures/read.ts'
import { compile, type Installation } from '../netlist/compile.ts'
import { type Netlist, placeOf } from '../netlist/netlist.ts'
import { refuse } from '../problem.ts'
import type { Shelf } from '../sheet/shelf.ts'
import type { CheckAnswer, Counts, Outcome } from './answer.ts'
import { envelope } from './envelope.ts'
import { type EqualBells, equalBells } from './equal-bells.ts'
import { deliveredLimits } from './limits-table.ts'
import { lineFigures, setFigures } from './set-figures.ts'
import { type Standing, stand, type Where } from './standing.ts'
import { standsOf } from './stands.ts'
import type { Supply } from './supply.ts'
import { QUIET, type Tell } from './tell.ts'
import { whereAsked } from './where-asked.ts'

/** The places of a standing, ready for checks and figures. @throws ProblemError where no set stands */
export function contextsOf(standing: Standing, supply: Supply = freshSupplier): readonly CheckContext[] {
  if (standing.places.length === 0) {
    refuse({
      code: 'request-wrong',
      found: `${standing.name}, where no set stands`,
      expected: 'premises with sets, a set or a rewire',
      mend: 'name the set, and say where with `--on`',
    })
  }
  const one = contextMaker(standing.installation, standing.net, supply)
  return standing.places.map(one)
}

/** Contexts of one installation, which share what is solved; a trial has a netlist of its own. */
function contextMaker(
  installation: Installation,
  net: Netlist,
  supply: Supply,
): (place: string) => CheckContext {
  const supplier = supply(net)
  return (place) => ({
    net,
    place: placeOf(net, place),
    limits: deliveredLimits(),
    figure: (plan) => readFigure(net, plan, supplier),
    installation,
    trial: (other, elsewhere = place) => contextMaker(other, compile(other), supply)(elsewhere),
  })
}

/** What was judged: verdicts, the faults that they come to, and all figures. */
export interface Judged {
  readonly verdicts: readonly Verdict[]
  readonly faults: readonly NamedFault[]
  readonly figures: readonly Figure[]
  readonly 'equal bells'?: EqualBells
}

/** Verdicts of each place, of all checks or of those that are wanted; a check that is asked once stands with the first. */
export function verdictsOf(
  contexts: readonly CheckContext[],
  isWanted: (check: string) => boolean = () => true,
  tell: Tell = QUIET,
): readonly (readonly Verdict[])[] {
  return contexts.map((context, k) => {
    tell(`checking ${context.place.place}, ${k + 1} of ${contexts.length}`)
    const rules = CHECKS.filter(({ id, once }) => isWanted(id) && (once !== true || k === 0))
    return rules.flatMap((rule) => rule.run(context))
  })
}

/**
 * The verdicts of some checks alone, by their ids: quick where the faults by name and the figures are not wanted.
 * @throws ProblemError as `check` does
 */
export function verdictsAsked(
  request: Where,
  checks: readonly string[],
  shelf: Shelf,
  supply?: Supply,
): readonly Verdict[] {
  const contexts = contextsOf(stand(request, shelf), supply)
  return verdictsOf(contexts, (id) => checks.includes(id)).flat()
}

/** Runs every check on every place of a standing, and names the faults. */
export function judgeStanding(standing: Standing, supply?: Supply, tell: Tell = QUIET): Judged {
  const contexts = contextsOf(standing, supply)
  return judgedBy(standing, contexts, verdictsOf(contexts, undefined, tell), tell)
}

/** What the verdicts of each place come to: faults by name, and all figures. */
export function judgedBy(
  { spot }: Pick<Standing, 'spot'>,
  contexts: readonly CheckContext[],
  judged: readonly (readonly Verdict[])[],
  tell: Tell = QUIET,
): Judged {
  tell('looking for faults by name')
  const faults = findFaults(contexts, judged)
  // of one set among others there is nothing to say
  const equal = spot === undefined && contexts[0] ? equalBells(contexts[0]) : undefined
  return {
    verdicts: judged.flat(),
    faults,
    figures: contexts.flatMap((context, k) => {
      tell(`figures of ${context.place.place}`)
      return [...(k === 0 ? lineFigures(context) : []), ...setFigures(context)]
    }),
    ...(equal === undefined ? {} : { 'equal bells': equal }),
  }
}

/** How many verdicts there are of each state, and how many faults by name. */
export function countsOf({ verdicts, faults }: Pick<Judged, 'verdicts' | 'faults'>): Counts {
  const counts = { holds: 0, marginal: 0, fails: 0, unknown: 0, faults: faults.length }
  for (const { state } of verdicts) counts[state] += 1
  return counts
}

/** The worst that was found: a failure or a fault by name before a margin before what is not known. */
export function outcomeOf(counts: Counts): Outcome {
  if (counts.faults > 0) return 'fails'
  for (const state of ['fails', 'marginal', 'unknown'] as const) if (counts[state] > 0) return state
  return 'holds'
}

/** What is checked. */
export interface CheckRequest extends Where {
  /** The text in its long form, every verdict in full; data are complete all the same. */
  readonly whole?: boolean
}

/** Checks a set, a rewire or premises. */
export function check(request: CheckRequest, shelf: Shelf, supply?: Supply, tell?: Tell): CheckAnswer {
  const standing = stand(request, shelf)
  const judged = judgeStanding(standing, supply, tell)
  const counts = countsOf(judged)
  const asked = {
    check: standing.name,
    ...whereAsked(request),
    ...(request.whole === true ? { whole: true } : {}),
  }
  return {
    ...envelope('check', asked, standing.warnings),
    outcome: outcomeOf(counts),
    counts,
    stands: standsOf(standing),
    ...judged,
  }
}
