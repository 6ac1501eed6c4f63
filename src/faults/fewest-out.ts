/** Which sets must go from a line so that the bells that stay ring, and on how many lines like it all of them would. */
import type { CheckContext } from '../checks/context.ts'
import { loadsOnLine } from '../checks/line/ringing-load.ts'
import { BELL_RESISTOR, largestFirst } from '../checks/mends.ts'
import { formatQuantity } from '../quantities/format.ts'
import { leastShare, type Ringing, withoutPlaces } from './bells-together.ts'

/** A bell that gets less than this beyond its need rings just, and not for long. */
export const JUST = 1.05

/** The places to unplug, as few as found, so that the other bells ring; undefined where none could stay. */
export function fewestOut(context: CheckContext, able: readonly Ringing[]): readonly string[] | undefined {
  const places = [...new Set(able.map(({ place }) => place))]
  const rest = (out: readonly string[]): readonly Ringing[] => withoutPlaces(context, able, out)
  let out: readonly string[] = []
  for (let left = rest(out); leastShare(left) < 1; left = rest(out)) {
    const candidates = candidatesOf(left).map((place) => [...out, place])
    const [best] = candidates.sort((p, q) => leastShare(rest(q)) - leastShare(rest(p)))
    if (best === undefined || best.length >= places.length) return undefined
    out = best
  }
  // one that went early may come back
  return out.filter((place, _, gone) => leastShare(rest(gone.filter((one) => one !== place))) < 1)
}

/** Whom to unplug next: who takes the most, or who is worst off. */
function candidatesOf(left: readonly Ringing[]): readonly string[] {
  const [most] = largestFirst(left, ({ figure }) => figure.value ?? 0)
  const [worst] = largestFirst(left, ({ share }) => -share)
  return [...new Set([most?.place, worst?.place].filter((one) => one !== undefined))]
}

/** Sets by the line on which they go: on each the bells ring and the ringing load is within its limit, as solving finds. */
export interface Spread {
  readonly lines: readonly (readonly string[])[]
  /** Places that are too much for a line even by themselves. */
  readonly tooMuch: readonly string[]
  /** Whether a bell resistor in each of those is enough. */
  readonly resistorsDo: boolean
}

/** Spreads all sets over lines like this one, each put on the first on which it fits; the heaviest first if that needs fewer. */
export function spreadOverLines(context: CheckContext, able: readonly Ringing[]): Spread {
  const { most, loads } = loadsOnLine(context)
  const every = context.net.places.map(({ place }) => place)
  const fits = (places: readonly string[]): boolean => {
    const load = places.reduce((sum, place) => sum + (loads.get(place) ?? 0), 0)
    if (load > most) return false
    const others = every.filter((one) => !places.includes(one))
    return leastShare(withoutPlaces(context, able, others)) >= JUST
  }
  const inOrder = firstFit(every, fits)
  const byLoad = firstFit(
    largestFirst(every, (place) => loads.get(place) ?? 0),
    fits,
  )
  const lines = byLoad.length < inOrder.length ? byLoad : inOrder
  const tooMuch = lines.filter((one) => one.length === 1 && !fits(one)).flat()
  const bells = able.filter(({ place }) => tooMuch.includes(place))
  const within = bells.map(({ bell }) => ({ branch: bell.index, ohms: BELL_RESISTOR.value }))
  const eased = loadsOnLine(context, { within }).loads
  return { lines, tooMuch, resistorsDo: tooMuch.every((place) => (eased.get(place) ?? 0) <= most) }
}

function firstFit(
  places: readonly string[],
  fits: (places: readonly string[]) => boolean,
): readonly (readonly string[])[] {
  const lines: string[][] = []
  for (const place of places) {
    const free = lines.find((line) => fits([...line, place]))
    if (free === undefined) lines.push([place])
    else free.push(place)
  }
  return lines
}

/** What bells get, as a range: `2.38 mA to 2.39 mA`. */
export function rangeOf(bells: readonly Ringing[]): string {
  const values = bells.map(({ figure }) => figure.value ?? 0)
  const [least, most] = [Math.min(...values), Math.max(...values)].map((one) => formatQuantity(one, 'A', 3))
  return least === most ? `${least}` : `${least} to ${most}`
}

/** `; attic just, 3.10 mA where 3 mA are needed`, of the bells that ring with next to nothing to spare. */
export function justWords(bells: readonly Ringing[]): string {
  const just = bells.filter(({ share }) => share >= 1 && share < JUST)
  const [first] = largestFirst(just, ({ share }) => -share)
  if (first === undefined) return ''
  const all = just.length === bells.length
  const who = all ? 'all of them' : [...new Set(just.map(({ place }) => place))].join(', ')
  const need = formatQuantity(first.least, 'A', 3)
  return `, ${who} just (${rangeOf([first])} where ${need} is needed)`
}
