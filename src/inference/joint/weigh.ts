/** Observations that share loose values are weighed together, hypothesis by hypothesis. */
import type { Hypotheses, Loose, Observation } from '../hypotheses.ts'
import { likelihoodsOf } from '../likelihood.ts'
import { expectedOf, ownSigma } from '../scale.ts'
import { valueAt } from '../value-at.ts'
import { type Fit, fitOf, type Seen } from './fit.ts'
import { reachOf, roomFor } from './linear.ts'
import { type Site, siteOf } from './sites.ts'

/** A hypothesis that is less probable by such a factor, e to this, when all spread by themselves is not looked at again. */
const HOPELESS = 30
/** At most so many are looked at, the most probable ones. */
const MOST = 1500

/**
 * Puts right what is believed when every observation is taken to spread by itself.
 *
 * @param logs logarithms of prior times likelihoods, each observation by itself; put right in place
 * @returns the fit of each hypothesis that was looked at and has a loose value that shows in the evidence
 */
export function weighJointly(
  among: Hypotheses,
  evidence: readonly Observation[],
  logs: Float64Array,
  none: number,
): (Fit | undefined)[] {
  const { loose } = among
  if (loose === undefined) return []
  const sites = evidence.flatMap((observation) => {
    const site = siteOf(among, observation)
    return site === undefined ? [] : [{ site, alone: likelihoodsOf(among, observation).of }]
  })
  // in an order of their own, so that not even roundings hang on who spoke first
  sites.sort((a, b) => a.site.observable - b.site.observable)
  if (sites.length === 0) return []
  const fits: (Fit | undefined)[] = []
  const room = roomFor(loose)
  for (const k of hopeful(logs, none)) {
    const seen: Seen[] = []
    let alone = 0
    for (const { site, alone: likelihoods } of sites) {
      const one = seenBy(among, loose, k, site, room)
      if (one === undefined) continue
      seen.push(one)
      alone += valueAt(likelihoods, k)
    }
    if (seen.length === 0) continue
    const fit = fitOf(loose, seen)
    fits[k] = fit
    logs[k] = valueAt(logs, k) - alone + fit.log
  }
  return fits
}

/** Hypotheses that may yet turn out probable. */
function hopeful(logs: Float64Array, none: number): number[] {
  let most = none
  for (const log of logs) most = Math.max(most, log)
  const all = [...logs.keys()].filter((k) => valueAt(logs, k) >= most - HOPELESS)
  return all.length <= MOST
    ? all
    : all.sort((a, b) => valueAt(logs, b) - valueAt(logs, a) || a - b).slice(0, MOST)
}

function seenBy(
  among: Hypotheses,
  loose: Loose,
  k: number,
  site: Site,
  room: Float64Array,
): Seen | undefined {
  const { says, u } = expectedOf(among, k, site.observable)
  if (says !== 'number') return undefined
  loose.steps(k, site.observable, room)
  const reach = reachOf(loose, room)
  const own = ownSigma(site.seen, valueAt(among.expected, k * among.observables.length + site.observable))
  if (reach === 0 || site.isPlain(u, Math.hypot(reach, 6 * own))) return undefined
  return { site, u, error: own * own, steps: room.slice() }
}
