/** Which failures may be mere consequences of a named fault, beyond those that it explains. */
import type { Verdict } from '../checks/rule.ts'
import type { NamedFault } from '../faults/named-fault.ts'
import type { Figure } from '../figures/figure.ts'
import { placeAbout, placesNamed } from './about-place.ts'

/** What a check is about: what spoils the loop spoils everything, all else its own kind alone. */
type Realm = 'loop' | 'ringing' | 'dial' | 'earth'

const REALMS: Readonly<Record<string, Realm>> = {
  'line.ringing-load': 'ringing',
  'wiring.ringing-lead-to-bell': 'ringing',
  'wiring.ringing-lead-alone': 'ringing',
  'wiring.bell-return': 'ringing',
  'wiring.one-ringing-capacitor': 'ringing',
  'wiring.quench-present': 'dial',
  'wiring.earth-free': 'earth',
  'wiring.touchable-free': 'earth',
  'wiring.spares-free': 'earth',
}

function realmOf(check: string): Realm {
  if (check.startsWith('bell.')) return 'ringing'
  if (check.startsWith('dial.')) return 'dial'
  return REALMS[check] ?? 'loop'
}

const EVERY: ReadonlySet<Realm> = new Set(['loop', 'ringing', 'dial', 'earth'])

/** What a figure that follows from a fault is about; undefined between two points, which may be about anything. */
function realmOfFigure({ id }: Figure): Realm | undefined {
  if (id.endsWith('.between')) return undefined
  if (id.startsWith('ringing.')) return 'ringing'
  if (id.startsWith('dial.')) return 'dial'
  return id === 'leakage.earth' ? 'earth' : 'loop'
}

/** What a fault spoils, by the checks that it explains here and the figures that follow from it. */
function spoiltBy({ explains, consequences }: NamedFault): ReadonlySet<Realm> {
  const figures = consequences.flatMap(({ figure }) => realmOfFigure(figure) ?? [])
  const realms = new Set([...explains.map(realmOf), ...figures])
  return realms.has('loop') ? EVERY : realms
}

/** The places that a fault names, in its subject, its path and the figures that follow. */
export function reachOf(fault: NamedFault, places: readonly string[]): readonly string[] {
  const figures = fault.consequences.map(({ figure }) => figure.subject)
  return placesNamed([fault.subject, ...fault.path, ...figures], places)
}

/** Whether a failure may go away with the mend of a fault: one of its kind, on the line, or where the fault reaches. */
export function mayFollow(
  verdict: Verdict,
  faults: readonly NamedFault[],
  places: readonly string[],
): boolean {
  const realm = realmOf(verdict.check)
  const mine = placeAbout(verdict, places)
  const others = placesNamed(
    (verdict.consequences ?? []).map(({ figure }) => figure.subject),
    places,
  )
  return faults.some((fault) => {
    if (!spoiltBy(fault).has(realm)) return false
    // what is about the line hears of every set, and all bells share what one line gives
    if (mine === undefined || realm === 'ringing') return true
    const reach = reachOf(fault, places)
    return reach.length === 0 || [mine, ...others].some((place) => reach.includes(place))
  })
}
