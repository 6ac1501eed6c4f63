import type { RingingLoadName } from 'ringproof/figures/figure'
import { isLoadName, LOAD_DEFINITIONS, LOAD_NAMES } from 'ringproof/figures/ringing-definitions'
import { ringingLoad, ringingLoadTotal } from 'ringproof/figures/ringing-load'
import { COUNTING_SOURCE, countedVoltage, setCount } from 'ringproof/figures/unit-ringer'
import { describe, expect, test } from 'vitest'
import { assertClose } from '../../support/close.ts'
import { house, lineText, MASTER, plainSet, standing } from './_stand.ts'

const RINGING = { line: 'ringing', sets: {} } as const
/** 1/(R + 1/jωC) at 25 Hz, S. */
function series(ohms: number, farads: number) {
  const x = -1 / (2 * Math.PI * 25 * farads)
  const size = ohms * ohms + x * x
  return { re: ohms / size, im: -x / size }
}
/** AS/CA S002:2010, 6.7.6.2, note, grade SEEN-P. */
const UNIT = series(4000, 1e-6)

describe('the definitions', () => {
  test('have a source, a clause and a grade each', () => {
    expect(LOAD_NAMES).toHaveLength(6)
    for (const name of LOAD_NAMES) {
      const { source, clause, grade, volts } = LOAD_DEFINITIONS[name]
      expect(source.length).toBeGreaterThan(5)
      expect(clause.length).toBeGreaterThan(3)
      expect(['SEEN-P', 'SEEN-S']).toContain(grade)
      expect(volts).toBeGreaterThan(0)
    }
    expect(isLoadName('type-a')).toBe(true)
    expect(isLoadName('type-c')).toBe(false)
    expect(isLoadName('toString')).toBe(false)
  })

  // TIA-968 table 6, secondary copy, grade SEEN-S
  test('of type B reach from 15.3 Hz to 68 Hz in steps of 3 % at most, one load 8 kΩ', () => {
    const { samples = [] } = LOAD_DEFINITIONS['type-b']
    expect([samples[0]?.frequency, samples.at(-1)?.frequency]).toEqual([15.3, 68])
    samples.slice(1).forEach(({ frequency }, k) => {
      const ratio = frequency / (samples[k]?.frequency ?? 0)
      expect(ratio).toBeGreaterThan(1)
      expect(ratio).toBeLessThanOrEqual(1.03 + 1e-12)
    })
    expect(new Set(samples.map(({ ohms }) => ohms))).toEqual(new Set([8000]))
  })

  test('of the older European unit is 6615.7746 Ω', () => {
    assertClose(LOAD_DEFINITIONS['older-european'].samples?.[0]?.ohms, 6615.7746, { relative: 1e-8 }, 'ohms')
  })
})

/** AS/CA S002:2010, 6.7.6.2 and 6.7.6.3, grade SEEN-P; worked numbers DERIVED. */
describe('counting sets', () => {
  test('has a source of 2859.312 Ω', () => {
    assertClose(COUNTING_SOURCE, 2859.312, { relative: 2e-7 }, 'source')
  })

  test.each([
    [1, 60.255],
    [2, 48.536],
    [3, 40],
    [4, 33.769],
  ])('leaves with %d unit ringers %f V', (n, volts) => {
    assertClose(countedVoltage(n, UNIT), volts, { relative: 0, absolute: 5e-4 }, 'volts')
  })

  test.each([
    [1, 3],
    [2, 1.5],
    [3, 1],
    [5, 0.6],
    [10, 0.3],
    [30, 0.1],
    [31, 0.1],
    [1000, 0.1],
  ])('is 3 over the number: %d sets that bring it to 40 V are %f each', (n, load) => {
    const each = { re: (3 * UNIT.re) / n, im: (3 * UNIT.im) / n }
    assertClose(setCount([each]), load, { relative: 1e-12 }, 'load')
  })

  test('counts the set that brings it below, takes what one of them takes beside others, and knows no more than 3', () => {
    expect(setCount([{ re: UNIT.re * 0.99, im: UNIT.im * 0.99 }])).toBe(3 / 4)
    expect(setCount([{ re: 1, im: 0 }])).toBe(3)
    const shy = { re: UNIT.re / 10, im: UNIT.im / 10 }
    const bold = { re: UNIT.re * 3, im: UNIT.im * 3 }
    expect(setCount([shy, bold, bold])).toBe(3 / 2)
    expect(setCount([])).toBe('open')
  })
})

