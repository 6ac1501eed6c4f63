/** What an instrument shows of a set: at its plug, on its live line, and in the opened case. */
import type { Amount } from '../../../figures/variants.ts'
import type { NamedRange } from '../../../meter/instrument.ts'
import type { PartSpec } from '../../../parts/kind.ts'
import type { BenchTest } from '../../bench-test.ts'
import { hasContact, type Sound } from '../bench-set.ts'
import { type Apart, apartOf, apartTests, type Known } from './apart.ts'
import { capacitanceRanges, capacitanceTest, tellsCapacitance } from './capacitance.ts'
import { type Held, STATES, type State } from './held.ts'
import { liveTests } from './live.ts'
import { bentOhms, bentValue, type Ohms, ohmsRanges, ohmsTest, ownCurrent, straightOhms } from './ohms.ts'
import { isAtCapacitor, type NodePair, pairsOf } from './pairs.ts'
import { finest, heldBy } from './sigma.ts'

/** All readings of a set whose shown value can move, those that cost the least first. */
export function readingTests(bench: Sound): readonly BenchTest[] {
  const { plug, within, handset } = pairsOf(bench)
  return [
    ...plug.flatMap((pair) => readPair(bench, pair, UNMOVED_PLUG)),
    ...liveTests(bench, plug),
    ...handset.flatMap((pair) => readLoose(bench, pair)),
    ...within.flatMap((pair) => readPair(bench, pair, UNMOVED_WITHIN)),
    ...apartOf(bench).flatMap((one) => apartTests(bench, one, knownOf(bench, one))),
  ]
}

/** States in which a pair is read although it shows there what it shows in the state before. */
const UNMOVED_PLUG: readonly State[] = ['on-hook', 'off-hook']
const UNMOVED_WITHIN: readonly State[] = ['on-hook']

/** Ohms in every state that shows something of its own, and capacitance where a capacitor blocks ohms. */
function readPair(bench: Sound, pair: NodePair, unmoved: readonly State[]): readonly BenchTest[] {
  const all = statesOf(bench).map((state) => heldAt(pair, state))
  // as they are, before what is too much to count as a resistance is taken for open: a bridge of diodes at rest is
  const tiny = all.map((held): Read => {
    const ohms = straightOhms(bench, held)
    return { held, ohms, value: figureOf(bench, ohms) }
  })
  // where nothing has changed between two states, what bends has not either
  const bent = ownValues(bench, tiny, []).some((one) => matters(bench, one))
  const there = bent
    ? all.map((held) => readBent(bench, held))
    : tiny.map((one): Read => ({ ...one, value: one.ohms.score([one.value]) }))
  const kept = ownValues(bench, there, unmoved)
  const back = bent ? kept.flatMap((one) => turnedRound(bench, one)) : []
  return [
    ...[...kept, ...back].map(({ held, ohms }) => ohmsTest(bench, held, ohms)),
    ...capacitances(bench, pair, there),
  ]
}

/** The one figure on which a straight reading rests. */
function figureOf(bench: Sound, { plans: [plan] }: Ohms): Amount {
  if (plan === undefined) throw new RangeError('a reading on ohms has a plan')
  return bench.amount(plan)
}

function readBent(bench: Sound, held: Held): Read {
  return { held, ohms: bentOhms(bench, held), value: bentValue(bench, held) }
}

/** The reading with its leads changed over, where it shows something else. */
function turnedRound(bench: Sound, { held, value }: Read): readonly Read[] {
  const turned = readBent(bench, { ...held, red: held.black, black: held.red })
  return differ(bench, turned.value, value) ? [turned] : []
}

interface Read {
  readonly held: Held
  readonly ohms: Ohms
  readonly value: Amount
}

/** The capsules of the handset, by the loose ends of their cord. */
function readLoose(bench: Sound, pair: NodePair): readonly BenchTest[] {
  if (ohmsRanges(bench).length === 0) return []
  const held: Held = { ...heldAt(pair, 'on-hook'), cordOff: true }
  return [ohmsTest(bench, held, straightOhms(bench, held))]
}

function heldAt([red, black]: NodePair, state: State): Held {
  return { red, black, state }
}

function statesOf(bench: Sound): readonly State[] {
  if (ohmsRanges(bench).length === 0) return []
  const hook = hasContact(bench, 'off-hook')
  const dial = hasContact(bench, 'off-normal', 'make', 'break')
  return STATES.filter((state) => state === 'on-hook' || (state === 'off-hook' ? hook : dial))
}

