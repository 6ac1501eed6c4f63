/** Where the leads of a reading are held and in which state of the set, in words. */
import type { Branch } from '../../../netlist/netlist.ts'
import { bothNumbers, numbersText } from '../../../netlist/plug-numbers.ts'
import { calledOf } from '../../faults/names.ts'
import type { BenchSet } from '../bench-set.ts'
import { bare, bareId, coreAt, type Held, type State, siteOf, slotOf } from './held.ts'
import { isAt } from './pairs.ts'

const HANDS: Readonly<Record<State, string>> = {
  'on-hook': 'handset down',
  'off-hook': 'handset lifted',
  'off-hook/make': 'handset lifted, the dial turned to its stop and held there',
  'off-hook/break':
    'handset lifted, the dial off its rest and held where its pulse contact is open, or a slip of paper in that contact',
}

/** `between plug.a and plug.b, off-hook`; `across the balance-c by itself`. */
export function betweenText(bench: BenchSet, { red, black, state, cordOff, leadOff }: Held): string {
  if (leadOff !== undefined) {
    const off = slotOf(bench, leadOff) === undefined ? 'one of its leads off' : 'the unit out of its slot'
    return `across ${branchCalled(bench, leadOff)} by itself, ${off}`
  }
  const when = cordOff === true ? 'the handset cord off its terminals' : state
  return `between ${bare(bench, red)} and ${bare(bench, black)}, ${when}`
}

/** What to do for a reading of an unplugged set, in words. */
export function howUnplugged(bench: BenchSet, held: Held, range: string): string {
  const { cordOff, leadOff, state } = held
  if (leadOff !== undefined) return howApart(bench, held, leadOff, range)
  const open = siteOf(bench, held) === 'inside' ? ['open the case'] : []
  const off = cordOff === true ? ['take the cores of the handset cord off their terminals'] : []
  const hands = cordOff === true ? [] : [HANDS[state]]
  const leads = `${leadsText(bench, held)}${acrossText(bench, held)}`
  return `${['Unplug the set', ...open, ...off, ...hands, range, leads].join('; ')}.`
}

/** The same of a part of a unit, at the unit's own pins. */
function howOut(bench: BenchSet, { red, black }: Held, slot: string, range: string): string {
  const leads = `red lead on the pin that belongs to ${bare(bench, red)}, black lead on that to ${bare(bench, black)}`
  return `Unplug the set; open the case; take the unit out of the slot ${slot}; ${range}; ${leads}; put the unit back.`
}

/** The same of a part by itself: the lead that comes off is one under a screw, where there is one. */
function howApart(bench: BenchSet, held: Held, branch: Branch, range: string): string {
  const { red, black } = held
  const { terminals } = bench.place
  const slot = slotOf(bench, branch)
  if (slot !== undefined) return howOut(bench, held, slot.name, range)
  const called = branchCalled(bench, branch)
  const free = [branch.from, branch.to].find((node) => terminals.includes(node)) ?? branch.from
  const spot = (node: number): string =>
    node === free ? 'the lead that is off' : pointText(bench, node, false)
  const steps = [
    'Unplug the set',
    'open the case',
    `take the lead of ${called} off ${pointText(bench, free, false)} and keep it clear of everything`,
    range,
    `red lead on ${spot(red)}, black lead on ${spot(black)}`,
    'put the lead back where it was',
  ]
  return `${steps.join('; ')}.`
}

/** `red lead on …, black lead on …`. */
export function leadsText(bench: BenchSet, { red, black, cordOff }: Held): string {
  const at = (node: number): string => pointText(bench, node, cordOff === true)
  return `red lead on ${at(red)}, black lead on ${at(black)}`
}

/** What of the set lies across the two points, and that it does not read alone. */
function acrossText(bench: BenchSet, held: Held): string {
  const { red, black, cordOff } = held
  if (cordOff === true || siteOf(bench, held) === 'outside') return ''
  const across = bench.net.branches.filter(
    (branch) =>
      branch.part.place === bench.place.place &&
      (branch.part.role !== 'link' || branch.part.gate !== undefined) &&
      isAt(bench, branch, [red, black]),
  )
  if (across.length === 0) return ''
  const names = listed(across.map((branch) => branchCalled(bench, branch)))
  return `; that is across ${names}, and what else of the circuit lies beside reads with it`
}

/** How a point is told to whoever holds a lead to it. */
function pointText(bench: BenchSet, node: number, loose: boolean): string {
  const { place } = bench
  const core = coreAt(place, node)
  if (core === undefined) return innerText(bench, node)
  if (core.endsIn === 'handset')
    return loose ? `the loose end of core ${core.core}` : `the end of core ${core.core} in the handset`
  const number = Object.entries(place.plug).find(([, one]) => one === node)?.[0]
  const numbers = number === undefined ? '' : ` (${numbersText(bothNumbers(Number(number)))})`
  return `the plug contact of core ${core.core}${numbers}`
}

/** A terminal; a place without a screw by what meets there. */
function innerText(bench: BenchSet, node: number): string {
  const { net, place } = bench
  const name = bare(bench, node)
  if (place.terminals.includes(node)) return `terminal ${name}`
  const there = net.branches.filter(({ from, to }) => from === node || to === node)
  return `${name}, where ${listed(there.map((branch) => branchCalled(bench, branch)))} meet`
}

/** What a part is called, or one winding of it: `the bell`, `winding a of the coil`. */
function branchCalled(bench: BenchSet, { id, part }: Branch): string {
  const own = id.slice(part.id.length + 1)
  const called = part.place === bench.place.place ? calledOf(part) : bareId(bench, part.id)
  return own === '' ? called : `${part.role === 'winding' ? 'winding ' : ''}${own} of ${called}`
}

/** `a`, `a and b`, `a, b and c`. */
function listed(words: readonly string[]): string {
  const last = words.at(-1) ?? ''
  return words.length < 2 ? last : `${words.slice(0, -1).join(', ')} and ${last}`
}
