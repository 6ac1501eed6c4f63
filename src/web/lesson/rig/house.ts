/** The house of the lesson: what stands in it, and its sheets as text for the library. */
import type { SheetText } from '../../../index.ts'
import { FLEET, type FleetName } from './fleet.ts'

/** What has been done to a set, or to the socket that it is plugged into. */
export interface HouseSet {
  readonly place: string
  readonly set: FleetName
  /** The resistor in the bell path is there or not; as the set came when absent. */
  readonly resistor?: boolean
  /** The core of the third wire is parked: insulated, on nothing. */
  readonly parked?: boolean
  /** The pair is turned over at this set's own plug. */
  readonly turned?: boolean
  /** Only the pair was run to this socket. */
  readonly pairOnly?: boolean
  /** The third wire touches a wire of the pair in this set. */
  readonly touches?: 'a' | 'b'
}

export interface House {
  readonly sets: readonly HouseSet[]
  /** The pair is turned over on the exchange side of the master socket. */
  readonly turned?: boolean
  /** As written on a sheet: `1.8 µF`. */
  readonly capacitance?: string
  readonly line?: string
}

/** Name of the premises of every house; its master socket is `box`. */
export const HOUSE = 'lesson-house'
export const MASTER = 'box'

/** The moves on a set, as lines of a rewire sheet. */
export function movesOf({ set, resistor, parked, touches }: HouseSet): readonly string[] {
  const { hasResistor, moves, ways } = FLEET[set]
  return [
    ...moves,
    ...(resistor === undefined || resistor === hasResistor ? [] : ways.resistor),
    ...(parked === true ? ['park core: line.ringing'] : []),
    ...(touches === 'a' ? ways.touchesA : touches === 'b' ? ways.touchesB : []),
  ]
}

/** The sheets of a house: its premises first, then a rewire for each set on which a hand was laid. */
export function houseTexts(house: House): readonly SheetText[] {
  const rewires = house.sets.flatMap((one): SheetText[] => {
    const moves = movesOf(one)
    if (moves.length === 0) return []
    const head = `ringproof: 1\nsheet: rewire\nname: lesson-${one.place}\nset: ${FLEET[one.set].sheet}\nmoves:\n`
    return [
      { file: `lesson-${one.place}.yaml`, text: head + moves.map((move) => `  - {${move}}\n`).join('') },
    ]
  })
  return [{ file: `${HOUSE}.yaml`, text: premisesText(house) }, ...rewires]
}

function premisesText({ sets, turned, capacitance = '1.8 µF', line = 'depot-exchange' }: House): string {
  const sockets = sets.map(({ pairOnly }, k) => {
    if (k === 0) return `  ${MASTER}: {is: master, capacitance: ${capacitance}, resistance: 470 kΩ}`
    const cable = pairOnly === true ? 'house-pair' : 'house-three'
    const more = pairOnly === true ? ', ringing lead: no' : ''
    return `  socket-${k + 1}: {is: secondary, fed from: ${MASTER}, over: {type: ${cable}, gauge: 0.5 mm, length: 6 m}${more}}`
  })
  const rows = sets.map((one, k) => {
    const words = [
      `set: ${FLEET[one.set].sheet}`,
      `in: ${k === 0 ? MASTER : `socket-${k + 1}`}`,
      ...(movesOf(one).length === 0 ? [] : [`rewire: lesson-${one.place}`]),
      ...(one.turned === true ? ['reversed: yes'] : []),
    ]
    return `  ${one.place}: {${words.join(', ')}}`
  })
  return [
    'ringproof: 1',
    'sheet: premises',
    `name: ${HOUSE}`,
    'title: the house of the lesson',
    `line: ${line}`,
    `reversed: ${turned === true ? 'yes' : 'no'}`,
    'sockets:',
    ...sockets,
    'sets:',
    ...rows,
    '',
  ].join('\n')
}