/** A set that is nothing but a ringer, on two wires (A1, A2) or between ringing lead (A3) and a wire. */
function ringer(name: string, ...parts: readonly string[]) {
  const text = [
    'ringproof: 1',
    'sheet: set',
    `name: ${name}`,
    'strips: {A: 9}',
    `parts: {${parts.join(', ')}}`,
    'cords: {line: {ends in: plug, cores: {a: {lands: A1, resistance: 0 Ω}, b: {lands: A2, resistance: 0 Ω}, ringing: {lands: A3, resistance: 0 Ω}}}}',
    'plug: {numbered by: wiring, contacts: {5: a, 2: b, 3: ringing}}',
    '',
  ].join('\n')
  return { file: `${name}.yaml`, text }
}
const bell = (from: string, to: string, ohms: number) =>
  `bell: {kind: bell, from: ${from}, to: ${to}, resistance: ${ohms} Ω, inductance: 1 nH, rings from: 3 mA at 25 Hz}`
const capacitor = (from: string, to: string, farads: string) =>
  `capacitor: {kind: capacitor, from: ${from}, to: ${to}, capacitance: ${farads}}`

function loads(...parts: readonly string[]) {
  const one = standing(
    house(lineText(), [MASTER], ['desk: {set: ringer, in: front}'], ringer('ringer', ...parts)),
  )
  return (name: RingingLoadName, changes = {}) =>
    one.context.figure(ringingLoad(one.net, one.place, name, RINGING, changes)).value
}

