/** Whether a bell resistor at the hungry bell is enough, and what is needed where it is not; tried by solving. */
import type { CheckContext } from '../checks/context.ts'
import { BELL_RESISTOR, linksOfPlaces, namesOf } from '../checks/mends.ts'
import { bellsTogether, leastShare, type Ringing, sameBells, withoutPlaces } from './bells-together.ts'
import { fewestOut, justWords, rangeOf } from './fewest-out.ts'

/** Bells that share a capacitor, with a resistor tried at one of them. */
export interface Sharing {
  readonly context: CheckContext
  /** All bells that can ring, as they are. */
  readonly able: readonly Ringing[]
  /** The one that is to get a resistor. */
  readonly one: Ringing
  /** Others that lack one as well. */
  readonly rivals: readonly Ringing[]
  /** The bells with the resistor fitted at the one. */
  readonly after: readonly Ringing[]
  /** How it is fitted, in words. */
  readonly fit: string
}

/** A mend, and what each bell then gets. */
export interface Enough {
  readonly mend: string
  readonly gets: readonly Ringing[]
}

/** The resistor where it is enough; with those of others; else the fewest sets that must go, with or without it. */
export function enoughOrMore(sharing: Sharing): Enough {
  const { context, able, one, rivals, after, fit } = sharing
  if (leastShare(after) >= 1) return { mend: `${fit}; all then ring${justWords(after)}`, gets: after }
  const all = [one, ...rivals]
  const within = all.map(({ bell }) => ({ branch: bell.index, ohms: BELL_RESISTOR.value }))
  const together = rivals.length === 0 ? after : sameBells(context, able, { within })
  const short = `by itself that is not enough: ${shortWords(after)}`
  const whose = rivals.map(({ place }) => place).join(', ')
  if (rivals.length > 0 && leastShare(together) >= 1)
    return { mend: `${fit}; ${short}; with one in ${whose} too all ring${justWords(together)}`, gets: after }
  const bare = fewestOut(context, able)
  const behind = fewestWith(context, able, within)
  if (bare !== undefined && (behind === undefined || bare.length <= behind.length)) {
    const rest = withoutPlaces(context, able, bare)
    return {
      mend: `${moveWords(bare)}: ${restWords(rest)}; a bell resistor of ${BELL_RESISTOR.text} in ${one.place} is not enough: ${shortWords(after)}`,
      gets: [...rest, ...aloneOf(context, bare)],
    }
  }
  if (behind === undefined)
    return { mend: `${fit}; ${short}; this line rings too weakly for them`, gets: after }
  const rest = sameBells(
    context,
    able.filter(({ place }) => !behind.includes(place)),
    { within, lifted: linksOfPlaces(context, behind) },
  )
  const besides = rivals.length === 0 ? '' : `one in ${whose} too, and `
  return {
    mend: `${fit}; ${short}; what is needed besides: ${besides}${moveWords(behind)}: ${restWords(rest)}`,
    gets: rest,
  }
}

/** The fewest sets to go with resistors fitted. */
function fewestWith(
  context: CheckContext,
  able: readonly Ringing[],
  within: readonly { readonly branch: number; readonly ohms: number }[],
): readonly string[] | undefined {
  const fitted: CheckContext = {
    ...context,
    figure: (plan) =>
      context.figure({
        ...plan,
        taps: plan.taps.map((tap) => ({ ...tap, question: { ...tap.question, within } })),
      }),
  }
  return fewestOut(fitted, sameBells(fitted, able, {}))
}

/** What bells get whose sets are each alone on a line like this one. */
function aloneOf(context: CheckContext, places: readonly string[]): readonly Ringing[] {
  return places.flatMap((place) => {
    const others = context.net.places.map((one) => one.place).filter((one) => one !== place)
    return bellsTogether(context, { lifted: linksOfPlaces(context, others) }).filter(
      (one) => one.place === place,
    )
  })
}

/** Each is tried as the only one where it goes. */
function moveWords(places: readonly string[]): string {
  return places.length === 1
    ? `move ${places.join()} to another line`
    : `move ${namesOf(places)} each to a line of its own`
}

function restWords(rest: readonly Ringing[]): string {
  const ring = rest.length === 1 ? `the other then rings` : `the other ${rest.length} then ring`
  return `${ring} (${rangeOf(rest)})${justWords(rest)}`
}

/** `none rings` or who does not, with what they get and need. */
function shortWords(after: readonly Ringing[]): string {
  const silent = after.filter(({ share }) => share < 1)
  const needs = [...new Set(silent.map(({ least }) => least))].sort((p, q) => p - q)
  const gets = needs.map((least) => {
    const of = silent.filter((one) => one.least === least)
    return `${of.map(({ place }) => place).join(', ')} ${of.length === 1 ? 'gets' : 'get'} ${rangeOf(of)} of the ${Number((1e3 * least).toPrecision(3))} mA needed`
  })
  const count =
    silent.length === after.length ? 'none rings' : `${silent.length} of ${after.length} do not ring`
  return `${count} (${gets.join('; ')})`
}
