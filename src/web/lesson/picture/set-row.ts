/** One set: its bell between the third wire and a wire of the pair, and what was done to it. */
import type { Mark } from '../../../index.ts'
import { FLEET } from '../rig/fleet.ts'
import type { HouseSet } from '../rig/house.ts'
import { milli } from '../words.ts'
import { sense, sizeOf, sumInto } from './flow.ts'
import { A, B, type HouseReading, T } from './lay.ts'
import { arrow, bell, capacitor, dot, openEnd, resistor, wire, words } from './symbols.ts'

/** Marks of the row at this height. */
export function setRow(one: HouseSet, y: number, reading: HouseReading | undefined): readonly Mark[] {
  const { place, turned, parked, pairOnly, touches, resistor: asked } = one
  const fleet = FLEET[one.set]
  const own = fleet.ownCapacitor
  const found = reading?.bells.find((each) => each.place === place)
  const size = found?.current ?? 0
  const into =
    reading === undefined ? { re: 0, im: 0 } : sumInto(reading, own === 'pair' ? 'b' : 'ringing', [place])
  // the bell's own current goes on to the wire that it returns to
  const toA = (reading === undefined ? 1 : sense(reading, into)) > 0
  const side = turned === true ? B : A
  const out = side === A ? -1 : 1
  const loose = (parked === true || pairOnly === true) && own !== 'pair'
  const near = loose ? T + out * 16 : T
  const middle = (x: number): number => T + out * x
  const hasResistor = (asked ?? fleet.hasResistor) && own !== 'in-line'
  const tip = loose ? undefined : arrow(middle(55), y, toA ? out : -out, 0, size)
  return [
    wire(
      [
        [near, y],
        [side, y],
      ],
      size,
    ),
    ...(own === 'pair'
      ? [
          wire(
            [
              [T, y],
              [B, y],
            ],
            size,
          ),
          capacitor((T + B) / 2, y),
          dot(B, y),
        ]
      : []),
    ...(hasResistor ? [resistor(middle(loose ? 36 : 30), y)] : []),
    ...(own === 'in-line' ? [capacitor(middle(30), y)] : []),
    bell(middle(84), y, found?.rings === true),
    ...(tip === undefined ? [] : [tip]),
    dot(side, y),
    ...(loose ? [openEnd(near, y)] : own === 'pair' ? [] : [dot(T, y)]),
    ...(own === 'beside' ? beside(y, reading, place) : []),
    ...(touches === undefined ? [] : touch(touches, y, reading, place)),
    words(B + 16, y - 12, place, 'name'),
    ...(found === undefined
      ? []
      : [
          words(B + 16, y + 8, milli(size), 'amount'),
          words(B + 16, y + 27, found.rings ? 'rings' : 'silent'),
        ]),
  ]
}

function beside(y: number, reading: HouseReading | undefined, place: string): readonly Mark[] {
  const current = reading?.currents.get(`${place}/own-capacitor`)
  const at = y - 30
  return [
    wire(
      [
        [T, at],
        [B, at],
      ],
      current === undefined ? 0 : sizeOf(current),
    ),
    capacitor((T + B) / 2, at),
    dot(T, at),
    dot(B, at),
  ]
}

/** A bare touch between the third wire and a wire of the pair. */
function touch(to: 'a' | 'b', y: number, reading: HouseReading | undefined, place: string): readonly Mark[] {
  const side = to === 'a' ? A : B
  const current = reading?.currents.get(`${place}/${to === 'a' ? 'C1-A1' : 'C1-B5'}`)
  const at = y - 32
  return [
    wire(
      [
        [T, at],
        [side, at],
      ],
      current === undefined ? 0 : sizeOf(current),
    ),
    dot(T, at),
    dot(side, at),
    words((T + side) / 2, at - 8, 'touches', 'middle'),
  ]
}
