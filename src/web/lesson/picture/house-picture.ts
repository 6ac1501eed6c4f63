/** A house as a simple line picture: exchange, pair, master socket, third wire, bells; currents by weight and arrow. */
import { type Mark, mark } from '../../../index.ts'
import type { House } from '../rig/house.ts'
import { milli } from '../words.ts'
import { downward } from './flow.ts'
import { A, B, type HouseReading, MASTER_HEAD, ROW, rowY, T, WIDTH } from './lay.ts'
import { rails } from './rails.ts'
import { setRow } from './set-row.ts'
import { arrow, capacitor, dot, resistor, wire, words } from './symbols.ts'

/** The picture; without a reading its wires carry nothing yet. */
export function housePicture(house: House, reading: HouseReading | undefined): Mark {
  const height = rowY(house.sets.length) - ROW / 2 + 4
  const sizes = house.sets.map(({ place }) => {
    const bell = reading?.bells.find((one) => one.place === place)
    return bell === undefined ? '' : ` ${place}: ${milli(bell.current)}, ${bell.rings ? 'rings' : 'silent'}.`
  })
  return mark(
    'svg',
    {
      viewBox: `0 0 ${WIDTH} ${height}`,
      class: 'lesson-picture',
      role: 'img',
      'aria-label': `The wiring of the house.${sizes.join('')}`,
    },
    ...rails(house, reading),
    ...master(reading),
    ...house.sets.flatMap((one, k) => setRow(one, rowY(k), reading)),
  )
}

function master(reading: HouseReading | undefined): readonly Mark[] {
  const y = MASTER_HEAD
  const size = reading?.capacitor ?? 0
  const down = reading === undefined ? 0 : downward(reading, 'ringing')
  const through = arrow((T + B) / 2 + (down > 0 ? -26 : 26), y + 46, down > 0 ? -1 : 1, 0, size)
  return [
    mark('rect', { x: A - 18, y: y - 22, width: B - A + 36, height: 96, rx: 8, class: 'lesson-box' }),
    words(B + 26, y - 2, 'master', 'name'),
    words(B + 26, y + 17, 'socket', 'name'),
    ...(reading === undefined ? [] : [words(B + 26, y + 44, milli(size), 'amount')]),
    wire(
      [
        [A, y + 6],
        [T, y + 6],
        [T, y + 46],
      ],
      0,
    ),
    resistor((A + T) / 2, y + 6),
    wire(
      [
        [T, y + 46],
        [B, y + 46],
      ],
      size,
    ),
    capacitor((T + B) / 2, y + 46),
    ...(through === undefined ? [] : [through]),
    dot(A, y + 6),
    dot(T, y + 46),
    dot(B, y + 46),
  ]
}
