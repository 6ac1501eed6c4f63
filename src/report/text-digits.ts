/** The numbers of a second opinion in many digits, below the solver's. */
import type { Amount, SolveAnswer } from '../answer/answer.ts'
import type { Digits } from '../answer/second-opinion.ts'
import type { Page } from './paint.ts'
import { shortId } from './place-names.ts'
import { columns, hanging, wrap } from './wrap.ts'

/** Digits that write a double so that it can be told from every other. */
const DOUBLE = 17

/** The solver's numbers above those of the second opinion, each in all its digits. */
export function digitLines(answer: SolveAnswer, place: string | undefined, page: Page): string[] {
  const { voltages, currents, digits } = answer['second opinion'] ?? {}
  if (voltages === undefined || currents === undefined) return []
  return [
    ...wrap(`Voltages in ${digits} digits, V: the solver's above, the second opinion's below`, page.width),
    ...digitBlock(answer.voltages, voltages, place, page),
    '',
    `Currents in ${digits} digits, A`,
    ...digitBlock(answer.currents, currents, place, page),
    '',
  ]
}

function digitBlock(
  ours: Readonly<Record<string, Amount>>,
  second: Readonly<Record<string, Digits>>,
  place: string | undefined,
  page: Page,
): string[] {
  const ids = Object.keys(second).filter((id) => ours[id] !== null && second[id] !== null)
  const width = Math.min(24, Math.max(0, ...ids.map((id) => columns(shortId(id, place)))))
  return ids.flatMap((id) => {
    const short = shortId(id, place)
    const label = `  ${short.padEnd(width)}  `
    const [first = '', ...rest] = linesOf(ours[id] ?? 0, second[id] ?? '0')
    // a long id stands alone in its line
    const own = columns(short) > width ? [`  ${short}`] : []
    const head = own.length > 0 ? ' '.repeat(width + 4) : label
    return [
      ...own,
      ...hanging(head, first, page.width),
      ...rest.flatMap((line) => hanging(' '.repeat(width + 4), line, page.width)),
    ]
  })
}

/** Direct: two lines. Alternating: two lines for the real part, two for the imaginary part. */
function linesOf(ours: Exclude<Amount, null>, second: Exclude<Digits, null>): string[] {
  const parts = typeof ours === 'number' ? { re: ours, im: 0 } : ours
  if (typeof second === 'string') return [number(parts.re), number(second)]
  return [number(parts.re), number(second.re), `j ${number(parts.im)}`, `j ${number(second.im)}`]
}

/** A sign or a place for one, so that digits stand below digits. */
function number(value: number | string): string {
  const text =
    typeof value === 'string' ? value : value === 0 ? '0' : String(Number(value.toPrecision(DOUBLE)))
  return text.startsWith('-') ? text : `+${text}`
}
