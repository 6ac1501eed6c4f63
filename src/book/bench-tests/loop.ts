/** What the exchange sees: whether a loop is closed for it, at rest and while it rings. */
import type { Changes } from '../../figures/figure.ts'
import { lineCurrent } from '../../figures/line-current.ts'
import type { BenchTest } from '../bench-test.ts'
import { amiss, ask, fine, whenSet } from './ask.ts'
import { hasContact, type OnLine } from './bench-set.ts'
import { allOrNone, type Measure, share } from './measure.ts'

/** The line's direct current with the set lifted, over what closes a loop for the exchange, bent about a cut. */
export function loopSeen(bench: OnLine, cut: number, words: string = 'off-hook'): Measure {
  return allOrNone(loopMade(bench, words), cut)
}

/** The line's direct current in a condition of the set, over what closes a loop for the exchange. */
export function loopMade(bench: OnLine, words: string): Measure {
  const plan = lineCurrent(bench.net, bench.line, 'loop.current', whenSet(bench, words))
  return share(plan, bench.limit('loop-make'))
}

/** The line's direct current while it rings, over what trips the ringing; undefined where its sheet does not say. */
export function tripped(bench: OnLine, words: string, changes: Changes = {}): Measure | undefined {
  const trip = bench.line.sheet.trip?.current.value
  if (trip === undefined || trip === 0 || bench.line.ringingFrequency === undefined) return undefined
  return share(lineCurrent(bench.net, bench.line, 'leakage.ringing', whenSet(bench, words), changes), trip)
}

/** Symptoms of the direct current of a line. */
export function loopTests(bench: OnLine): readonly BenchTest[] {
  return [...stopsOnLifting(bench), ...goesOnRinging(bench), engaged(bench)]
}

function stopsOnLifting(bench: OnLine): readonly BenchTest[] {
  const measure = tripped(bench, 'off-hook/ringing')
  if (measure === undefined || !hasContact(bench, 'off-hook')) return []
  return [
    ask(bench, {
      id: 'stops-ringing',
      asks: 'Does the ringing stop when you lift the handset?',
      how: 'Have the line called; while the bell sounds, or should, lift the handset and keep the receiver off your ear. Listen whether the ringing stops, here or in the ear of the caller.',
      when: 'off-hook/ringing',
      measure,
      answers: [amiss('no', 'it goes on ringing'), fine('stops', 'it stops', 'yes')],
      cuts: [1],
    }),
  ]
}

function goesOnRinging(bench: OnLine): readonly BenchTest[] {
  const measure = tripped(bench, 'on-hook/ringing')
  if (measure === undefined) return []
  return [
    ask(bench, {
      id: 'goes-on-ringing',
      asks: 'Does it go on ringing until somebody lifts?',
      how: 'Have the line called and leave the handset where it is. Listen whether the call rings on, or breaks off by itself in the first ring as if somebody had answered.',
      when: 'on-hook/ringing',
      measure,
      answers: [fine('goes-on', 'it rings on', 'yes'), amiss('drops', 'it breaks off by itself', 'no')],
      cuts: [1],
    }),
  ]
}

function engaged(bench: OnLine): BenchTest {
  return ask(bench, {
    id: 'engaged',
    asks: 'Is the line engaged for callers although everybody has hung up?',
    how: 'With every handset down, have the line called from elsewhere: does the caller hear that it is engaged?',
    when: 'on-hook',
    measure: loopMade(bench, 'on-hook'),
    answers: [fine('free', 'it is free', 'no'), amiss('engaged', 'it is engaged', 'yes')],
    cuts: [1],
  })
}
