import { ProblemError } from 'ringproof'
import { deliveredInstruments, kitOf } from 'ringproof/answer/instruments-table'
import { swing, widened } from 'ringproof/meter/accuracy'
import { type BatteryRange, rangesFor, SHOWN } from 'ringproof/meter/instrument'
import { readInstruments } from 'ringproof/meter/instruments'
import { describe, expect, test } from 'vitest'
import { assertClose } from '../../support/close.ts'
import { NEEDLE } from './_bench.ts'

const GOOD = `ringproof: 1
instruments:
  mine:
    says: my own
    source: its booklet
    red lead: positive
    shows by: digits
    ranges:
      ohms-1k: {method: constant-current, current: 1 mA, open voltage: 3 V, full scale: 1 kΩ, resolution: 1 Ω, accuracy: 0.01}
`

function problemsOf(text: string) {
  try {
    readInstruments({ file: 'mine.yaml', text })
  } catch (error) {
    if (error instanceof ProblemError) return error.problems
    throw error
  }
  return []
}

describe('the delivered instruments', () => {
  const { instruments, habits } = deliveredInstruments()

  test('are a digital one and a needle, read once, each with ohms and volts', () => {
    expect([...instruments.keys()]).toEqual(['digital', 'needle'])
    expect(deliveredInstruments()).toBe(deliveredInstruments())
    for (const one of instruments.values()) {
      expect(rangesFor(one, 'ohms').length).toBeGreaterThan(2)
      expect(rangesFor(one, 'volts').length).toBeGreaterThan(2)
      expect(one.source).toBe('common practice, no source')
    }
  })

  // facts 9: ohm ranges have 0.2 to 3 V open, a diode range 1 mA and 2.5 to 3 V; common practice, no source
  test('have the voltages and currents of common practice', () => {
    for (const one of instruments.values()) {
      for (const range of Object.values(one.ranges)) {
        if (range.method === 'constant-current') {
          expect(range['open voltage'].value).toBeGreaterThanOrEqual(0.2)
          expect(range['open voltage'].value).toBeLessThanOrEqual(3)
          expect(range.current.value * range['full scale'].value).toBeLessThanOrEqual(
            range['open voltage'].value,
          )
        }
        if (range.method === 'diode')
          expect([range.current.value, range['open voltage'].value]).toEqual([1e-3, 3])
      }
    }
    expect(NEEDLE.instrument['red lead']).toBe('negative')
    const volts = rangesFor(NEEDLE.instrument, 'volts').map(({ range }) => range)
    for (const range of volts)
      if (range.method === 'volts')
        assertClose(
          range['input resistance'].value / range['full scale'].value,
          20_000,
          { relative: 1e-12 },
          'Ω/V',
        )
  })

  test('say what hand and ear add, and from where', () => {
    expect(Object.keys(habits).sort()).toEqual(['click', 'loud', 'open', 'scrape', 'transmitter-spread'])
    for (const habit of Object.values(habits)) expect(habit.source).toBe('from memory')
  })

  test('sort the ranges of each kind by their full scale', () => {
    for (const one of instruments.values())
      for (const shows of SHOWN) {
        const scales = rangesFor(one, shows).map(({ range }) => range['full scale'].value)
        expect(scales).toEqual(scales.toSorted((p, q) => p - q))
      }
  })
})

