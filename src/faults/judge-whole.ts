/** What a mend makes fail that did not fail before: all checks of the place, and those that are asked once of the line. */
import { CHECKS } from '../checks/catalogue.ts'
import type { CheckContext, Rule } from '../checks/context.ts'
import type { Consequence, Fails, Verdict } from '../checks/rule.ts'
import { formatNumber, formatQuantity } from '../quantities/format.ts'
import { become } from './measure.ts'

/** Checks that are asked once of all that stands on the line. */
const ONCE: readonly Rule[] = CHECKS.filter(({ once }) => once === true)

/** The verdicts of a place with those of the whole line, which stand with the first place only. */
export function withLine(context: CheckContext, verdicts: readonly Verdict[]): readonly Verdict[] {
  const missing = ONCE.filter(({ id }) => !verdicts.some(({ check }) => check === id))
  return [...verdicts, ...missing.flatMap((rule) => rule.run(context))]
}

/**
 * What fails after a mend and held before. What could not be answered before counts in the wiring only: that a set
 * which comes to life meets a line that does not suit it is no doing of the mend.
 * @param before verdicts of the place; those of the whole line are added where they are missing
 */
export function newlyFailing(
  context: CheckContext,
  before: readonly Verdict[],
  after: CheckContext,
): readonly Fails[] {
  const old = new Map(
    withLine(context, before).map(({ check, subject, state }) => [`${check} ${subject}`, state]),
  )
  return judgedHere(after)
    .filter((one) => one.state === 'fails')
    .filter(({ check, subject }) => {
      const state = old.get(`${check} ${subject}`)
      return state === 'holds' || state === 'marginal' || (state === 'unknown' && check.startsWith('wiring.'))
    })
}

/** `line.ringing-load` (4.98 against 4), as part of a sentence. */
export function failureWords({ check, figure, limit }: Fails): string {
  if (figure?.value == null || limit === null || figure.unit !== limit.unit) return `\`${check}\``
  const amount = (value: number): string =>
    figure.unit === '1' ? formatNumber(value, 3) : formatQuantity(value, figure.unit, 3)
  return `\`${check}\` (${amount(figure.value)} against ${amount(limit.value)})`
}

/** Several of them: `a, b and c`, each check once. */
export function failuresWords(failures: readonly Fails[]): string {
  const words = [...new Set(failures.map(failureWords))]
  return words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`
}

/** What fails after a mend, with what its own check says to it, to be put behind the words of the mend; empty where nothing does. */
export function failsThen(failures: readonly Fails[]): string {
  if (failures.length === 0) return ''
  const mends = [...new Set(failures.map(({ mend }) => mend))].slice(0, 2)
  return `; then ${failuresWords(failures)} ${failures.length === 1 ? 'fails' : 'fail'}: ${mends.join('; ')}`
}

/** The same of a mend that is no list of moves. */
export function thenFails(context: CheckContext, before: readonly Verdict[], after: CheckContext): string {
  return failsThen(newlyFailing(context, before, after))
}

/** All verdicts of a place and of the whole line. */
export function judgedHere(context: CheckContext): readonly Verdict[] {
  return CHECKS.flatMap((rule) => rule.run(context))
}

/** All verdicts of all places of an installation, by place; what is asked once stands with the first. */
export function judgedEverywhere(context: CheckContext): ReadonlyMap<string, readonly Verdict[]> {
  return new Map(
    context.net.places.map((place, k) => {
      const there = { ...context, place }
      const rules = CHECKS.filter(({ once }) => once !== true || k === 0)
      return [place.place, rules.flatMap((rule) => rule.run(there))]
    }),
  )
}

/** A verdict that comes right. */
export interface Cured {
  readonly check: string
  readonly place: string
  readonly consequence: readonly Consequence[]
}

/** What is left beyond a limit counts for nothing beside so many times as much before, which another fault has its part in. */
const MUCH = 10

/** How far beyond its limit a verdict is, in its own unit; nothing where it is within or has no number. */
function beyond({ figure, limit }: Verdict): number {
  if (figure?.value == null || limit === null) return 0
  const over = limit.side === 'at-most' ? figure.value - limit.value : limit.value - figure.value
  return Math.max(0, over)
}

/** What failed and does no longer, or by a tenth as much at the most, since another fault has its part in it. */
export function curedBy(
  before: readonly Verdict[],
  after: ReadonlyMap<string, readonly Verdict[]>,
): readonly Cured[] {
  const places = [...after.keys()]
  const then = new Map([...after.values()].flat().map((one) => [`${one.check} ${one.subject}`, one]))
  return before.flatMap((one): readonly Cured[] => {
    const mended = then.get(`${one.check} ${one.subject}`)
    if (one.state !== 'fails' || mended === undefined) return []
    const right = mended.state === 'holds' || mended.state === 'marginal'
    const nearly = beyond(one) > 0 && beyond(one) >= MUCH * beyond(mended) && mended.figure?.value != null
    if (!right && !nearly) return []
    const place = places.find((name) => one.subject === name || one.subject.startsWith(`${name}/`)) ?? ''
    const alike = one.figure?.id === mended.figure?.id && one.figure?.subject === mended.figure?.subject
    const consequence = become(one.figure ?? undefined, (alike ? mended.figure : undefined) ?? undefined)
    return [{ check: one.check, place, consequence }]
  })
}
