import { CORE_COLOURS, coreColour } from 'ringproof/picture/board/core-colour'
import { describe, expect, test } from 'vitest'

/** IEC 60757, code for designation of colours; from memory. */
const STANDARD = {
  black: 'BK',
  brown: 'BN',
  red: 'RD',
  orange: 'OG',
  yellow: 'YE',
  green: 'GN',
  blue: 'BU',
  violet: 'VT',
  grey: 'GY',
  white: 'WH',
  pink: 'PK',
  gold: 'GD',
  turquoise: 'TQ',
  silver: 'SR',
} as const

describe('colours of cores', () => {
  test.each(Object.entries(STANDARD))('%s is %s', (word, code) => {
    expect(coreColour(word)).toEqual({ word, code, colours: [word] })
  })

  test('the table has these and no others', () => {
    expect([...CORE_COLOURS].sort()).toEqual(Object.keys(STANDARD).sort())
  })

  test.each([
    ['green/yellow', 'GNYE', ['green', 'yellow']],
    ['green-yellow', 'GNYE', ['green', 'yellow']],
    ['white with blue', 'WHBU', ['white', 'blue']],
    ['White with a red tracer', undefined, []],
    ['white with red tracer', 'WHRD', ['white', 'red']],
    ['red and black', 'RDBK', ['red', 'black']],
    ['light blue', 'BU', ['blue']],
    ['light-blue', 'BU', ['blue']],
    [' Gray ', 'GY', ['grey']],
    ['purple', 'VT', ['violet']],
    ['slate', 'GY', ['grey']],
    ['red/white/blue', undefined, []],
    ['green/mauve', undefined, []],
    ['constructor', undefined, []],
    ['light', undefined, []],
    ['', undefined, []],
  ])('%j is %s', (word, code, colours) => {
    expect(coreColour(word)).toEqual({ word, ...(code === undefined ? {} : { code }), colours })
  })
})
