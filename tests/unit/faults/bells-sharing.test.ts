/** Bells that share one capacitor: who is blamed, whether its mend is enough, and what else would be. */
import { type CheckAnswer, check } from 'ringproof'
import { describe, expect, test } from 'vitest'
import { DEMO } from '../../support/bench.ts'

type Fault = CheckAnswer['faults'][number]

/** Premises with these sets, each in a socket of its own on one master socket. */
function together(line: string, sets: Readonly<Record<string, string>>): CheckAnswer {
  const places = Object.entries(sets)
  const text = [
    `ringproof: 1\nsheet: premises\nname: house\nline: ${line}`,
    'sockets:\n  box: {is: master, capacitance: 1.8 µF, resistance: 470 kΩ}',
    ...places.map((_, k) => `  s${k}: {is: secondary, fed from: box}`),
    'sets:',
    ...places.map(([place, set], k) => `  ${place}: {set: ${set}, in: s${k}}`),
    '',
  ].join('\n')
  return check({ target: '', text: { file: 'house.yaml', text } }, DEMO)
}

const faultsOf = (answer: CheckAnswer, fault: string): readonly Fault[] =>
  answer.faults.filter((one) => one.fault === fault)

/** mA of a bell with the mend. */
function mended(fault: Fault | undefined, place: string): number {
  const found = fault?.consequences.find(({ figure }) => figure.subject.startsWith(`${place}/`))
  return 1e3 * (found?.mended?.value ?? Number.NaN)
}

describe('a bell without resistor', () => {
  const sets = { study: 'foxtail', hall: 'marram', yard: 'fescue', loft: 'fescue-late' }

  test.each(['depot-exchange', 'valley-exchange', 'adapter-port'])(
    'is the hungriest alone, and what the others get is told as a range: %s',
    (line) => {
      const answer = together(line, sets)
      const found = faultsOf(answer, 'bell-without-resistor')
      expect(found.map(({ subject }) => subject)).toEqual(['hall/bell'])
      const [fault] = found
      expect(fault?.says).toMatch(
        /takes [\d.]+ mA, the 3 others [\d.]+ mA to [\d.]+ mA; yard and loft get too little/,
      )
      expect(fault?.says).not.toContain('thereabouts')
      // nothing else than the resistor in that one set was tried with it
      expect(fault?.mend).toMatch(/\(in hall\); all then ring/)
      for (const place of ['yard', 'loft']) expect(mended(fault, place)).toBeGreaterThanOrEqual(3)
    },
  )

  test('is not one that has its resistor, nor one that takes no more than the others', () => {
    expect(faultsOf(together('adapter-port', { ...sets, hall: 'fescue' }), 'bell-without-resistor')).toEqual(
      [],
    )
    const five = { a: 'marram', b: 'marram', c: 'marram', d: 'marram' }
    expect(faultsOf(together('adapter-port', five), 'bell-without-resistor')).toEqual([])
  })

  test('of two is blamed with its own mend alone, and told that the other wants one too', () => {
    const two = { a: 'marram', b: 'marram', c: 'fescue', d: 'fescue', e: 'fescue' }
    const found = faultsOf(together('depot-exchange', two), 'bell-without-resistor')
    expect(found.map(({ subject }) => subject)).toEqual(['a/bell', 'b/bell'])
    const [fault] = found
    expect(fault?.mend).toMatch(
      /by itself that is not enough: 4 of 5 do not ring .*; with one in b too all ring/,
    )
    // its own alone: the other one then takes what it leaves, and the three stay silent
    expect(mended(fault, 'b')).toBeGreaterThan(9)
    expect(mended(fault, 'c')).toBeLessThan(3)
  })
})

describe('where the resistor is not enough', () => {
  const answer = check({ target: 'goods-office', on: 'adapter-port' }, DEMO)
  const [fault] = faultsOf(answer, 'bell-without-resistor')

  test('the mend says so with figures, and names what is', () => {
    expect(fault?.mend).toMatch(
      /^move clerk to another line: the other 4 then ring \(3\.10 mA to 3\.11 mA\), all of them just/,
    )
    expect(fault?.mend).toMatch(
      /3\.3 kΩ in clerk is not enough: none rings .*clerk gets 2\.96 mA of the 4 mA needed/,
    )
  })

  test('the figures are those of the mend that is named', () => {
    for (const place of ['porter-1', 'porter-4']) expect(mended(fault, place)).toBeGreaterThanOrEqual(3)
    expect(mended(fault, 'clerk')).toBeGreaterThanOrEqual(4)
  })
})

describe('too many bells', () => {
  const [fault] = check({ target: 'museum-hall' }, DEMO).faults
  const mend = fault?.mend ?? ''

  test('names every set that goes, for bells and for load, and none as an example', () => {
    expect(mend).not.toMatch(/such as/)
    const load =
      /for the ringing load that this line allows, move (.*?) to another line/.exec(mend)?.[1] ?? ''
    expect(load.match(/case-\d+/g)).toHaveLength(8)
  })

  test('says that what is left rings just', () => {
    expect(mend).toMatch(/the other 7 then ring, all of them just \(3\.0\d mA where 3\.00 mA is needed\)/)
  })

  test('says how many fit on a line for good, and who goes on which; on each they ring and the load holds', () => {
    expect(mend).toMatch(/no more than four on a line.*: three lines, each with a master socket of its own/)
    const lines = [...mend.matchAll(/\d: (case-\d+(?:, case-\d+)*)/g)].map(([, names = '']) =>
      names.split(', '),
    )
    expect(lines.flat().sort()).toEqual(Array.from({ length: 12 }, (_, k) => `case-${k + 1}`).sort())
    const text = DEMO.find('premises', 'museum-hall')?.text ?? ''
    for (const line of lines) {
      const rest = text
        .split('\n')
        .filter((one) => !/^ {2}case-/.test(one) || line.some((place) => one.startsWith(`  ${place}:`)))
        .join('\n')
        .replace('name: museum-hall', 'name: part')
      const { verdicts, faults } = check({ target: '', text: { file: 'part.yaml', text: rest } }, DEMO)
      const asked = verdicts.filter(
        ({ check: id }) => id === 'bell.rings-with-all' || id === 'line.ringing-load',
      )
      expect(asked).toHaveLength(line.length + 1)
      expect(asked.filter(({ state }) => state !== 'holds')).toEqual([])
      expect(faults).toEqual([])
    }
  })

  test('says which set is too much for a line by itself, and that a resistor helps it', () => {
    const [, many] = check({ target: 'goods-office', on: 'adapter-port' }, DEMO).faults
    expect(many?.fault).toBe('too-many-bells')
    expect(many?.mend).toContain(
      'clerk by itself is too much for such a line without a bell resistor of 3.3 kΩ',
    )
  })
})
