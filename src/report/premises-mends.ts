/** What to move, fit or unplug on premises: each mend once, with the sets that it is for. */
import type { Verdict } from '../checks/rule.ts'
import type { NamedFault } from '../faults/named-fault.ts'
import { placeAbout, placesText, withoutPlace } from './about-place.ts'
import { grouped } from './groups.ts'
import type { Page } from './paint.ts'
import { explainedBy } from './text-faults.ts'
import { hanging } from './wrap.ts'

/** Mends of the named faults first, then of what fails and no fault explains, then of what is marginal. */
export function mendLines(
  verdicts: readonly Verdict[],
  faults: readonly NamedFault[],
  places: readonly string[],
  page: Page,
): string[] {
  const open = (['fails', 'marginal'] as const).flatMap((state) =>
    verdicts.filter((one) => one.state === state && explainedBy(one, faults, places) === undefined),
  )
  const mends = [...faults, ...open].flatMap((one) => ('mend' in one ? [one] : []))
  const groups = grouped(mends, places, ({ mend }) => mend)
  if (groups.length === 0) return []
  return [
    page.paint.bold('What to do'),
    ...groups.flatMap(({ first, places: at }, k) => {
      // what is about no set is about the line and all that hangs on it
      const where = placesText(at, places) || ('check' in first ? first.check : '')
      const mend = withoutPlace(first.mend, placeAbout(first, places))
      return hanging(`${String(k + 1).padStart(3)} `, where === '' ? mend : `${where}: ${mend}`, page.width)
    }),
    '',
  ]
}