/** Leaves out states that show what a state before them shows: no contact between the points has changed. */
function ownValues(bench: Sound, all: readonly Read[], unmoved: readonly State[]): readonly Read[] {
  return all.filter(
    ({ held, value }, k) =>
      unmoved.includes(held.state) || all.slice(0, k).every((before) => differ(bench, value, before.value)),
  )
}

/**
 * Capacitance handset down and lifted: wherever ohms are open and either of the two shows a capacitor; and across a
 * capacitor of the set where it shows though something conducts beside it.
 */
function capacitances(bench: Sound, pair: NodePair, all: readonly Read[]): readonly BenchTest[] {
  if (capacitanceRanges(bench).length === 0) return []
  const hooks = all.filter(({ held }) => !held.state.includes('/'))
  const blocked = hooks.filter(({ value }) => value === Number.POSITIVE_INFINITY)
  const wanted = blocked.some(({ held }) => tellsCapacitance(bench, held)) ? blocked : []
  const telling = isAtCapacitor(bench, pair) ? hooks.filter(({ held }) => tellsCapacitance(bench, held)) : []
  const there = telling.filter(({ held }, k) =>
    telling
      .slice(0, k)
      .every((before) =>
        differ(bench, faradsOf(bench, held), faradsOf(bench, before.held), capacitanceRanges(bench)),
      ),
  )
  return [...new Set([...wanted, ...there])].map(({ held }) => capacitanceTest(bench, held))
}

/** What a part's own ends show of it in the circuit, in one state or another: nothing that counts lies beside it there. */
function knownOf(bench: Sound, { branch, held, ohms }: Apart): Known {
  const there = statesOf(bench).map((state) => heldAt([branch.from, branch.to], state))
  const alone = ohms && scored(bench, ohms)
  const read = (one: Held): Amount =>
    ohms?.plans.length === 1 ? scored(bench, straightOhms(bench, one)) : bentValue(bench, one)
  return {
    ohms: alone !== undefined && there.some((one) => !differ(bench, read(one), alone)),
    capacitance: there.some(
      (one) =>
        !one.state.includes('/') &&
        tellsCapacitance(bench, one) &&
        !differ(bench, faradsOf(bench, one), faradsOf(bench, held), capacitanceRanges(bench)),
    ),
  }
}

function faradsOf(bench: Sound, held: Held): Amount {
  return scored(bench, capacitanceTest(bench, held))
}

/** What a reading shows of the sound set. */
function scored(bench: Sound, { plans, score }: Pick<BenchTest, 'plans' | 'score'> | Ohms): Amount {
  const specs = (part: number): PartSpec => bench.net.parts[part]?.spec ?? { kind: '' }
  return score(
    plans.map((plan) => bench.amount(plan)),
    specs,
  )
}

/** Share by which two readings differ for anybody to call them different; the meter's. */
const DIFFERENT = 0.02

function differ(
  bench: Sound,
  one: Amount,
  other: Amount | undefined,
  ranges: readonly NamedRange[] = ohmsRanges(bench),
): boolean {
  if (other === undefined || Object.is(one, other)) return false
  const size = Math.max(Math.abs(one), Math.abs(other))
  if (!Number.isFinite(size)) return true
  return Math.abs(one - other) > Math.max(DIFFERENT * size, finest(ranges))
}

/** Share of a reading by which a part that bends may move it and still be taken as it is at rest. */
const UNBENT = 0.001

/**
 * Whether the instrument's own current bends a part far enough to be seen: what it shows is compared with what a
 * current too small to matter would find, on the range of that value; an open one on the widest.
 */
function matters(bench: Sound, { held, value }: Read): boolean {
  if (!bends(bench)) return false
  const ranges = ohmsRanges(bench)
  const range = heldBy(value, ranges)
  if (range === undefined) return false
  const own = bench.amount(ownCurrent(bench, held, range))
  if (!(value <= range['full scale'].value)) return own >= 0 && own <= range['full scale'].value
  return !(Math.abs(own - value) <= UNBENT * value + finest(ranges))
}

/** Whether a part of the set has a law that bends with direct current. */
function bends({ net, place }: Sound): boolean {
  return net.parts.some(
    (part) => part.place === place.place && part.law.bends?.(part.spec).includes('direct') === true,
  )
}
