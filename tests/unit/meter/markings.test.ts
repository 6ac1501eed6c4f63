import { stand } from 'ringproof/answer/standing'
import { markingsOf } from 'ringproof/meter/markings'
import { placeOf } from 'ringproof/netlist/netlist'
import { kindOf } from 'ringproof/parts/index'
import { describe, expect, test } from 'vitest'
import { DEMO } from '../../support/bench.ts'

describe('what resistors are marked with', () => {
  const marking = (value: number, tolerance?: number) => {
    const resistance = { value, unit: 'Ω', text: '', ...(tolerance === undefined ? {} : { tolerance }) }
    return kindOf({ kind: 'resistor' }).marking?.({ kind: 'resistor', resistance } as never)
  }

  // IEC 60062, secondary copy; values of E24 by IEC 60063, secondary copy
  test('is their bands, the first one first, of two digits where two tell the value', () => {
    expect(marking(3300, 0.05)).toEqual({ value: 3300, bands: ['orange', 'orange', 'red', 'gold'] })
    expect(marking(470e3, 0.2)).toEqual({ value: 470e3, bands: ['yellow', 'violet', 'yellow'] })
    expect(marking(1.5, 0.1)?.bands).toEqual(['brown', 'green', 'gold', 'silver'])
  })

  test('has three digits where two do not tell it, and the preferred value that comes nearest', () => {
    expect(marking(316, 0.01)).toEqual({
      value: 316,
      bands: ['orange', 'brown', 'blue', 'black', 'brown'],
      preferred: 330,
    })
  })

  test('is none without a tolerance, with one that no band means, or with more digits than bands tell', () => {
    for (const one of [marking(3300), marking(3300, 0.15), marking(3312, 0.01)])
      expect(one).not.toHaveProperty('bands')
    expect(marking(0)).toEqual({ value: 0 })
  })

  test('is listed for the resistors of a place, and for no other part', () => {
    const { net } = stand({ target: 'fescue', on: 'none' }, DEMO)
    expect(markingsOf(net, placeOf(net, 'fescue')).map(({ part }) => part)).toEqual([
      'fescue/balance-r',
      'fescue/balance-r2',
      'fescue/hush-r',
      'fescue/bell-resistor',
    ])
  })
})
