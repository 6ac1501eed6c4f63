/** `check` and `compare`: all checks of all sets concerned, with their figures. */
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
import { describeMove } from '../rewire/describe-move.ts'
import type { SheetText, Shelf } from '../sheet/shelf.ts'
import type { CheckAnswer, CompareAnswer, Counts, Outcome } from './answer.ts'
import { envelope } from './envelope.ts'
import { deliveredLimits } from './limits-table.ts'
import { setFigures } from './set-figures.ts'
import { rewired, type Standing, stand, subjectOf, type Where } from './standing.ts'
import type { Supply } from './supply.ts'

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
}

/** Runs every check on every place of a standing, and names the faults. */
export function judgeStanding(standing: Standing, supply?: Supply): Judged {
  const contexts = contextsOf(standing, supply)
  const judged = contexts.map((context, k) =>
    CHECKS.flatMap((rule) => (rule.once === true && k > 0 ? [] : rule.run(context))),
  )
  return {
    verdicts: judged.flat(),
    faults: findFaults(contexts, judged),
    figures: contexts.flatMap((context) => setFigures(context)),
  }
}

/** How many verdicts there are of each state. */
export function countsOf(verdicts: readonly Verdict[]): Counts {
  const counts = { holds: 0, marginal: 0, fails: 0, unknown: 0 }
  for (const { state } of verdicts) counts[state] += 1
  return counts
}

/** The worst that was found: a failure before a margin before what is not known. */
export function outcomeOf(counts: Counts): Outcome {
  for (const state of ['fails', 'marginal', 'unknown'] as const) if (counts[state] > 0) return state
  return 'holds'
}

/** Checks a set, a rewire or premises. */
export function check(request: Where, shelf: Shelf, supply?: Supply): CheckAnswer {
  const standing = stand(request, shelf)
  const judged = judgeStanding(standing, supply)
  const counts = countsOf(judged.verdicts)
  return {
    ...envelope('check', asked({ check: standing.name }, request), standing.warnings),
    outcome: outcomeOf(counts),
    counts,
    ...judged,
  }
}

/** What is compared: a rewire against its set, or two subjects. */
export interface CompareRequest {
  readonly found: string
  readonly foundText?: SheetText
  readonly proposed?: string
  readonly proposedText?: SheetText
  readonly on?: string
  readonly onText?: SheetText
}

/** Share by which a figure must differ to be called changed. */
const CHANGED = 1e-3

/** Compares two sides; judges the proposed one. */
export function compare(request: CompareRequest, shelf: Shelf): CompareAnswer {
  const [before, after] = sidesOf(request, shelf)
  const found = judgeStanding(before)
  const proposed = judgeStanding(after)
  const counts = countsOf(proposed.verdicts)
  return {
    ...envelope('compare', asked({ found: before.name, proposed: after.name }, request), [
      ...before.warnings,
      ...after.warnings,
    ]),
    outcome: outcomeOf(counts),
    counts,
    moves: after.moves,
    found: { name: before.name, ...found },
    proposed: { name: after.name, ...proposed },
    changed: {
      checks: changedChecks(found.verdicts, proposed.verdicts),
      figures: changedFigures(found.figures, proposed.figures),
    },
  }
}

function asked(
  names: Record<string, string>,
  { on, onText }: { on?: string; onText?: SheetText },
): Record<string, string> {
  const where = onText?.file ?? on
  return { ...names, ...(where === undefined ? {} : { on: where }) }
}

function sidesOf(request: CompareRequest, shelf: Shelf): readonly [Standing, Standing] {
  const ground = {
    ...(request.on === undefined ? {} : { on: request.on }),
    ...(request.onText === undefined ? {} : { onText: request.onText }),
  }
  const first: Where = {
    target: request.found,
    ...ground,
    ...(request.foundText ? { text: request.foundText } : {}),
  }
  if (request.proposed !== undefined || request.proposedText !== undefined) {
    const second: Where = {
      target: request.proposed ?? '',
      ...ground,
      ...(request.proposedText ? { text: request.proposedText } : {}),
    }
    return [stand(first, shelf), stand(second, shelf)]
  }
  const { sheet } = subjectOf(first, shelf)
  if (sheet.sheet !== 'rewire') {
    refuse({
      code: 'request-wrong',
      found: `one side, the ${sheet.sheet} ${sheet.name}`,
      expected: 'a rewire, or two sides',
      mend: `name what ${sheet.name} is to be compared with`,
    })
  }
  const { set, moves } = rewired(sheet, shelf)
  const text = shelf.find('set', set.name, sheet.file)
  const asFound = stand(
    { target: `set/${set.name}`, ...ground, ...(text === undefined ? {} : { text }) },
    shelf,
  )
  return [asFound, { ...stand(first, shelf), moves: moves.map(describeMove) }]
}

function stateByCheck(verdicts: readonly Verdict[]): ReadonlyMap<string, string> {
  const states = new Map<string, string>()
  for (const { check: id, state } of verdicts)
    states.set(id, states.has(id) ? `${states.get(id)},${state}` : state)
  return states
}

function changedChecks(before: readonly Verdict[], after: readonly Verdict[]): readonly string[] {
  const old = stateByCheck(before)
  const now = stateByCheck(after)
  return [...new Set([...old.keys(), ...now.keys()])].filter((id) => old.get(id) !== now.get(id))
}

function changedFigures(before: readonly Figure[], after: readonly Figure[]): readonly string[] {
  const ids = [...new Set([...before, ...after].map((figure) => figure.id))]
  return ids.filter((id) => {
    const p = before.filter((figure) => figure.id === id)
    const q = after.filter((figure) => figure.id === id)
    return p.length !== q.length || p.some((figure, k) => differs(figure, q[k]))
  })
}

function differs(p: Figure, q: Figure | undefined): boolean {
  if (q === undefined || p.state !== q.state) return true
  if (p.value === null || q.value === null) return p.value !== q.value
  const size = Math.max(Math.abs(p.value), Math.abs(q.value))
  // below a nanoampere, a nanovolt or a nano-ohm nothing but rounding differs
  return size > 1e-9 && Math.abs(p.value - q.value) > CHANGED * size
}
