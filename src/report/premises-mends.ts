/** What to move, fit or unplug on premises: each mend once, with the sets that it is for. */
import type { Verdict } from '../checks/rule.ts'
import type { NamedFault } from '../faults/named-fault.ts'
import { placeAbout, placesText, withoutPlace } from './about-place.ts'
import { mayFollow } from './fault-reach.ts'
import { type Group, grouped } from './groups.ts'
import type { Page } from './paint.ts'
import { explainedBy } from './text-faults.ts'
import { counted } from './words.ts'
import { hanging } from './wrap.ts'

/** Whatever says what mends it. */
type Mendable = NamedFault | Extract<Verdict, { mend: string }>

/**
 * Mends of the named faults, in order; then one line on what may follow from them and is checked again; then what no
 * fault can reach, the failing before the marginal.
 */
export function mendLines(
  verdicts: readonly Verdict[],
  faults: readonly NamedFault[],
  places: readonly string[],
  page: Page,
): string[] {
  const grave = (['fails', 'marginal'] as const).flatMap((state) =>
    verdicts.filter((one): one is Extract<Verdict, { mend: string }> => one.state === state),
  )
  const open = grave.filter((one) => explainedBy(one, faults, places) === undefined)
  const follows = open.filter((one) => mayFollow(one, faults, places))
  const first = mendsOf(faults, [], places)
  const own = mendsOf(
    open.filter((one) => !follows.includes(one)),
    first.flatMap(({ all }) => all),
    places,
  )
  if (first.length + own.length === 0) return []
  return [
    page.paint.bold('What to do') + andText(first.length),
    ...first.flatMap((group, k) => mendLine(group, k + 1, places, page)),
    ...followLines(follows, first.length, places, page),
    ...own.flatMap((group, k) => mendLine(group, first.length + k + 1, places, page)),
    '',
  ]
}

/** `: 1, 2 and 3, in this order`, where several faults are to be mended. */
function andText(count: number): string {
  if (count < 2) return ''
  const numbers = Array.from({ length: count }, (_, k) => k + 1)
  return `: ${numbers.slice(0, -1).join(', ')} and ${count}, in this order`
}

/** Mends that are alike in several sets taken together; none that is the job of another, or part of it. */
function mendsOf(
  all: readonly Mendable[],
  before: readonly Mendable[],
  places: readonly string[],
): readonly Group<Mendable>[] {
  const known = [...before, ...all]
  const jobs = all.filter((one) => !known.some((other) => other !== one && coversJob(other, one, places)))
  return grouped(jobs, places, ({ mend }) => mend)
}

/** What goes without saying of a job. */
const WITH = /^with the set unplugged, /
/** However it is said, fitting one is one job. */
const BELL_RESISTOR = /bell[- ]resistor/

/** Whether doing the one does the other: its words are among those of a longer job in the same place. */
function coversJob(one: Mendable, other: Mendable, places: readonly string[]): boolean {
  if (placeAbout(one, places) !== placeAbout(other, places)) return false
  const [long, short] = [one.mend, other.mend].map((mend) => mend.replace(WITH, '')) as [string, string]
  if (long === short) return false
  if (long.startsWith(`${short}, then `) || long.endsWith(`, then ${short}`)) return true
  // the moves that fit it say more than the word
  return BELL_RESISTOR.test(short) && long.includes('fit part bell-resistor') && !short.includes('fit part')
}

/** A mend with its number and the sets that it is for; what is about no set is about all that hangs on the line. */
function mendLine(
  { first, places: at }: Group<Mendable>,
  number: number,
  places: readonly string[],
  page: Page,
): string[] {
  const where = placesText(at, places) || ('check' in first ? first.check : '')
  const mend = withoutPlace(first.mend, placeAbout(first, places))
  return hanging(`${String(number).padStart(3)} `, where === '' ? mend : `${where}: ${mend}`, page.width)
}

/** What is not mended by itself, since it may go away with what is. */
function followLines(
  follows: readonly Verdict[],
  mends: number,
  places: readonly string[],
  page: Page,
): string[] {
  if (follows.length === 0) return []
  const checks = [...new Set(follows.map(({ check }) => check))].map((check) => {
    const at = follows.filter((one) => one.check === check).map((one) => placeAbout(one, places))
    const where = placesText(at, places)
    return where === '' ? check : `${check} (${where})`
  })
  const failures = follows.filter(({ state }) => state === 'fails').length
  const margins = follows.length - failures
  const parts = [
    ...(failures > 0 ? [`${failures} more ${failures === 1 ? 'failure' : 'failures'}`] : []),
    ...(margins > 0 ? [counted(margins, 'marginal check')] : []),
  ]
  const [these, them] = mends === 1 ? ['this', 'it'] : ['these', 'them']
  const says = `mend ${these} first, then check again: ${parts.join(' and ')} may follow from ${them}: ${checks.join(', ')}`
  return hanging('    ', says, page.width)
}