describe('a table of one’s own', () => {
  test('is taken, its habits from the delivered one', () => {
    const kit = kitOf(undefined, { file: 'mine.yaml', text: GOOD })
    expect(kit.instrument.name).toBe('mine')
    expect(kit.instrument.source).toBe('its booklet')
    expect(kit.habits).toEqual(deliveredInstruments().habits)
  })

  test('needs no source, and takes its accuracy as a share or in percent', () => {
    const bare = GOOD.replace('    source: its booklet\n', '').replace('accuracy: 0.01', 'accuracy: 1 %')
    const { instrument } = kitOf(undefined, { file: 'mine.yaml', text: bare })
    expect(instrument.source).toBe('not said')
    expect(instrument.ranges['ohms-1k']?.accuracy).toBe(0.01)
    const plain = kitOf(undefined, { file: 'mine.yaml', text: GOOD }).instrument.ranges['ohms-1k']
    expect(plain?.accuracy).toBe(0.01)
  })

  test('shows an example of every key that is missing', () => {
    const lacking = [
      GOOD.replace(/instruments:[\s\S]*/, ''),
      GOOD.replace(/ {4}says: .*\n/, ''),
      GOOD.replace(/ {4}red lead: .*\n/, ''),
      GOOD.replace(/ {4}shows by: .*\n/, ''),
      GOOD.replace(/ {4}ranges:[\s\S]*/, ''),
      ...['method: constant-current, ', 'current: 1 mA, ', 'open voltage: 3 V, ', 'full scale: 1 kΩ, '].map(
        (key) => GOOD.replace(key, ''),
      ),
      GOOD.replace(/\{method: constant-current.*\}/, '{method: battery}'),
      GOOD.replace(/\{method: constant-current.*\}/, '{method: capacitance}'),
      GOOD.replace(/\{method: constant-current.*\}/, '{method: alternating-volts}'),
    ]
    for (const text of lacking) {
      const missing = problemsOf(text).filter(({ code }) => code === 'key-missing')
      expect({ text, count: missing.length > 0 }).toEqual({ text, count: true })
      for (const { mend } of missing) expect(mend).toMatch(/^add `[a-z ]+: .+`$/s)
    }
    // what a mend shows can be read
    const [whole] = problemsOf(GOOD.replace(/instruments:[\s\S]*/, ''))
    const text = `ringproof: 1\n${/`(.*)`/s.exec(whole?.mend ?? '')?.[1]}\n`
    expect(problemsOf(text)).toEqual([])
  })

  test('with several instruments needs the name of one, and says how to write it', () => {
    const two = GOOD + GOOD.split('\n').slice(2).join('\n').replace('mine:', 'other:')
    expect(kitOf('other', { file: 'mine.yaml', text: two }).instrument.name).toBe('other')
    const mend = (name?: string): string => {
      try {
        kitOf(name, { file: 'mine.yaml', text: two })
      } catch (error) {
        if (error instanceof ProblemError) return error.problems.map((one) => one.mend ?? '').join()
        throw error
      }
      return ''
    }
    expect(mend()).toBe('write `--instrument mine.yaml:mine`')
    expect(mend('othr')).toBe('write `--instrument mine.yaml:other`')
  })

  test.each([
    ['a quantity without its unit', GOOD.replace('1 mA', '0.001'), 'unit-missing'],
    ['a quantity of another kind', GOOD.replace('full scale: 1 kΩ', 'full scale: 1 V'), 'unit-wrong'],
    ['a current of nothing', GOOD.replace('1 mA', '0 mA'), 'quantity-out-of-range'],
    ['an unknown key', GOOD.replace('open voltage', 'open volts'), 'key-unknown'],
    ['no YAML', 'instruments: [', 'syntax'],
    ['a needle without its swing', GOOD.replace('digits', 'needle'), 'key-missing'],
    ['no range', GOOD.replace(/ranges:[\s\S]*/, 'ranges: {}\n'), 'key-missing'],
    ['an alias', GOOD.replace('my own', '&a my own').replace('its booklet', '*a'), 'alias-refused'],
    [
      'two methods for the same',
      `${GOOD}      ohms-2k: {method: battery, battery: 1.5 V, mid scale: 20 Ω, full scale: 2 kΩ, arc: 0.03}\n`,
      'contradiction',
    ],
  ])('is refused with %s', (_says, text, code) => {
    const problems = problemsOf(text)
    expect(problems.map((one) => one.code)).toContain(code)
  })

  test('says where it is wrong', () => {
    const [problem] = problemsOf(GOOD.replace('1 mA', '1 V'))
    expect(problem?.place).toMatchObject({ file: 'mine.yaml', line: 9 })
  })
})

describe('how far an instrument may be off', () => {
  const range = NEEDLE.instrument.ranges['ohms-x100'] as BatteryRange

  // deflection M/(M + R); ± 3 % of the arc at its middle is R between 0.94 and 1.06 of 2 kΩ over …
  test('is for a needle’s ohms a share of the arc', () => {
    const { least, most } = widened(range, { least: 2000, most: 2000 })
    assertClose(least, 2000 * (1 / 0.53 - 1), { relative: 1e-12 }, 'least')
    assertClose(most, 2000 * (1 / 0.47 - 1), { relative: 1e-12 }, 'most')
    expect(swing(2000, 2000)).toBe(0.5)
  })

  test('has no bound at the far end of a needle’s ohms and is nothing less at its zero', () => {
    expect(widened(range, { least: 90_000, most: 90_000 }).most).toBeNull()
    expect(widened(range, { least: 0, most: 0 }).least).toBe(0)
  })
})
