/** One set: its bell between the third wire and a wire of the pair, and what was done to it. Its wires are drawn before. */
import type { Mark } from '../../../index.ts'
import { FLEET } from '../rig/fleet.ts'
import type { HouseSet } from '../rig/house.ts'
import { milli, soundText } from '../words.ts'
import { A, B, type HouseReading, T, TAP } from './lay.ts'
import { bell, capacitor, dot, openEnd, resistor, words } from './symbols.ts'

/** Marks of the row at this height. */
export function setRow(one: HouseSet, y: number, reading: HouseReading | undefined): readonly Mark[] {
  const { place, turned, parked, pairOnly, touches, resistor: asked } = one
  const fleet = FLEET[one.set]
  const own = fleet.ownCapacitor
  const found = reading?.bells.find((each) => each.place === place)
  const side = turned === true ? B : A
  const out = Math.sign(side - T)
  const loose = (parked === true || pairOnly === true) && own !== 'pair'
  const middle = (x: number): number => T + out * x
  const hasResistor = (asked ?? fleet.hasResistor) && own !== 'in-line'
  return [
    ...(own === 'pair' ? [capacitor((T + B) / 2, y), dot(B, y)] : []),
    ...(hasResistor ? [resistor(middle(loose ? 36 : 30), y)] : []),
    ...(own === 'in-line' ? [capacitor(middle(30), y)] : []),
    bell(middle(84), y, found?.rings === true),
    dot(side, y),
    ...(loose ? [openEnd(middle(16), y)] : own === 'pair' ? [] : [dot(T, y)]),
    ...(own === 'beside' ? [capacitor((T + B) / 2, y - TAP), dot(T, y - TAP), dot(B, y - TAP)] : []),
    ...(touches === undefined ? [] : touch(touches, y - TAP)),
    words(B + 16, y - 12, place, 'name'),
    ...(found === undefined
      ? []
      : [words(B + 16, y + 8, milli(found.current), 'amount'), words(B + 16, y + 27, soundText(found))]),
  ]
}

/** A bare touch between the third wire and a wire of the pair. */
function touch(to: 'a' | 'b', y: number): readonly Mark[] {
  const side = to === 'a' ? A : B
  return [dot(T, y), dot(side, y), words((T + side) / 2, y - 8, 'touches', 'middle')]
}