describe('the load of a set', () => {
  // two contacts of the plug, 50 mΩ each, belong to what is measured
  const two = loads(bell('A1', 'A4', 3999.9), capacitor('A4', 'A2', '1 µF'))
  const w = (hertz: number) => 2 * Math.PI * hertz

  test('on two wires is that of its ringer and its own capacitor, by every definition', () => {
    const z = (hertz: number) => Math.hypot(4000, 1 / (w(hertz) * 1e-6))
    const near = { relative: 1e-8 }
    assertClose(z(25), 7518.542, { relative: 1e-7 }, 'AS/CA S002:2010 6.7.6.2, by hand')
    assertClose(two('four-kilohm-unit'), 4000 / z(25), near, 'four kilohm')
    assertClose(two('unit-ringer'), 1, near, 'unit ringer')
    assertClose(two('older-european'), 6615.7746 / z(25), near, 'older European')
    assertClose(two('sixteen-kilohm'), 16_000 / z(50), near, 'the worse of 25 Hz and 50 Hz')
    // 20 Hz or 30 Hz, the worse, is type A, 68 Hz the worst of type B
    assertClose(two('type-a'), Math.max(7000 / z(20), 5000 / z(30)), near, 'type A')
    assertClose(two('type-b'), 8000 / z(68), near, 'type B')
  })

  test('on three wires is its bell where sets are rated, and its bell behind 1.8 µF where a line is', () => {
    const three = loads(bell('A3', 'A1', 3999.9))
    assertClose(three('four-kilohm-unit'), 1, { relative: 1e-9 }, 'rated by its bell')
    const behind = Math.hypot(4000, 1 / (w(25) * 1.8e-6))
    assertClose(three('older-european'), 6615.7746 / behind, { relative: 1e-8 }, 'seen by the line')
    // a set of 4 kΩ that has the same 1.8 µF inside is seen alike
    const own = loads(bell('A1', 'A4', 3999.9), capacitor('A4', 'A2', '1.8 µF'))
    for (const name of ['unit-ringer', 'type-a', 'type-b', 'sixteen-kilohm'] as const)
      assertClose(three(name), own(name) ?? 0, { relative: 1e-9 }, name)
  })

  test('does not hang on what else stands on the line, and knows of a bell resistor that is thought of', () => {
    const bare = loads(bell('A3', 'A1', 999.9))
    assertClose(bare('four-kilohm-unit'), 4, { relative: 1e-9 }, 'bare')
    const crowd = standing(
      house(
        lineText(),
        [MASTER, 'back: {is: secondary, fed from: front}'],
        ['desk: {set: ringer, in: front}', 'wall: {set: plain, in: back}'],
        ringer('ringer', bell('A3', 'A1', 999.9)),
        plainSet(600),
      ),
    )
    const read = (changes: object) =>
      crowd.context.figure(ringingLoad(crowd.net, crowd.place, 'four-kilohm-unit', RINGING, changes)).value
    assertClose(read({}), 4, { relative: 1e-9 }, 'beside another')
    const branch = crowd.net.branchIndex.get('desk/bell') ?? -1
    assertClose(read({ within: [{ branch, ohms: 3300 }] }), 4000 / 4300, { relative: 1e-9 }, 'with 3.3 kΩ')
  })

  test('of a tone ringer is larger the harder it is rung, and is found by counting too', () => {
    const tone =
      'ringer: {kind: tone-ringer, from: A1, to: A4, threshold: 12 V, load: 6.8 kΩ, rings from: 2 mA at 25 Hz}'
    const found = loads(tone, capacitor('A4', 'A2', '1 µF'))
    const easy = found('older-european') ?? 0
    const hard = found('type-a') ?? 0
    expect(easy).toBeGreaterThan(0.1)
    expect(easy).toBeLessThan(6615.7746 / Math.hypot(6800, 1 / (w(25) * 1e-6)))
    expect(hard).toBeLessThan(Math.max(7000 / 6800, 5000 / 6800))
    // 3/n of a whole number of sets
    const counted = 3 / (found('unit-ringer') ?? Number.NaN)
    assertClose(counted, Math.round(counted), { relative: 1e-12 }, 'sets counted')
    expect(counted).toBeGreaterThan(3)
  })

  test('is the same whichever way round its pair lies, in the set or outside it', () => {
    const right = loads(bell('A3', 'A1', 3999.9))
    const inside = loads(bell('A3', 'A2', 3999.9))
    const outside = standing(
      house(
        lineText(),
        [MASTER],
        ['desk: {set: ringer, in: front, reversed: yes}'],
        ringer('ringer', bell('A3', 'A1', 3999.9)),
      ),
    )
    const turned = (name: RingingLoadName) =>
      outside.context.figure(ringingLoad(outside.net, outside.place, name, RINGING)).value
    for (const name of ['four-kilohm-unit', 'type-b', 'unit-ringer'] as const) {
      assertClose(inside(name), right(name) ?? 0, { relative: 1e-9 }, `${name}, turned inside`)
      assertClose(turned(name), right(name) ?? 0, { relative: 1e-9 }, `${name}, turned outside`)
    }
    assertClose(right('four-kilohm-unit'), 1, { relative: 1e-9 }, 'one')
  })

  test('of a plug without a pair is open', () => {
    const text = ringer('ringer', bell('A3', 'A1', 4000)).text.replace('5: a, ', '')
    const one = standing(
      house(lineText(), [MASTER], ['desk: {set: ringer, in: front}'], { file: 'ringer.yaml', text }),
    )
    for (const name of ['type-a', 'unit-ringer'] as const) {
      const figure = one.context.figure(ringingLoad(one.net, one.place, name, RINGING))
      expect(figure).toMatchObject({ value: null, state: 'open', id: `ringing.load.${name}` })
    }
  })
})

describe('the loads of a house', () => {
  const sockets = [MASTER, 'back: {is: secondary, fed from: front}', 'top: {is: secondary, fed from: front}']
  const three = standing(
    house(
      lineText(),
      sockets,
      ['desk: {set: ringer, in: front}', 'wall: {set: heavy, in: back}', 'loft: {set: none, in: top}'],
      ringer('ringer', bell('A3', 'A1', 3999.9)),
      ringer('heavy', bell('A3', 'A1', 1999.9)),
      {
        file: 'none.yaml',
        text: ringer('none', bell('A3', 'A1', 3999.9)).text.replace('5: a, ', ''),
      },
    ),
  )
  test('are added within one definition; a set without a pair adds nothing', () => {
    const total = three.context.figure(
      ringingLoadTotal(three.net, three.net.places, 'four-kilohm-unit', RINGING, 'house'),
    )
    assertClose(total.value, 3, { relative: 1e-9 }, '1 + 2')
    expect(total).toMatchObject({ id: 'ringing.load.four-kilohm-unit', subject: 'house', unit: '1' })
    const none = three.context.figure(ringingLoadTotal(three.net, [], 'type-a', RINGING, 'house'))
    expect(none.value).toBe(0)
  })
})
