/** The answer to `follow` as text: one step a line. */
import type { FollowAnswer } from '../answer/answer.ts'
import { formatExactly } from '../quantities/format.ts'
import { valueText } from './amounts.ts'
import { conditionOfAnswer } from './condition-json.ts'
import { caution, heading } from './heading.ts'
import { numbersBehind } from './numbers-behind.ts'
import type { Page } from './paint.ts'
import { table } from './table.ts'
import { approximations } from './text-verdicts.ts'
import { conditionWords, writtenWords } from './words.ts'
import { hanging, wrap } from './wrap.ts'

/** Whether a line has a part in it, which can ring at any moment, wherever the path begins and ends. */
function isNearLine({ stands, steps }: FollowAnswer): boolean {
  return (stands?.line ?? null) !== null || steps.some(({ node }) => node.startsWith('exchange/'))
}

/** Where the current runs, from node to node, through what, and where the sheet says so. */
export function followText(answer: FollowAnswer, page: Page): string[] {
  const { steps, frequency } = answer
  const condition = conditionOfAnswer(answer.condition)
  const words =
    condition === null ? [] : ['hook' in condition ? writtenWords(condition) : conditionWords(condition)]
  words.push(...whoseText(answer, condition))
  words.push(
    frequency === null ? 'direct current' : `alternating current at ${formatExactly(frequency, 'Hz')}, rms`,
  )
  const heads = [
    { heading: 'from' },
    { heading: 'through' },
    { heading: 'sort' },
    { heading: 'current', align: 'right' },
    { heading: 'written at' },
  ] as const
  const rows = steps.map(({ node, branch, sort, current, origin }) => [
    node + numbersBehind(node, page),
    branch === undefined ? '(end)' : branch + numbersBehind(branch, page),
    sort ?? '',
    current === undefined ? '' : valueText(current, 'A'),
    origin ?? '',
  ])
  return [
    ...heading(answer, page),
    ...wrap(words.join('; '), page.width),
    '',
    ...(rows.length === 0 ? ['No current runs here.'] : table(heads, rows, page, 0)),
    ...restLines(answer, page),
    ...(rows.length === 1 ? ['No current leads on from here in this condition.'] : []),
    '',
    ...(answer.approximate === undefined ? [] : approximations([answer.approximate], page)),
    ...(isNearLine(answer) ? caution(page) : []),
    `${Math.max(0, steps.length - 1)} steps`,
  ]
}

/** Where the rest of a current goes, or what joins it, at each node where it changes. */
function restLines({ steps }: FollowAnswer, page: Page): string[] {
  return steps.flatMap(({ node, current = 0, rest }, k) => {
    const before = steps[k - 1]?.current
    if (rest === undefined || before === undefined) return []
    const [word, way] = current < before ? ['the rest goes to', 'less'] : ['joined from', 'more']
    const names = rest.map((one) => `${one.branch} (${valueText(one.current, 'A')})`)
    const says = `${valueText(current, 'A')} in place of ${valueText(before, 'A')}, ${way}: ${word} ${names.join(', ')}`
    return hanging(`at ${node}: `, says, page.width)
  })
}

/** With several handsets up, whose current is followed and who else is up. */
function whoseText({ steps }: FollowAnswer, condition: ReturnType<typeof conditionOfAnswer>): string[] {
  if (condition === null || 'hook' in condition) return []
  const up = Object.entries(condition.sets).flatMap(([place, { hook }]) =>
    hook === 'off-hook' ? [place] : [],
  )
  const through = up.filter((place) => steps.some(({ node }) => node.startsWith(`${place}/`)))
  const others = up.filter((place) => !through.includes(place))
  if (through.length === 0 || others.length === 0) return []
  const too = others.length === 1 ? 'is up too' : 'are up too'
  return [`followed through ${through.join(' and ')}, which takes most; ${others.join(', ')} ${too}`]
}
