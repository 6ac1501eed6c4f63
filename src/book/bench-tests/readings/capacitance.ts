/** Readings of capacitance. */
import type { FigurePlan } from '../../../figures/figure.ts'
import { type Amount, OPEN, UNFIXED } from '../../../figures/variants.ts'
import type { CapacitanceRange, NamedRange } from '../../../meter/instrument.ts'
import { rangesFor } from '../../../meter/instrument.ts'
import { nodeName } from '../../../netlist/netlist.ts'
import type { Question } from '../../../solver/question.ts'
import type { BenchTest } from '../../bench-test.ts'
import type { Sound } from '../bench-set.ts'
import { conditionOfHeld, effortOf, type Held, idOf, siteOf, unplugged } from './held.ts'
import { finest, sigmaOf } from './sigma.ts'
import { betweenText, howUnplugged } from './words.ts'

/** Phase of the impedance up to which a reading is a capacitor's doing: the table's, −45°. */
const PURE_ENOUGH = -Math.PI / 4

/** Ranges of capacitance, the smallest first. */
export function capacitanceRanges({ kit }: Sound): readonly NamedRange[] {
  return rangesFor(kit.instrument, 'capacitance')
}

/** What the instrument shows is |I| / (ω V), on the smallest range that holds it; a short is beyond all of them. */
export function capacitanceTest(bench: Sound, held: Held): BenchTest {
  const named = capacitanceRanges(bench)
  const ranges = named.map(({ range }) => range).filter((range) => range.method === 'capacitance')
  const frequencies = [...new Set(ranges.map(({ frequency }) => frequency.value))]
  const plans = frequencies.map((frequency) => impedance(bench, held, frequency))
  return {
    id: idOf(bench, 'capacitance', held),
    asks: `What is read on capacitance ${betweenText(bench, held)}?`,
    how: howUnplugged(bench, held, 'set the instrument to capacitance'),
    site: siteOf(bench, held),
    live: false,
    effort: effortOf(bench, held),
    condition: conditionOfHeld(bench, held),
    unit: 'F',
    scale: finest(named),
    error: (farads) => sigmaOf(farads, named, bench.kit.instrument),
    plans,
    score: (figures) => shown(figures, ranges, frequencies),
  }
}

function shown(
  figures: readonly Amount[],
  ranges: readonly CapacitanceRange[],
  frequencies: readonly number[],
): Amount {
  let last: Amount = UNFIXED
  for (const range of ranges) {
    const frequency = range.frequency.value
    last = farads(figures[frequencies.indexOf(frequency)] ?? UNFIXED, frequency)
    if (last <= range['full scale'].value) return last
  }
  return Number.isNaN(last) ? UNFIXED : OPEN
}

/** Farads that an impedance is taken for; none where nothing can flow. */
function farads(ohms: Amount, frequency: number): Amount {
  return ohms === OPEN ? 0 : 1 / (2 * Math.PI * frequency * ohms)
}

/** |Z| between two points for a current too small to bend anything, ohms. */
function impedance(bench: Sound, held: Held, frequency: number): FigurePlan {
  const { red, black } = held
  const question: Question = {
    ...unplugged(bench, held),
    analysis: 'alternating',
    frequency,
    small: true,
    probes: [{ into: red, outOf: black, re: 1 }],
  }
  return {
    id: 'impedance.between',
    subject: `${nodeName(bench.net, red)} – ${nodeName(bench.net, black)}`,
    condition: question.condition,
    unit: 'Ω',
    taps: [{ question, voltage: [red, black] }],
    value: ([re = 0, im = 0]) => Math.hypot(re, im),
  }
}

/** Whether there is a capacitor to be read on the sound set: more than a digit of it, and no resistance in disguise. */
export function tellsCapacitance(bench: Sound, held: Held): boolean {
  const ranges = capacitanceRanges(bench)
  const first = ranges[0]?.range
  if (first?.method !== 'capacitance') return false
  const plan = impedance(bench, held, first.frequency.value)
  const ohms = bench.amount(plan)
  const value = farads(ohms, first.frequency.value)
  if (!(value > finest(ranges))) return false
  const angle = bench.amount({ ...plan, value: ([re = 0, im = 0]) => Math.atan2(im, re) })
  return angle < PURE_ENOUGH
}
