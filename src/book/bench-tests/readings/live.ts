/** Readings at the plug of a set on its live line. */
import type { FigurePlan } from '../../../figures/figure.ts'
import { OPEN, UNFIXED } from '../../../figures/variants.ts'
import { type NamedRange, rangesFor } from '../../../meter/instrument.ts'
import { conditionIn } from '../../../meter/table.ts'
import { nodeName } from '../../../netlist/netlist.ts'
import type { Question } from '../../../solver/question.ts'
import type { BenchTest } from '../../bench-test.ts'
import { onLine, type Sound } from '../bench-set.ts'
import { bare } from './held.ts'
import { finest, heldBy, sigmaOf, widestScale } from './sigma.ts'
import { leadsText } from './words.ts'

/** What is read at one pair of contacts. */
interface Live {
  readonly red: number
  readonly black: number
  readonly words: 'on-hook' | 'off-hook' | 'on-hook/ringing'
  readonly ranges: readonly NamedRange[]
  /** Hz; direct voltage when absent. */
  readonly frequency?: number
}

const HANDS: Readonly<Record<Live['words'], string>> = {
  'on-hook': 'handset down, the line at rest',
  'off-hook': 'handset lifted, the line at rest',
  'on-hook/ringing': 'handset down, while the line is called',
}

/** Volts between the contacts of the plug idle, lifted and ringing; pairs that float on the sound set are left out. */
export function liveTests(bench: Sound, pairs: readonly (readonly [number, number])[]): readonly BenchTest[] {
  const on = onLine(bench)
  if (on === undefined) return []
  const { instrument } = bench.kit
  const direct = rangesFor(instrument, 'volts')
  const alternating = rangesFor(instrument, 'alternating-volts')
  const frequency = on.line.ringingFrequency
  return pairs.flatMap(([red, black]) => {
    const all: Live[] = [
      { red, black, words: 'on-hook', ranges: direct },
      { red, black, words: 'off-hook', ranges: direct },
      ...(frequency === undefined
        ? []
        : [{ red, black, words: 'on-hook/ringing', ranges: alternating, frequency } as const]),
    ]
    return all.filter((one) => one.ranges.length > 0 && fixed(bench, one)).map((one) => test(bench, one))
  })
}

/** Whether the voltage is fixed by something while no instrument hangs there. */
function fixed(bench: Sound, live: Live): boolean {
  return !Number.isNaN(bench.amount(volts(bench, live, undefined)))
}

function test(bench: Sound, live: Live): BenchTest {
  const { words, ranges, frequency } = live
  const { instrument } = bench.kit
  const plan = volts(bench, live, inputOf(bench, live))
  const most = widestScale(ranges)
  const what = frequency === undefined ? 'volts' : 'alternating-volts'
  const set = frequency === undefined ? 'direct volts' : 'alternating volts'
  const names = [live.red, live.black].map((node) => bare(bench, node))
  const held = { ...live, state: 'on-hook' as const }
  return {
    id: `${what} ${names.join(' ')} ${words}`,
    asks: `What is read on ${set} between ${names.join(' and ')}, ${words}?`,
    how: `On the live line, the set plugged in and shut; ringing may come at any moment: insulated leads, one hand, nothing bare within reach; ${HANDS[words]}; set the instrument to ${set}; ${leadsText(bench, held)}.`,
    site: 'outside',
    live: true,
    effort: bench.odds.efforts['outside-live'].effort,
    condition: plan.condition,
    unit: 'V',
    scale: finest(ranges),
    error: (value) => sigmaOf(value, ranges, instrument),
    plans: [plan],
    score: ([value = UNFIXED]) => (Math.abs(value) > most && value > 0 ? OPEN : value),
  }
}

/** Ohms of the instrument on the range that holds the sound set's voltage. */
function inputOf(bench: Sound, live: Live): number | undefined {
  const range = heldBy(Math.abs(bench.amount(volts(bench, live, undefined))), live.ranges)
  return range !== undefined && 'input resistance' in range ? range['input resistance'].value : undefined
}

/** Volts between two contacts with an instrument of so many ohms across them. */
function volts(bench: Sound, live: Live, ohms: number | undefined): FigurePlan {
  const { red, black, words, frequency } = live
  const { net, place } = bench
  const question: Question = {
    analysis: frequency === undefined ? 'direct' : 'alternating',
    condition: conditionIn(net, place, words),
    ...(frequency === undefined ? {} : { frequency }),
    ...(ohms === undefined ? {} : { bridges: [{ from: red, to: black, ohms }] }),
  }
  return {
    id: 'loop.voltage',
    subject: `${nodeName(net, red)} – ${nodeName(net, black)}`,
    condition: question.condition,
    unit: 'V',
    taps: [{ question, voltage: [red, black] }],
    value: ([re = 0, im = 0]) => (frequency === undefined ? re : Math.hypot(re, im)),
  }
}
