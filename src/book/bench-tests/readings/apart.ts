/** Readings of parts by themselves, one of their leads off. */
import type { FigurePlan } from '../../../figures/figure.ts'
import { type Amount, UNFIXED } from '../../../figures/variants.ts'
import type { Branch } from '../../../netlist/netlist.ts'
import { joinedTo } from '../../../netlist/paths.ts'
import type { FaultMode } from '../../../parts/kind.ts'
import { type Change, changed } from '../../../solver/variants/change.ts'
import type { BenchTest } from '../../bench-test.ts'
import { LINK } from '../../faults/ground.ts'
import { neighbours } from '../../faults/terminals.ts'
import type { Sound } from '../bench-set.ts'
import { capacitanceTest, tellsCapacitance } from './capacitance.ts'
import { type Held, slotOf } from './held.ts'
import { bentOhms, type Ohms, ohmsRanges, ohmsTest, straightOhms } from './ohms.ts'
import { isCapacitor } from './pairs.ts'

/**
 * Parts that can be had by themselves: what is no link and no contact and has two ends of its own, in the case or
 * between pins of a unit. Those of the handset are read at the loose ends of its cord.
 */
function separableParts(bench: Sound): readonly Branch[] {
  return bench.net.branches.filter((branch) => {
    const { part, from, to } = branch
    if (part.place !== bench.place.place || part.role === 'link' || part.gate !== undefined) return false
    if (part.count > 1 && part.role !== 'winding') return false
    const slot = slotOf(bench, branch)
    if (slot === undefined) return part.sort === 'part'
    return [from, to].every((node) => slot.sockets.includes(node)) && isSoleWay(bench, branch)
  })
}

/** Whether nothing else of its unit leads from one end of a part to the other: at the pins the unit is read as a whole. */
function isSoleWay(bench: Sound, branch: Branch): boolean {
  const slot = slotOf(bench, branch)
  const rest = (one: Branch): boolean => one.index !== branch.index && slotOf(bench, one) === slot
  return !joinedTo(bench.net, rest, branch.from).has(branch.to)
}

/** A part with one lead off, and what can be read of it. */
export interface Apart {
  readonly branch: Branch
  readonly held: Held
  readonly ohms?: Ohms
}

/**
 * What is read of a part by itself: ohms unless `known.ohms`, and of a capacitor its capacitance unless
 * `known.capacitance`, since they are read without taking a lead off.
 *
 * A fault beside a part joins its two ends, whether it is the part's own, or that of a part across the same ends, or a
 * strap or damp between its terminals; but with a lead off only the first of them is read. Where what is found between
 * the two ends without the part may be either, the score is not known.
 */
export function apartTests(bench: Sound, { branch, held, ohms }: Apart, known: Known): readonly BenchTest[] {
  const tests: BenchTest[] = []
  if (ohms !== undefined && !known.ohms) tests.push(ohmsTest(bench, held, ohms))
  if (isCapacitor(branch) && !known.capacitance && tellsCapacitance(bench, held))
    tests.push(capacitanceTest(bench, held))
  return tests.filter((one) => moves(bench, one, branch)).map(unlessForeign(bench, held, branch))
}

/** What the part's own ends show of it in the circuit. */
export interface Known {
  readonly ohms: boolean
  readonly capacitance: boolean
}

/** Every part that can be had by itself. */
export function apartOf(bench: Sound): readonly Apart[] {
  return separableParts(bench).map((branch): Apart => {
    const held: Held = { red: branch.from, black: branch.to, state: 'on-hook', leadOff: branch }
    if (ohmsRanges(bench).length === 0) return { branch, held }
    const bends = branch.part.law.bends?.(branch.part.spec).includes('direct') === true
    return { branch, held, ohms: bends ? bentOhms(bench, held) : straightOhms(bench, held) }
  })
}

/** Whether anything that goes wrong with the part changes the reading. */
function moves(bench: Sound, { plans, score }: BenchTest, branch: Branch): boolean {
  const { part, ordinal } = branch
  const of = (made: readonly Change[]): Amount =>
    score(
      plans.map((plan) => bench.amount(withChanges(plan, made))),
      (index) => bench.net.parts[index]?.spec ?? part.spec,
    )
  const sound = of([])
  return (part.law.modes?.(part.spec) ?? []).some(
    (mode) => (mode.branch ?? ordinal) === ordinal && !Object.is(of(changesOf(bench, branch, mode)), sound),
  )
}

function changesOf(
  { net }: Sound,
  { index, from, to, part }: Branch,
  { change }: FaultMode,
): readonly Change[] {
  if ('open' in change) return [{ lifted: index }]
  if ('across' in change) return [{ bridge: { from, to, ohms: change.across } }]
  if ('within' in change) return [{ within: { branch: index, ohms: change.within } }]
  return [{ instead: { part: net.parts.indexOf(part), spec: change.instead } }]
}

function withChanges(plan: FigurePlan, made: readonly Change[]): FigurePlan {
  return { ...plan, taps: plan.taps.map((tap) => ({ ...tap, question: changed(tap.question, made) })) }
}

/** A resistance is taken for another that is within this factor of it. */
const ALIKE = 3

function unlessForeign(bench: Sound, held: Held, branch: Branch): (one: BenchTest) => BenchTest {
  const foreign = foreignOhms(bench, branch)
  if (foreign.length === 0) return (one) => one
  const bare = bareOhms(bench, held, branch)
  return (one) => ({
    ...one,
    plans: [...one.plans, bare],
    score(figures, specs) {
      const beside: Amount = figures[one.plans.length] ?? UNFIXED
      const unknown = foreign.some((ohms) => beside >= ohms / ALIKE && beside <= ohms * ALIKE)
      return unknown ? UNFIXED : one.score(figures.slice(0, one.plans.length), specs)
    },
  })
}

/** What lies between the two ends of a part once it is off altogether, ohms. */
function bareOhms(bench: Sound, held: Held, branch: Branch): FigurePlan {
  const [plan] = straightOhms(bench, held).plans
  if (plan === undefined) throw new RangeError('a reading on ohms has a plan')
  return withChanges(plan, [{ lifted: branch.index }])
}

/** Ohms that something else than the part itself may bring between its two ends. */
function foreignOhms(bench: Sound, branch: Branch): readonly number[] {
  const { net, place, odds } = bench
  const joins = (from: number, to: number): boolean =>
    (from === branch.from && to === branch.to) || (from === branch.to && to === branch.from)
  const others = net.branches.filter((one) => one.index !== branch.index && joins(one.from, one.to))
  const besides = others.flatMap(({ part, ordinal }) =>
    (part.law.modes?.(part.spec) ?? []).flatMap(({ change, branch: own }) =>
      'across' in change && (own === undefined || own === ordinal) ? [change.across] : [],
    ),
  )
  const strip = neighbours({ net, place, odds, holds: {} }).some(([one, two]) => joins(one, two))
  return strip ? [...besides, LINK, odds['damp-resistance'].value.value] : besides
}
