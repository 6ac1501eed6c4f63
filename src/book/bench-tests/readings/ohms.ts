/** Readings on ohms. */
import type { FigurePlan } from '../../../figures/figure.ts'
import { type Amount, OPEN, UNFIXED } from '../../../figures/variants.ts'
import { type NamedRange, type Range, rangesFor } from '../../../meter/instrument.ts'
import { nodeName } from '../../../netlist/netlist.ts'
import type { Question } from '../../../solver/question.ts'
import type { BenchTest } from '../../bench-test.ts'
import type { Sound } from '../bench-set.ts'
import { effortOf, type Held, idOf, siteOf, unplugged } from './held.ts'
import { finest, sigmaOf, widestScale } from './sigma.ts'
import { betweenText, howUnplugged } from './words.ts'

/** A reading on ohms before it is a test. */
export interface Ohms {
  readonly plans: readonly FigurePlan[]
  score(figures: readonly Amount[]): Amount
}

/** Ranges on ohms, the smallest first. */
export function ohmsRanges({ kit }: Sound): readonly NamedRange[] {
  return rangesFor(kit.instrument, 'ohms')
}

/**
 * The most that is taken for a resistance, ohms: what is above it is open. What leaks through a clamp, through damp or
 * through fingers is no way, and hangs on what the instrument sends.
 */
export function openAbove(bench: Sound): number {
  return Math.min(widestScale(ohmsRanges(bench)), bench.kit.habits.open.value)
}

/**
 * Ohms between two points where no part that bends matters: one question for all ranges, of a current too small to
 * matter. Beyond what counts as open it is.
 */
export function straightOhms(bench: Sound, held: Held): Ohms {
  const most = openAbove(bench)
  return {
    plans: [sent(bench, held, { probes: [probe(held, 1)], small: true }, (volts) => Math.abs(volts))],
    score: ([ohms = UNFIXED]) => (ohms > most ? OPEN : ohms),
  }
}

/**
 * The same where a part bends: the instrument's own current on each of its ranges, and the smallest range that holds
 * what it shows. A range whose current finds no way that suits all parts needs more volts than the instrument has.
 */
export function bentOhms(bench: Sound, held: Held): Ohms {
  const ranges = ohmsRanges(bench).map(({ range }) => range)
  const most = openAbove(bench)
  return {
    plans: ranges.map((range) => ownCurrent(bench, held, range)),
    score: (figures) => chosen(figures, ranges, most),
  }
}

/** What that shows of the sound set: as few ranges are asked as tell it. What the widest does not hold is open. */
export function bentValue(bench: Sound, held: Held): Amount {
  const ranges = ohmsRanges(bench).map(({ range }) => range)
  const most = openAbove(bench)
  const shown = (range: Range): Amount =>
    chosen([bench.amount(ownCurrent(bench, held, range))], [range], OPEN)
  const last = ranges.at(-1)
  // what counts as open on the widest range may be a number on one that sends more
  if (last === undefined || !Number.isFinite(shown(last))) return OPEN
  for (const range of ranges) {
    const value = shown(range)
    if (Number.isFinite(value)) return value > most ? OPEN : value
  }
  return OPEN
}

function chosen(figures: readonly Amount[], ranges: readonly Range[], most: number): Amount {
  const holding = figures.filter(
    (ohms, k) => ohms >= 0 && ohms <= (ranges[k]?.['full scale'].value ?? Number.NEGATIVE_INFINITY),
  )
  const [first] = holding
  if (first !== undefined) return first > most ? OPEN : first
  return figures.some(Number.isNaN) ? UNFIXED : OPEN
}

/** What one range shows with what it sends itself, ohms. */
export function ownCurrent(bench: Sound, held: Held, range: Range): FigurePlan {
  const sign = bench.kit.instrument['red lead'] === 'positive' ? 1 : -1
  if (range.method === 'battery') {
    const emf = range.battery.value
    const ohms = range['mid scale'].value
    const bridges = [{ from: held.red, to: held.black, ohms }]
    const probes = [probe(held, (sign * emf) / ohms)]
    return sent(bench, held, { bridges, probes }, (volts) => {
      const left = Math.max(0, sign * volts)
      const amps = (emf - left) / ohms
      return amps < (NOTHING * emf) / ohms ? 'open' : left / amps
    })
  }
  const amps = 'current' in range ? range.current.value : 1
  return sent(bench, held, { probes: [probe(held, sign * amps)] }, (volts) => Math.abs(volts) / amps)
}

/** Less than this share of what a battery can send is what rounding leaves of nothing. */
const NOTHING = 1e-9

function probe({ red, black }: Held, re: number): { into: number; outOf: number; re: number } {
  return { into: red, outOf: black, re }
}

function sent(
  bench: Sound,
  held: Held,
  more: Partial<Question>,
  value: (volts: number) => ReturnType<FigurePlan['value']>,
): FigurePlan {
  const question: Question = { ...unplugged(bench, held), ...more }
  const name = (node: number): string => nodeName(bench.net, node)
  return {
    id: 'resistance.between',
    subject: `${name(held.red)} – ${name(held.black)}`,
    condition: question.condition,
    unit: 'Ω',
    taps: [{ question, voltage: [held.red, held.black] }],
    value: ([volts = 0]) => value(volts),
  }
}

/** A reading on ohms as a test. */
export function ohmsTest(bench: Sound, held: Held, { plans, score }: Ohms): BenchTest {
  const ranges = ohmsRanges(bench)
  const [plan] = plans
  if (plan === undefined) throw new RangeError('a reading on ohms has a range')
  return {
    id: idOf(bench, 'ohms', held),
    asks: `What is read on ohms ${betweenText(bench, held)}?`,
    how: howUnplugged(bench, held, 'set the instrument to ohms'),
    site: siteOf(bench, held),
    live: false,
    effort: effortOf(bench, held),
    condition: plan.condition,
    unit: 'Ω',
    scale: finest(ranges),
    error: (ohms) => sigmaOf(ohms, ranges, bench.kit.instrument),
    most: openAbove(bench),
    plans,
    score: (figures) => score(figures),
  }
}
