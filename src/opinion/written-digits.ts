/** Voltages and currents in all the digits that were asked for. */
import type { SolveAnswer } from '../answer/answer.ts'
import type { Digits } from '../answer/second-opinion.ts'
import type { Twice } from './ask-again.ts'
import type { Big } from './big.ts'
import type { Pair } from './pair.ts'

/** A number this many digits below the last digit of the largest of its sort is what rounding leaves of nothing. */
const BELOW = 15

/** What is written of a second opinion beside a solved network, by node and branch. */
export function writtenDigits(
  { net, opinion }: Twice,
  digits: number,
  { analysis, voltages: ours }: SolveAnswer,
): {
  readonly voltages: Readonly<Record<string, Digits>>
  readonly currents: Readonly<Record<string, Digits>>
} {
  const volts = writer([...opinion.voltages.values()], digits, analysis)
  const amps = writer(opinion.currents, digits, analysis)
  const voltages: Record<string, Digits> = {}
  for (const id of net.nodes) {
    const value = opinion.voltages.get(id)
    // what is undetermined against earth has no digits either
    voltages[id] = value === undefined || ours[id] === null ? null : volts(value)
  }
  const currents: Record<string, Digits> = {}
  opinion.wires.forEach(({ id }, k) => {
    const value = opinion.currents[k]
    currents[id] = value === undefined ? null : amps(value)
  })
  return { voltages, currents }
}

function writer(
  all: readonly Pair[],
  digits: number,
  analysis: SolveAnswer['analysis'],
): (value: Pair) => Digits {
  const parts = all.flatMap(({ re, im }) => [re, im]).filter((part) => !part.isZero())
  const least =
    parts.reduce((most, part) => Math.max(most, part.e), Number.NEGATIVE_INFINITY) - digits - BELOW
  const text = (part: Big): string => (part.isZero() || part.e < least ? '0' : part.toPrecision(digits))
  return ({ re, im }) => (analysis === 'direct' ? text(re) : { re: text(re), im: text(im) })
}
