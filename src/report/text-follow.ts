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
import { wrap } from './wrap.ts'

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
    ...(rows.length === 1 ? ['No current leads on from here in this condition.'] : []),
    '',
    ...(answer.approximate === undefined ? [] : approximations([answer.approximate], page)),
    ...(isNearLine(answer) ? caution(page) : []),
    `${Math.max(0, steps.length - 1)} steps`,
  ]
}
