/** A house as a simple line picture: exchange, pair, master socket, third wire, bells; currents by weight and arrow. */
import { type Mark, mark } from '../../../index.ts'
import type { House } from '../rig/house.ts'
import { milli, soundText } from '../words.ts'
import { A, B, type HouseReading, MASTER_HEAD, ROW, rowY, T, WIDTH } from './lay.ts'
import { pieceMarks } from './piece.ts'
import { housePieces } from './pieces.ts'
import { rails } from './rails.ts'
import { setRow } from './set-row.ts'
import { capacitor, dot, resistor, words } from './symbols.ts'

/** The picture; without a reading its wires carry nothing yet. */
export function housePicture(house: House, reading: HouseReading | undefined): Mark {
  const height = rowY(house.sets.length) - ROW / 2 + 4
  const sizes = house.sets.map(({ place }) => {
    const bell = reading?.bells.find((one) => one.place === place)
    return bell === undefined ? '' : ` ${place}: ${milli(bell.current)}, ${soundText(bell)}.`
  })
  return mark(
    'svg',
    {
      viewBox: `0 0 ${WIDTH} ${height}`,
      class: 'lesson-picture',
      role: 'img',
      'aria-label': `The wiring of the house.${sizes.join('')}`,
    },
    ...housePieces(house, reading).flatMap((one) => pieceMarks(one, reading)),
    ...rails(house),
    ...master(reading),
    ...house.sets.flatMap((one, k) => setRow(one, rowY(k), reading)),
  )
}

function master(reading: HouseReading | undefined): readonly Mark[] {
  const y = MASTER_HEAD
  return [
    mark('rect', { x: A - 18, y: y - 22, width: B - A + 36, height: 96, rx: 8, class: 'lesson-box' }),
    words(B + 26, y - 2, 'master', 'name'),
    words(B + 26, y + 17, 'socket', 'name'),
    ...(reading === undefined ? [] : [words(B + 26, y + 44, milli(reading.capacitor), 'amount')]),
    resistor((A + T) / 2, y + 6),
    capacitor((T + B) / 2, y + 46),
    dot(A, y + 6),
    dot(T, y + 46),
    dot(B, y + 46),
  ]
}
