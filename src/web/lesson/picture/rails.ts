/** The three wires from the exchange down the house. */
import { type Mark, mark } from '../../../index.ts'
import type { House, HouseSet } from '../rig/house.ts'
import { sense, sizeOf, sumInto } from './flow.ts'
import { A, B, EXCHANGE, type HouseReading, MASTER_HEAD, rowY, T } from './lay.ts'
import { arrow, wire, words } from './symbols.ts'

export function rails(house: House, reading: HouseReading | undefined): readonly Mark[] {
  const whole = reading?.currents.get('box/cable.b')
  const size = whole === undefined ? 0 : sizeOf(whole)
  const top = EXCHANGE
  const from = house.turned === true ? [B, A] : [A, B]
  const cross = MASTER_HEAD - 66
  return [
    ...[0, 1].map((k) =>
      wire(
        [
          [T, top],
          [from[k] ?? A, top],
          [from[k] ?? A, cross],
          [k === 0 ? A : B, cross + 26],
          // down to where the socket's parts hang on it
          [k === 0 ? A : B, MASTER_HEAD + (k === 0 ? 6 : 46)],
        ],
        size,
      ),
    ),
    mark('circle', { cx: T, cy: top, r: 22, class: 'lesson-body' }),
    mark('path', { d: `M${T - 12} ${top}q6 -14 12 0t12 0`, class: 'lesson-sound' }),
    words(B + 16, top + 5, 'exchange', 'name'),
    words(A - 20, MASTER_HEAD - 34, 'a', 'wire-name'),
    words(B + 12, MASTER_HEAD - 34, 'b', 'wire-name'),
    ...(house.turned === true ? [words(T, cross + 18, 'reversed', 'middle')] : []),
    ...down(A, 'a', house.sets, reading),
    ...down(T, 'ringing', house.sets, reading),
    ...down(B, 'b', house.sets, reading),
    words(T + 9, MASTER_HEAD + 18, 'third', 'wire-name'),
  ]
}

/** The pieces of one wire between the sets: each carries what the sets below it take. */
function down(
  x: number,
  core: 'a' | 'b' | 'ringing',
  sets: readonly HouseSet[],
  reading: HouseReading | undefined,
): readonly Mark[] {
  const reached = sets.filter(({ pairOnly }) => core !== 'ringing' || pairOnly !== true)
  const start = MASTER_HEAD + (core === 'a' ? 6 : 46)
  return reached.flatMap((one, k): Mark[] => {
    const previous = reached[k - 1]
    const from = previous === undefined ? start : rowY(sets.indexOf(previous))
    const to = rowY(sets.indexOf(one))
    const current = reading === undefined ? undefined : below(core, reached.slice(k), reading)
    const size = current === undefined ? 0 : sizeOf(current)
    const way = current === undefined || reading === undefined ? 1 : sense(reading, current)
    const middle = previous === undefined ? to - 34 : (from + to) / 2
    const tip = arrow(x, middle, 0, way, size)
    return [
      wire(
        [
          [x, from],
          [x, to],
        ],
        size,
      ),
      ...(tip === undefined ? [] : [tip]),
    ]
  })
}

/** A set that is turned over at its plug has its a core on the b wire. */
function below(
  core: 'a' | 'b' | 'ringing',
  sets: readonly HouseSet[],
  reading: HouseReading,
): ReturnType<typeof sumInto> {
  const places = (turned: boolean): string[] =>
    sets.filter((one) => (one.turned === true) === turned).map(({ place }) => place)
  const other = core === 'a' ? 'b' : core === 'b' ? 'a' : 'ringing'
  const straight = sumInto(reading, core, places(false))
  const turned = sumInto(reading, other, places(true))
  return { re: straight.re + turned.re, im: straight.im + turned.im }
}
