/** Named faults as text: what is wrong, where, what follows, and what mends it. */
import type { Verdict } from '../checks/rule.ts'
import type { NamedFault } from '../faults/named-fault.ts'
import { placeAbout } from './about-place.ts'
import { reachOf } from './fault-reach.ts'
import type { Page } from './paint.ts'
import { pathText, subjectText } from './place-names.ts'
import { consequenceTable, labelled } from './text-verdict.ts'
import { conditionWords } from './words.ts'
import { hanging, wrap } from './wrap.ts'

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)

/** One fault: its name, place and condition, what was found, path, figures now and mended, mend. */
export function faultBlock(fault: NamedFault, place: string | undefined, page: Page): string[] {
  const about = [subjectText(fault.subject, place), conditionWords(fault.condition)]
  const name = capital(fault.title)
  const [first = '', ...rest] = wrap([name, ...about.filter((one) => one !== '')].join(' · '), page.width)
  const painted = first.startsWith(name) ? page.paint.bad(name) + first.slice(name.length) : first
  return [
    painted,
    ...rest.map((line) => `  ${line}`),
    ...hanging('  ', fault.says, page.width),
    ...(fault.path.length === 0 ? [] : labelled('path', pathText(fault.path, place, page), page)),
    ...consequenceTable(fault.consequences, place, page),
    ...labelled('mend', fault.mend, page),
    ...(fault.explains.length === 0 ? [] : labelled('explains', fault.explains.join(', '), page)),
  ]
}

/** All faults under their heading, each ended by an empty line; nothing where none has a name. */
export function faultLines(faults: readonly NamedFault[], place: string | undefined, page: Page): string[] {
  if (faults.length === 0) return []
  return [
    page.paint.bold('What is wrong'),
    '',
    ...faults.flatMap((fault) => [...faultBlock(fault, place, page), '']),
  ]
}

/** The fault that explains a verdict: one of its own place, or one whose figures or path reach that place. */
export function explainedBy(
  verdict: Verdict,
  faults: readonly NamedFault[],
  places: readonly string[],
): NamedFault | undefined {
  const mine = placeAbout(verdict, places)
  return faults.find((fault) => {
    if (!fault.explains.includes(verdict.check)) return false
    const reach = reachOf(fault, places)
    return mine === undefined || reach.length === 0 || reach.includes(mine)
  })
}
