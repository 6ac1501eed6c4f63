/** `spread`: every figure and every verdict under tolerance and age. */
import { CHECKS } from '../checks/catalogue.ts'
import type { CheckContext, Rule } from '../checks/context.ts'
import type { Verdict } from '../checks/rule.ts'
import type { FigurePlan } from '../figures/figure.ts'
import { type Netlist, placeOf } from '../netlist/netlist.ts'
import { refuse } from '../problem.ts'
import type { Shelf } from '../sheet/shelf.ts'
import { agedParts } from '../spread/aged.ts'
import { isSmall } from '../spread/drawn-set.ts'
import { DRAW_LAWS, type DrawLaw } from '../spread/draws.ts'
import { contextsIn, type Judged, judgedIn } from '../spread/judged.ts'
import { Spots } from '../spread/sensitivity.ts'
import { type Drawing, drawAll, spreadOf, study } from '../spread/study.ts'
import { Followed } from '../spread/verdicts.ts'
import { type World, worldOf } from '../spread/world.ts'
import { balancePlans } from './balance-plans.ts'
import { contextsOf } from './check-answer.ts'
import { envelope } from './envelope.ts'
import { isMeant, refuseStrange } from './figures.ts'
import { kitOf } from './instruments-table.ts'
import { plansOf } from './set-figures.ts'
import { speechCurves } from './speech-curves.ts'
import { deliveredAgeing } from './spread-ageing.ts'
import type { SpreadAnswer } from './spread-answer.ts'
import { type Standing, stand, type Where } from './standing.ts'
import { standsOf } from './stands.ts'
import { QUIET, type Tell } from './tell.ts'
import { whereAsked } from './where-asked.ts'

/** Whose spread, of which figures, and how it is drawn. */
export interface SpreadRequest extends Where {
  /** Only figures whose id begins so, and the verdicts that rest on them. */
  readonly only?: string
  /** Sets to draw, 1 to 100,000; when absent 1,000, or 200 of premises with more than two sets. */
  readonly draws?: number
  /** A whole number; 1 when absent. */
  readonly seed?: number
  /** How values lie within their limits; `normal`, 3σ at the limits, when absent. */
  readonly law?: DrawLaw
  /** Years since the sets left the works, 0 to 150; as new when absent. */
  readonly age?: number
}

const USUAL_DRAWS = 1000
/** Where many sets stand, one draw costs as much as many of one set. */
const FEW_DRAWS = 200
const MOST_DRAWS = 100_000
const MOST_SEED = 2 ** 32 - 1
const MOST_YEARS = 150

/** Figures and verdicts with every value somewhere within its limits. @throws ProblemError for a request that is none */
export function spread(request: SpreadRequest, shelf: Shelf, tell: Tell = QUIET): SpreadAnswer {
  const { only, age = 0 } = request
  drawingOf(request, USUAL_DRAWS)
  within(age, 'the age of', 0, MOST_YEARS, 'years')
  if (only !== undefined) refuseStrange(only)
  const standing = stand(request, shelf)
  const drawing = drawingOf(request, isSmall(standing.net) ? USUAL_DRAWS : FEW_DRAWS)
  const stated = contextsOf(standing)
  const aged = age === 0 ? undefined : agedParts(standing.net, deliveredAgeing(), age)
  const world = worldOf({
    net: standing.net,
    installation: standing.installation,
    transmitterSpread: kitOf(undefined, undefined).habits['transmitter-spread'].value,
    ...(aged === undefined ? {} : { aged }),
  })
  const contexts = contextsIn(stated, world.net)
  const own = figuresWanted(contexts, only)
  tell('asking the checks')
  const heard = judgedIn(contexts, CHECKS as readonly Rule[])
  const isWanted = ({ figure }: Verdict): boolean =>
    only === undefined || (figure !== null && isMeant(figure, only))
  const judged = heard.followed.filter(({ verdict }) => isWanted(verdict))
  const { all, at } = withVerdicts(own, judged, world.net)
  const spots = new Spots(world, all)
  const studied = study(spots, (k, of) => tell(`worst case of figure ${k + 1} of ${of}`))
  const followed = judged.map((one, j) => {
    tell(`verdict ${j + 1} of ${judged.length}`)
    return new Followed(spots, one, studied[at[j] ?? 0] ?? { figure: one.verdict.figure })
  })
  const count = own(world.net).length
  const isRead = (k: number): boolean =>
    k < count || followed.some((one, j) => at[j] === k && one.hangsOnDraws)
  const drawn = drawAll(world, all, drawing, isRead, (n, net, supplier) => {
    if (n % 10 === 0) tell(`set ${n + 1} of ${drawing.draws} drawn`)
    for (const one of followed) one.drawn(n, net, supplier)
  })
  const amountsOf = (k: number): Float64Array => drawn.amounts[k] ?? new Float64Array(0)
  return {
    ...envelope('spread', asked(standing, request, drawing), standing.warnings),
    outcome: 'answered',
    stands: standsOf(standing),
    ...(aged === undefined ? {} : { aged: { years: age, changes: aged.rows } }),
    values: valuesOf(world),
    'without tolerance': world.unstated,
    figures: studied.slice(0, count).map((one, k) => spreadOf(world, one, amountsOf(k), drawn)),
    verdicts: followed.map((one, j) => one.spread(amountsOf(at[j] ?? 0), drawn)),
    'not followed': heard.left.filter(isWanted).map(notFollowed),
  }
}

