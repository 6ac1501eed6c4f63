import * as fc from 'fast-check'
import {
  type Band,
  bandRoles,
  markedDigits,
  readMarking,
  writeMarking,
} from 'ringproof/quantities/colour-code'
import { PREFERRED } from 'ringproof/quantities/preferred'
import { readQuantity } from 'ringproof/quantities/quantity'
import { describe, expect, it } from 'vitest'
import { SEED } from '../../support/seed.ts'

const bands = (text: string): Band[] => text.split(' ') as Band[]
const ohms = (text: string): number | undefined => {
  const marking = readMarking(bands(text))
  return marking && Number(`${marking.digits}e${marking.power}`)
}

// IEC 60062, secondary copy: SEEN-S for the tables, DERIVED for the examples
describe('the colour code', () => {
  it.each([
    ['orange orange red gold', 3300, 0.05],
    ['orange orange black brown brown', 3300, 0.01],
    ['yellow violet yellow', 470_000, 0.2],
    ['brown black gold gold', 1, 0.05],
    ['red violet silver silver', 0.27, 0.1],
    ['white white white white grey', 999e9, 0.0005],
    ['brown black black black violet', 100, 0.001],
  ])('reads %s', (text, value, tolerance) => {
    expect(ohms(text)).toBe(value)
    expect(readMarking(bands(text))?.tolerance).toBe(tolerance)
  })

  it('counts black 0 to white 9, and multiplies by silver 0.01, gold 0.1, black 1 to white 1e9', () => {
    const digits = ['brown', 'red', 'orange', 'yellow', 'green', 'blue', 'violet', 'grey', 'white']
    for (const [at, colour] of digits.entries()) {
      expect(ohms(`${colour} black black`)).toBe(10 * (at + 1))
      expect(ohms(`brown ${colour} black`)).toBe(11 + at)
      expect(ohms(`brown black ${colour}`)).toBe(10 * 10 ** (at + 1))
    }
    expect(ohms('brown black silver')).toBe(0.1)
    expect(ohms('brown black gold')).toBe(1)
  })

  it('has its tolerances and temperature coefficients', () => {
    const tolerances = {
      ...{ brown: 0.01, red: 0.02, green: 0.005, blue: 0.0025, violet: 0.001, grey: 0.0005 },
      ...{ gold: 0.05, silver: 0.1 },
    }
    for (const [colour, tolerance] of Object.entries(tolerances)) {
      expect(readMarking(bands(`red red red ${colour}`))?.tolerance).toBe(tolerance)
      expect(readMarking(bands(`red red red red ${colour}`))?.tolerance).toBe(tolerance)
    }
    const drifts = {
      ...{ black: 250, brown: 100, red: 50, orange: 15, yellow: 25 },
      ...{ green: 20, blue: 10, violet: 5, grey: 1 },
    }
    for (const [colour, drift] of Object.entries(drifts)) {
      expect(readMarking(bands(`red red red red brown ${colour}`))?.drift).toBe(drift)
    }
    expect(readMarking(bands('red red red red brown'))).not.toHaveProperty('drift')
  })

  it.each([
    'red red',
    'red red red red brown red red',
    'black red red gold',
    'gold red red red',
    'red gold red',
    'red red red black',
    'red red red orange',
    'red red red red white',
    'red red red red brown white',
    'red red red red brown gold',
  ])('refuses %s', (text) => {
    expect(readMarking(bands(text))).toBeUndefined()
  })

  it('gives bands their roles by their number', () => {
    expect(bandRoles(3)).toEqual(['digit', 'digit', 'multiplier'])
    expect(bandRoles(4)).toEqual(['digit', 'digit', 'multiplier', 'tolerance'])
    expect(bandRoles(6)).toEqual(['digit', 'digit', 'digit', 'multiplier', 'tolerance', 'drift'])
    for (const count of [0, 1, 2, 7]) expect(bandRoles(count)).toBeUndefined()
  })
})

