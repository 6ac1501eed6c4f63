import { solve } from 'ringproof'
import { type Complex, complex } from '../support/complex.ts'
import { shelfOf } from '../support/sheets.ts'

/** What differs from house to house; all of it texts of sheets. */
export interface House {
  /** `{type: twin, …}` between exchange and premises, none when absent */
  readonly cable?: string
  /** how the plug of the set is numbered; wiring by default */
  readonly plug?: string
  /** the part of the set between the terminals A1 (a wire), A2 (b wire) and A3 (ringing lead) */
  readonly part: string
  /** resistor of the master socket; as good as none by default */
  readonly socketResistance?: string
  /** sets in the house, one a socket; one by default */
  readonly sets?: number
}

/** Readings by id: currents of branches, voltages of nodes against earth. */
export interface Readings {
  readonly current: (id: string) => Complex
  readonly voltage: (id: string) => Complex
}

/**
 * A house on an ideal line, 50 V behind nothing, ringing with 75 V at 25 Hz behind nothing, with sets `set1`, … that
 * are one part each and have cores without resistance: what remains is the house itself.
 */
export function house(
  {
    cable,
    plug = '{numbered by: wiring, contacts: {5: a, 2: b, 3: ringing}}',
    part,
    socketResistance = '1e15 Ω',
    sets = 1,
  }: House,
  ringing: boolean,
): Readings {
  const line = [
    'ringproof: 1',
    'sheet: line',
    'name: ideal',
    'feed: {voltage: 50 V, resistance: 0 Ω, negative: b wire, earth: positive pole}',
    'ringing: {voltage: 75 V, frequency: 25 Hz, wave: sine, source: 0 Ω, sent to: b wire, over battery: 50 V}',
    ...(cable === undefined ? [] : [`cable: ${cable}`]),
    'speech: {impedance: [600 Ω]}',
    '',
  ]
  const set = [
    'ringproof: 1',
    'sheet: set',
    'name: one-part',
    'strips: {A: 3}',
    `parts: {bell: ${part}}`,
    'cords: {line: {ends in: plug, cores: {a: {lands: A1, resistance: 0 Ω}, b: {lands: A2, resistance: 0 Ω}, ringing: {lands: A3, resistance: 0 Ω}}}}',
    `plug: ${plug}`,
    '',
  ]
  const numbers = Array.from({ length: sets }, (_, at) => at + 1)
  const premises = [
    'ringproof: 1',
    'sheet: premises',
    'name: house',
    'line: ideal',
    'sockets:',
    `  front: {is: master, capacitance: 1.8 µF, resistance: ${socketResistance}}`,
    ...numbers.map((at) => `  socket${at}: {is: secondary, fed from: front}`),
    'sets:',
    ...numbers.map((at) => `  set${at}: {set: one-part, in: socket${at}}`),
    '',
  ]
  const shelf = shelfOf(
    [line, set, premises].map((text, at) => ({ file: `${at}.yaml`, text: text.join('\n') })),
  )
  const answer = solve(
    {
      target: 'house',
      condition: ringing ? 'on-hook/ringing' : 'on-hook',
      ...(ringing ? { frequency: 25 } : {}),
    },
    shelf,
  )
  const known = (value: number | Complex | null | undefined, what: string): Complex => {
    if (value === null || value === undefined) throw new Error(`no ${what}`)
    return complex(value)
  }
  return {
    current: (id) => known(answer.currents[id], `current in ${id}`),
    voltage: (id) => known(answer.voltages[id], `voltage of ${id}`),
  }
}
