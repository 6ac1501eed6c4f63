import { contact } from 'ringproof/parts/contact'
import { PARTS, partSchema } from 'ringproof/parts/index'
import { describe, expect, test } from 'vitest'
import * as z from 'zod/mini'
import { accepts, spec } from './_heard.ts'

const ends = { from: 'A1', to: 'joint-1' }
const resistor = { kind: 'resistor', ...ends, resistance: '1 kΩ' }

describe('what a sheet may write for a part', () => {
  test('quantities carry their unit, value and tolerance', () => {
    expect(spec({ ...resistor, resistance: '3k3 ± 5 %' })).toMatchObject({
      resistance: { value: 3300, unit: 'Ω', tolerance: 0.05 },
    })
  })

  test.each(['A1', 'B12', 'joint-1', 'earth', 'p'])('an end may be called %s', (from) => {
    expect(accepts({ ...resistor, from })).toBe(true)
  })

  test.each(['A0', 'a.b', 'office/A1', '1a', '', 'Ab1'])('an end is not called "%s"', (from) => {
    expect(accepts({ ...resistor, from })).toBe(false)
  })

  test('a bare number, a wrong unit and an unknown key are refused', () => {
    expect(accepts({ ...resistor, resistance: 1000 })).toBe(false)
    expect(accepts({ ...resistor, resistance: '1 kV' })).toBe(false)
    expect(accepts({ ...resistor, colour: 'red' })).toBe(false)
  })

  test('an unreadable quantity tells what stood there', () => {
    const result = z.safeParse(PARTS.get('resistor')?.schema ?? z.never(), {
      ...resistor,
      resistance: '1000',
    })
    const issue = result.success ? undefined : result.error.issues[0]
    expect(issue).toMatchObject({ code: 'custom', params: { problem: { code: 'unit-missing' } } })
  })

  test('leakages, bells and quenches that short everything out are refused', () => {
    expect(accepts({ kind: 'capacitor', ...ends, capacitance: '1 µF', leakage: '0 Ω' })).toBe(false)
    expect(accepts({ kind: 'contact', ...ends, 'closed when': 'make', leakage: '0 Ω' })).toBe(false)
    expect(accepts({ kind: 'quench', ...ends, resistance: '1 Ω', capacitance: '0 F' })).toBe(false)
    expect(
      accepts({
        kind: 'bell',
        ...ends,
        resistance: '1 kΩ',
        inductance: '0 H',
        'rings from': '3 mA at 25 Hz',
      }),
    ).toBe(false)
  })

  test('exponents stay where their laws hold', () => {
    const transmitter = (p: number) =>
      accepts({ kind: 'transmitter', ...ends, resistance: '150 Ω at 40 mA', 'falls with exponent': p })
    expect([-0.1, 0, 0.8, 0.9].map(transmitter)).toEqual([false, true, true, false])
    const varistor = (exponent: number) =>
      accepts({ kind: 'varistor', ...ends, 'voltage at 1 A': '60 V', exponent })
    expect([0.9, 1, 60, 61].map(varistor)).toEqual([false, true, true, false])
  })

  test('a resistance at no current, and a bell that rings from none, are refused', () => {
    const transmitter = { kind: 'transmitter', ...ends, 'falls with exponent': 0.5 }
    expect(accepts({ ...transmitter, resistance: '150 Ω at 0 mA' })).toBe(false)
    const bell = { kind: 'bell', ...ends, resistance: '1 kΩ', inductance: '12 H' }
    expect(accepts({ ...bell, 'rings from': '0 mA at 25 Hz' })).toBe(false)
  })

  test('a contact answers to one word, by closing or by opening', () => {
    const check = (words: object) =>
      contact.check?.(spec({ kind: 'contact', ...ends, ...words }) as never).map(({ code }) => code)
    expect(check({ 'closed when': 'make' })).toEqual([])
    expect(check({ 'open when': 'break' })).toEqual([])
    expect(check({})).toEqual(['key-missing'])
    expect(check({ 'closed when': 'make', 'open when': 'break' })).toEqual(['key-doubled'])
    expect(accepts({ kind: 'contact', ...ends, 'closed when': 'ringing' })).toBe(false)
  })

  test('the gate of a contact is its word and whether it closes by it', () => {
    const gate = (words: object) => contact.gate?.(spec({ kind: 'contact', ...ends, ...words }) as never)
    expect(gate({ 'closed when': 'off-normal' })).toEqual({ word: 'off-normal', closed: true })
    expect(gate({ 'open when': 'break' })).toEqual({ word: 'break', closed: false })
    expect(gate({})).toEqual({ word: 'off-hook', closed: false })
  })

  test('any kind is told by its word, and every kind is in the union', () => {
    const any = partSchema()
    expect(z.safeParse(any, resistor).success).toBe(true)
    expect(z.safeParse(any, { ...resistor, kind: 'spark' }).success).toBe(false)
    expect([...PARTS.keys()]).toEqual([
      'resistor',
      'capacitor',
      'inductor',
      'induction-coil',
      'strap',
      'contact',
      'quench',
      'diode',
      'bridge',
      'varistor',
      'gas-tube',
      'current-resistor',
      'transmitter',
      'receiver',
      'bell',
      'tone-ringer',
      'cable',
      'voltage-source',
      'current-source',
    ])
    for (const [name, kind] of PARTS) expect(kind.kind).toBe(name)
  })
})
