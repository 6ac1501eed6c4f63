import { boardOf } from 'ringproof'
import { describe, expect, test } from 'vitest'
import { BOARDS, rewiredBy, setNamed } from './_boards.ts'

describe('what lies where', () => {
  test('a set as found has no change', () => {
    const { straps, cores, parts, slots } = boardOf(setNamed('fescue'))
    expect([...straps, ...cores, ...parts, ...slots].filter(({ change }) => change !== undefined)).toEqual([])
  })

  test('a rewire shows what was moved, fitted and taken out, and from where', () => {
    const { set, found } = rewiredBy('sedge-converted')
    const { cores, parts } = boardOf(set, found)
    const r2 = cores.find(({ thing }) => thing === 'core:handset.r2')
    expect(r2).toMatchObject({ lands: 'B2', was: 'parked', change: 'moved' })
    expect(parts.find(({ name }) => name === 'own-capacitor')?.change).toBe('taken out')
    expect(parts.find(({ name }) => name === 'bell-resistor')?.change).toBe('fitted')
  })

  test('a strap that is lifted is still there to be seen, and can be told from one that is fitted', () => {
    const lifted = rewiredBy('fescue-bell-to-b-wire')
    const { straps } = boardOf(lifted.set, lifted.found)
    expect(straps.map(({ thing, change }) => [thing, change])).toEqual([
      ['strap:B2-B3', undefined],
      ['strap:B4-B5', undefined],
      ['strap:B5-C3', 'fitted'],
      ['strap:C3-A1', 'taken out'],
    ])
  })

  test('a unit that is pulled leaves an empty slot', () => {
    const { set, found } = rewiredBy('fescue-unit-left-out')
    const [slot] = boardOf(set, found).slots
    expect(slot).toMatchObject({ change: 'taken out', needsUnit: true })
    expect(slot?.fitted).toBeUndefined()
  })

  test('only screws let a strap go, contacts stay, and it is said why', () => {
    const { straps, parts } = boardOf(setNamed('sedge'))
    const why = Object.fromEntries(straps.map(({ thing, fixed }) => [thing, fixed]))
    expect(why['strap:B3-B4']).toContain('soldered')
    expect(why['strap:A3-A4']).toContain('part of the board')
    expect(why['strap:B4-B5']).toBeUndefined()
    expect(parts.find(({ name }) => name === 'hook')?.fixed).toContain('contact')
    expect(parts.find(({ name }) => name === 'bell')?.fixed).toBeUndefined()
  })

  test('the two ends of each branch name each other', () => {
    for (const [, { parts }] of BOARDS) {
      for (const { ends } of parts) {
        expect(ends.length % 2).toBe(0)
        ends.forEach(({ other }, k) => {
          expect(other).toBe(ends[k % 2 === 0 ? k + 1 : k - 1]?.on)
        })
      }
    }
  })

  test('values are those of the sheet, word for word', () => {
    const { parts } = boardOf(setNamed('fescue'))
    const values = Object.fromEntries(parts.map((part) => [part.name, part.values]))
    expect(values['balance-c']).toBe('2 µF ± 10 %')
    expect(values.transmitter).toBe('150 Ω at 40 mA')
    expect(values.coil).toBe('a 25 Ω 0.40 H; b 37 Ω 1.07 H; c 30 Ω 0.107 H')
  })
})
