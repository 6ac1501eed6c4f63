/** How probable each known set is after what was found, and that it is none of them. */
import { likelihoodsOf } from '../inference/likelihood.ts'
import { hypothesesOf, type Observed } from './columns.ts'
import type { KnownSet } from './known.ts'
import type { SightingOdds } from './odds.ts'

/** Probabilities; all together 1. */
export interface Judged {
  /** That it is this known set, by its index. */
  readonly of: Float64Array
  /** That it is this set, changed in some places by somebody. */
  readonly changed: Float64Array
  /** That it is like none of them. */
  readonly foreign: number
  /** That it is in no sheet: changed, or like none. */
  readonly unknown: number
}

/** Share of changed sets of which nothing but straps was changed. from memory */
const IN_STRAPS = 0.5

/**
 * Bayes' rule over three sorts of hypotheses: a known set; a known set that somebody changed, in which each finding is
 * the known set's with some probability and anything else otherwise; a set like none. Without the second, ten readings
 * that agree would outweigh two that cannot be true of the set. What was changed where nothing was read or seen has not
 * shown: so far as its straps are unread, a changed set answers as the known one does, and no number of findings
 * elsewhere speaks against it.
 *
 * @param unread of each known set the share of its straps of which no finding tells, 0 to 1
 */
export function judge(
  known: readonly KnownSet[],
  observed: Observed,
  odds: SightingOdds,
  unread: (known: KnownSet) => number = () => 0,
): Judged {
  const { foreign, changed } = odds.unknown
  const { columns, observations } = observed
  const strict = hypothesesOf(known, columns, foreign.probability)
  const loose = hypothesesOf(known, columns, foreign.probability, (column) =>
    Math.max(column.observable.slip, column.differs),
  )
  const whole = 1 - foreign.probability - changed.probability
  const logs = Float64Array.from(known, ({ share }) => Math.log(share * whole))
  const logsChanged = Float64Array.from(known, ({ share }) => Math.log(share * changed.probability))
  let logForeign = Math.log(foreign.probability)
  for (const observation of observations) {
    const asKnown = likelihoodsOf(strict, observation)
    const asChanged = likelihoodsOf(loose, observation)
    known.forEach((_, k) => {
      logs[k] = (logs[k] ?? 0) + (asKnown.of[k] ?? 0)
      logsChanged[k] = (logsChanged[k] ?? 0) + (asChanged.of[k] ?? 0)
    })
    logForeign += asKnown.none
  }
  const hidden = known.map(unread)
  known.forEach((_, k) => {
    const share = IN_STRAPS * (hidden[k] ?? 0)
    const asKnown = (logs[k] ?? 0) - Math.log(whole) + Math.log(changed.probability)
    logsChanged[k] = logOfSum(Math.log(1 - share) + (logsChanged[k] ?? 0), Math.log(share) + asKnown)
  })
  const most = Math.max(logForeign, ...logs, ...logsChanged)
  const of = logs.map((log) => Math.exp(log - most))
  const other = logsChanged.map((log) => Math.exp(log - most))
  const left = Math.exp(logForeign - most)
  const total = sum(of) + sum(other) + left
  const changedNow = other.map((one) => one / total)
  const foreignNow = left / total
  return {
    of: of.map((one) => one / total),
    changed: changedNow,
    foreign: foreignNow,
    unknown: Math.min(1, sum(changedNow) + foreignNow),
  }
}

/** log(eᵃ + eᵇ), where either may be nothing. */
function logOfSum(a: number, b: number): number {
  const most = Math.max(a, b)
  return most === Number.NEGATIVE_INFINITY ? most : most + Math.log(Math.exp(a - most) + Math.exp(b - most))
}

function sum(values: Float64Array): number {
  return values.reduce((all, one) => all + one, 0)
}