function notFollowed(verdict: Verdict): SpreadAnswer['not followed'][number] {
  const { check, subject, state } = verdict
  return { check, subject, state, ...(verdict.state === 'unknown' ? { reason: verdict.reason } : {}) }
}

function drawingOf({ draws, seed = 1, law = 'normal' }: SpreadRequest, usual: number): Drawing {
  return checkedDrawing({ draws: draws ?? usual, seed, law })
}

/** @throws ProblemError for numbers and laws out of reach */
function checkedDrawing({ draws, seed, law }: Drawing): Drawing {
  whole(draws, 'draws', 1, MOST_DRAWS)
  whole(seed, 'seed', 0, MOST_SEED)
  if (!DRAW_LAWS.includes(law)) {
    refuse({
      code: 'request-wrong',
      found: `the law \`${String(law)}\``,
      expected: DRAW_LAWS.map((one) => `\`${one}\``).join(' or '),
      mend: 'write `--law uniform`, or leave it out',
    })
  }
  return { draws, seed, law }
}

function whole(value: number, what: string, least: number, most: number): void {
  if (Number.isInteger(value) && value >= least && value <= most) return
  refuse({
    code: 'request-wrong',
    found: `${what} ${value}`,
    expected: `a whole number from ${least} to ${most}`,
    mend: `write \`--${what} ${Math.max(least, 1)}\`, or leave it out`,
  })
}

function within(value: number, what: string, least: number, most: number, unit: string): void {
  if (Number.isFinite(value) && value >= least && value <= most) return
  refuse({
    code: 'request-wrong',
    found: `${what} ${value} ${unit}`,
    expected: `${least} to ${most} ${unit}`,
    mend: 'write `--age 50`, or leave it out',
  })
}

type PlansIn = (net: Netlist) => readonly FigurePlan[]

/** The figures that are shown, as plans of any netlist of the world. */
function figuresWanted(contexts: readonly CheckContext[], only: string | undefined): PlansIn {
  return (net) => {
    const plans = contexts.flatMap((one, k) => {
      const context = { ...one, net, place: placeOf(net, one.place.place) }
      if (only === undefined) return plansOf(context, k === 0, 'checked')
      const all = [...plansOf(context, k === 0, 'all'), ...speechCurves(context), ...balancePlans(context)]
      return all.filter((plan) => isMeant(plan, only))
    })
    const seen = new Set<string>()
    return plans.filter((plan) => {
      const key = planKey(plan)
      return !seen.has(key) && seen.add(key) !== undefined
    })
  }
}

/** The figures and, behind them, those of verdicts that are not among them; and where each verdict's figure is. */
function withVerdicts(
  own: PlansIn,
  judged: readonly Judged[],
  net: Netlist,
): { readonly all: PlansIn; readonly at: readonly number[] } {
  const stated = own(net)
  const known = new Map(stated.map((plan, k) => [planKey(plan), k]))
  const more: FigurePlan[] = []
  const count = known.size
  const at = judged.map(({ plan }) => {
    const key = planKey(plan)
    const before = known.get(key)
    if (before !== undefined) return before
    more.push(plan)
    known.set(key, count + more.length - 1)
    return count + more.length - 1
  })
  const all = [...stated, ...more]
  // plans may hang on the sheet of the line, which is another where one of its values is
  return { all: (other) => (other.line === net.line ? all : [...own(other), ...more]), at }
}

function planKey({ id, subject, condition, taps }: FigurePlan): string {
  return JSON.stringify([id, subject, condition, taps])
}

function asked(standing: Standing, request: SpreadRequest, { draws, seed, law }: Drawing) {
  const { only, age } = request
  return {
    spread: standing.name,
    ...(only === undefined ? {} : { only }),
    ...whereAsked(request),
    draws,
    seed,
    law,
    ...(age === undefined ? {} : { age }),
  }
}

function valuesOf({ loose }: World): SpreadAnswer['values'] {
  return loose.map(({ id, part, value, unit, least, most }) => ({
    id,
    part,
    value,
    least: Math.min(value * least, value * most),
    most: Math.max(value * least, value * most),
    unit,
  }))
}