describe('bands for a value', () => {
  const written = (value: number, digits: 2 | 3, tolerance: number, drift?: number): string | undefined => {
    const marked = markedDigits(value, digits)
    return (
      marked && writeMarking({ ...marked, tolerance, ...(drift === undefined ? {} : { drift }) })?.join(' ')
    )
  }

  it('are those of the examples', () => {
    expect(written(3300, 2, 0.05)).toBe('orange orange red gold')
    expect(written(3300, 3, 0.01)).toBe('orange orange black brown brown')
    expect(written(470_000, 2, 0.2)).toBe('yellow violet yellow')
    expect(written(0.27, 2, 0.1)).toBe('red violet silver silver')
    expect(written(249, 3, 0.01, 50)).toBe('red yellow white black brown red')
  })

  it('do not exist for more digits, foreign tolerances, drifts or powers', () => {
    expect(written(3333, 3, 0.01)).toBeUndefined()
    expect(written(333, 2, 0.05)).toBeUndefined()
    expect(written(3300, 2, 0.03)).toBeUndefined()
    expect(written(3300, 3, 0.2)).toBeUndefined()
    expect(written(3300, 3, 0.01, 60)).toBeUndefined()
    expect(written(3300, 2, 0.05, 100)).toBeUndefined()
    expect(written(0.01, 2, 0.05)).toBeUndefined()
    expect(written(1e12, 2, 0.05)).toBeUndefined()
    for (const value of [0, -3300, Number.NaN, Number.POSITIVE_INFINITY]) {
      expect(markedDigits(value, 2)).toBeUndefined()
    }
    expect(writeMarking({ digits: '033', power: 0, tolerance: 0.01 })).toBeUndefined()
  })
})

describe('every preferred value', () => {
  const tolerances = [0.0005, 0.001, 0.0025, 0.005, 0.01, 0.02, 0.05, 0.1]

  it('of E24 in every decade with every tolerance goes through 3, 4, 5 and 6 bands and back', () => {
    let trips = 0
    for (const value of PREFERRED.E24) {
      for (let power = -2; power <= 9; power += 1) {
        const exact = Number(`${value}e${power}`)
        for (const digits of [2, 3] as const) {
          const marked = markedDigits(exact, digits)
          if (marked === undefined) throw new Error(`${exact} has no ${digits} digits`)
          // a third digit 0 takes one power of ten away: below 0.1 and above 10 GΩ there is no band for it
          if (marked.power < -2) continue
          for (const tolerance of digits === 2 ? [...tolerances, 0.2] : tolerances) {
            for (const drift of digits === 2
              ? [undefined]
              : [undefined, 250, 100, 50, 25, 20, 15, 10, 5, 1]) {
              const marking = { ...marked, tolerance, ...(drift === undefined ? {} : { drift }) }
              const written = writeMarking(marking)
              expect(written, `${exact} Ω`).toBeDefined()
              expect(readMarking(written ?? [])).toEqual(marking)
              const read = readQuantity((written ?? []).join(' '), 'resistance')
              expect(read).toMatchObject({ ok: true, quantity: { value: exact, tolerance, unit: 'Ω' } })
              trips += 1
            }
          }
        }
      }
    }
    // 12 powers by 9 tolerances in two digits; 11 by 8 tolerances by 10 drifts in three
    expect(trips).toBe(24 * (12 * 9 + 11 * 8 * 10))
  })

  it('as any bands that mean something are the only bands of what they mean', () => {
    const colours = [
      'black',
      'brown',
      'red',
      'orange',
      'yellow',
      'green',
      'blue',
      'violet',
      'grey',
      'white',
      'gold',
      'silver',
    ] as const
    let meant = 0
    fc.assert(
      fc.property(fc.array(fc.constantFrom(...colours), { minLength: 3, maxLength: 6 }), (chosen) => {
        const marking = readMarking(chosen)
        if (marking === undefined) return
        meant += 1
        expect(writeMarking(marking)).toEqual(chosen)
      }),
      { seed: SEED, numRuns: 3000 },
    )
    expect(meant).toBeGreaterThan(500)
  })
})
