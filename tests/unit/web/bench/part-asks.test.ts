import { ProblemError } from 'ringproof'
import { partForms, partMove } from 'ringproof/web/worker/part-asks'
import { describe, expect, it } from 'vitest'

const codes = (act: () => unknown): readonly string[] => {
  try {
    act()
    return []
  } catch (thrown) {
    return thrown instanceof ProblemError ? thrown.problems.map(({ code }) => code) : ['thrown otherwise']
  }
}

describe('partForms', () => {
  it('asks for ends, quantities with an example, and what may be left out', () => {
    const capacitor = partForms().find(({ part }) => part === 'capacitor')
    expect(capacitor?.fields.map(({ key, sort, needed }) => [key, sort, needed])).toEqual([
      ['from', 'end', true],
      ['to', 'end', true],
      ['capacitance', 'quantity', true],
      ['leakage', 'quantity', false],
    ])
    expect(capacitor?.fields[2]?.example).toBe('1.8 µF')
  })
  it('leaves out kinds that no plain form can say', () => {
    expect(partForms().map(({ part }) => part)).not.toContain('induction-coil')
  })
  it('takes all ends of a bridge for ends', () => {
    const bridge = partForms().find(({ part }) => part === 'bridge')
    const ends = bridge?.fields.filter(({ sort }) => sort === 'end').map(({ key }) => key)
    expect(ends).toEqual(['first', 'second', 'plus', 'minus'])
  })
})

describe('partMove', () => {
  it('reads quantities in the grammar of the sheets', () => {
    const move = partMove('meadow', 'extra', 'resistor', { from: 'A1', to: 'B2', resistance: '3k3' })
    expect(move).toMatchObject({
      do: 'fit part',
      what: 'extra',
      with: { kind: 'resistor', from: 'A1', to: 'B2' },
    })
    expect(move).toHaveProperty('with.resistance.value', 3300)
    expect(move).not.toHaveProperty('place')
  })
  it('refuses as the reader does, without lines that nobody wrote', () => {
    const bare = { from: 'A1', to: 'B2', resistance: '3300' }
    expect(codes(() => partMove('meadow', 'extra', 'resistor', bare))).toEqual(['unit-missing'])
    expect(codes(() => partMove('meadow', 'extra', 'resistor', { from: 'A1', to: 'B2' }))).toEqual([
      'key-missing',
    ])
    expect(
      codes(() => partMove('meadow', 'Not a name', 'resistor', { ...bare, resistance: '1 kΩ' })),
    ).toHaveLength(1)
  })
  it('takes what is typed for one value, whatever stands in it', () => {
    const sly = { from: 'A1', to: 'B2', resistance: '1 kΩ}, onto: {x: "y"' }
    expect(codes(() => partMove('meadow', 'extra', 'resistor', sly))).toHaveLength(1)
  })
})
