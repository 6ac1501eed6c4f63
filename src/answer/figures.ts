/** `figures`: what can be computed of a set in its place, without a judgement. */
import type { Figure } from '../figures/figure.ts'
import { refuse } from '../problem.ts'
import { nearest } from '../quantities/nearest.ts'
import type { Shelf } from '../sheet/shelf.ts'
import type { FiguresAnswer } from './answer.ts'
import { balancePlans } from './balance-plans.ts'
import { contextsOf } from './check-answer.ts'
import { envelope } from './envelope.ts'
import { FIGURE_MEANINGS } from './figure-meanings.ts'
import { lineFigures, setFigures } from './set-figures.ts'
import { speechCurves } from './speech-curves.ts'
import { stand, type Where } from './standing.ts'
import { standsOf } from './stands.ts'
import type { Supply } from './supply.ts'
import { QUIET, type Tell } from './tell.ts'
import { whereAsked } from './where-asked.ts'

/** Whose figures, and which: those whose id begins with `only`, such as `ringing` or `loop.current`. */
export interface FiguresRequest extends Where {
  readonly only?: string
}

/** The figures of every set concerned. */
export function figures(
  request: FiguresRequest,
  shelf: Shelf,
  supply?: Supply,
  tell: Tell = QUIET,
): FiguresAnswer {
  const { only } = request
  if (only !== undefined) refuseStrange(only)
  const standing = stand(request, shelf)
  const isWanted = (plan: Pick<Figure, 'id'>): boolean => only === undefined || isMeant(plan, only)
  const contexts = contextsOf(standing, supply)
  const all = contexts.flatMap((context, k) => {
    tell(`figures of ${context.place.place}, ${k + 1} of ${contexts.length}`)
    return [
      ...(k === 0 ? lineFigures(context, isWanted) : []),
      ...setFigures(context, isWanted, 'all'),
      ...[...speechCurves(context), ...balancePlans(context)]
        .filter(isWanted)
        .map((plan) => context.figure(plan)),
    ]
  })
  const asked = {
    figures: standing.name,
    ...(only === undefined ? {} : { only }),
    ...whereAsked(request),
  }
  return {
    ...envelope('figures', asked, standing.warnings),
    outcome: 'answered',
    stands: standsOf(standing),
    figures: once(all),
  }
}

/** Each figure once: the curves pass through the frequency of the single figures. */
function once(all: readonly Figure[]): readonly Figure[] {
  const seen = new Set<string>()
  return all.filter(({ id, subject, condition, frequency }) => {
    const key = JSON.stringify([id, subject, condition, frequency])
    return !seen.has(key) && seen.add(key) !== undefined
  })
}

/** `ringing` means `ringing.current`, not the beginning of another word. */
export function isMeant({ id }: Pick<Figure, 'id'>, only: string): boolean {
  return id === only || id.startsWith(`${only}.`)
}

/** Refuses what no figure is called. @throws ProblemError */
export function refuseStrange(only: string): void {
  const ids = Object.keys(FIGURE_MEANINGS) as Figure['id'][]
  if (ids.some((id) => isMeant({ id }, only))) return
  const known = [...new Set(ids.flatMap((id) => [id, id.slice(0, id.indexOf('.'))]))]
  const near = nearest(only, known)
  refuse({
    code: 'request-wrong',
    found: `the figure \`${only}\``,
    expected: 'the id of a figure, or its first word',
    mend: near === undefined ? '`ringproof list figures` shows the ids' : `perhaps \`${near}\``,
  })
}
