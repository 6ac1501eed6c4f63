/** Why equal bells ring alike with resistors and without: the figures that show it, in a sentence or two. */
import type { EqualBells } from '../answer/equal-bells.ts'
import type { Figure } from '../figures/figure.ts'
import { formatPercent, formatQuantity } from '../quantities/format.ts'
import type { Page } from './paint.ts'
import { wrap } from './wrap.ts'

const amperes = (value: number): string => formatQuantity(value, 'A', 3)
const change = (from: number, to: number): string => {
  const share = to / from - 1
  return `${share < 0 ? '−' : '+'}${formatPercent(Math.abs(share), 2)}`
}

/** A change of less than this share is little. */
const LITTLE = 0.15
const isLittle = (from: number, to: number): boolean => Math.abs(to / from - 1) <= LITTLE

/** For premises whose bells all get the same: what each gets of all, and what a resistor more would change. */
export function equalLines(equal: EqualBells | undefined, page: Page): string[] {
  if (equal === undefined) return []
  const { bells, least, most, resistor, 'in all': inAll, 'in one': inOne } = equal
  const mean = (least + most) / 2
  const ohms = formatQuantity(resistor, 'Ω', 2)
  const others = bells === 2 ? 'the other' : 'each of the others'
  const says = [
    `${bells} equal bells share what passes the ringing capacitor: each gets about 1/${bells} of ${amperes(bells * mean)}, ${amperes(mean)}.`,
    isLittle(most, inAll)
      ? `A further ${ohms} in all of them would change that little (${amperes(inAll)}, ${change(most, inAll)}): what passes is set by what they share, and each still gets 1/${bells} of it.`
      : `A further ${ohms} in all of them would only take from each (${amperes(inAll)}, ${change(most, inAll)}): each still gets 1/${bells} of what passes.`,
    `In one alone, that one would get ${amperes(inOne.itself)} (${change(most, inOne.itself)}) and ${others} ${amperes(inOne.others)}: a bell resistor is what makes unequal bells share; equal ones do so without it.`,
  ]
  return ['', ...wrap(says.join(' '), page.width - 2).map((line) => `  ${line}`)]
}

/** Bells of one side of a comparison, everything plugged in, A. */
function currentsOf(figures: readonly Figure[]): readonly number[] {
  return figures.flatMap(({ id, value, condition }) =>
    id === 'ringing.current' && condition.line === 'ringing' && value !== null ? [value] : [],
  )
}

const EQUAL = 0.05

function equalMean(currents: readonly number[]): number | undefined {
  const [least, most] = [Math.min(...currents), Math.max(...currents)]
  return currents.length < 2 || least <= 0 || most - least > EQUAL * most ? undefined : (least + most) / 2
}

/** For two premises whose bells are all equal on either side. */
export function equalOnBothLines(
  found: readonly Figure[],
  proposed: readonly Figure[],
  page: Page,
): string[] {
  const [before, after] = [currentsOf(found), currentsOf(proposed)]
  const [was, is] = [equalMean(before), equalMean(after)]
  if (was === undefined || is === undefined || before.length !== after.length) return []
  const count = after.length
  const says = `${count} equal bells on either side share what passes the ringing capacitor, each about 1/${count} of ${amperes(count * was)} as found and of ${amperes(count * is)} proposed: ${amperes(was)} and ${amperes(is)} (${change(was, is)}).`
  const why = isLittle(was, is)
    ? ' What is changed in all of them alike, such as a bell resistor, changes little; it is what makes unequal bells share.'
    : ''
  return [...wrap(says + why, page.width), '']
}
