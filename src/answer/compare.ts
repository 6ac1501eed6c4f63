/** `compare`: a set as found beside the set as proposed, what changes, and which moves do it. */
import type { Verdict } from '../checks/rule.ts'
import type { Figure } from '../figures/figure.ts'
import { refuse } from '../problem.ts'
import { describeMove } from '../rewire/describe-move.ts'
import type { SheetText, Shelf } from '../sheet/shelf.ts'
import type { CompareAnswer } from './answer.ts'
import { becauseOf, stateByCheck } from './because.ts'
import { countsOf, type Judged, judgeStanding, outcomeOf } from './check-answer.ts'
import { envelope } from './envelope.ts'
import { rewired, type Standing, stand, subjectOf, type Where } from './standing.ts'
import { standsOf } from './stands.ts'
import type { Tell } from './tell.ts'
import { whereAsked } from './where-asked.ts'

/** What is compared: a rewire against its set, or two subjects. */
export interface CompareRequest extends Omit<Where, 'target' | 'text'> {
  readonly found: string
  readonly foundText?: SheetText
  readonly proposed?: string
  readonly proposedText?: SheetText
}

/** Share by which a figure must differ to be called changed. */
const CHANGED = 1e-3

/** Compares two sides; judges the proposed one. */
export function compare(request: CompareRequest, shelf: Shelf, tell?: Tell): CompareAnswer {
  const [before, after] = sidesOf(request, shelf)
  const found = judgeStanding(before, undefined, tell)
  const proposed = judgeStanding(after, undefined, tell)
  const counts = countsOf(proposed)
  const checks = changedChecks(found.verdicts, proposed.verdicts)
  return {
    ...envelope('compare', { found: before.name, proposed: after.name, ...whereAsked(request) }, [
      ...before.warnings,
      ...after.warnings,
    ]),
    outcome: outcomeOf(counts),
    counts,
    stands: standsOf(after),
    moves: after.moves,
    found: sideOf(before.name, found),
    proposed: sideOf(after.name, proposed),
    changed: {
      checks,
      figures: changedFigures(found.figures, proposed.figures),
      because: becauseOf(checks, found.verdicts, proposed.verdicts, after, tell),
    },
  }
}

function sideOf(name: string, { verdicts, faults, figures }: Judged): CompareAnswer['found'] {
  return { name, verdicts, faults, figures }
}

function sidesOf(request: CompareRequest, shelf: Shelf): readonly [Standing, Standing] {
  const { on, onText, at, in: socket } = request
  const ground = {
    ...(on === undefined ? {} : { on }),
    ...(onText === undefined ? {} : { onText }),
    ...(at === undefined ? {} : { at }),
    ...(socket === undefined ? {} : { in: socket }),
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
    const before = stand(first, shelf)
    return [before, fromThere(before, stand(second, shelf))]
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

/** Moves are told where they lead from the one side to the other; between any other two sides none are known. */
function fromThere(before: Standing, after: Standing): Standing {
  const set = before.installation.sets[before.places[0] ?? '']?.set.name
  if (before.rewiring === undefined && after.rewiring?.from.name === set) return after
  const { rewiring: _, ...rest } = after
  return { ...rest, moves: [] }
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
