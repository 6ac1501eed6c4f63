import { type Finding, standingFindings } from 'ringproof/identify/evidence'
import { impliedStraps } from 'ringproof/identify/straps'
import { describe, expect, test } from 'vitest'

const read = (red: string, black: string, ohms: number, condition = 'on-hook'): Finding => ({
  found: 'reading',
  pair: { red, black, condition },
  ohms,
  times: 1,
})

describe('the straps that readings imply', () => {
  test('join terminals in groups, whichever way round they were read', () => {
    const { groups, apart } = impliedStraps(
      [
        read('B4', 'B3', 0.2),
        read('B4', 'B5', 0.1),
        read('A10', 'A2', 0),
        read('A2', 'B3', 470),
        read('C1', 'C2', Number.POSITIVE_INFINITY),
      ],
      3,
    )
    expect(groups).toEqual([
      ['A2', 'A10'],
      ['B3', 'B4', 'B5'],
    ])
    expect(apart).toEqual([
      ['A2', 'B3'],
      ['C1', 'C2'],
    ])
  })

  test('are no straps where another condition parts them', () => {
    const { groups, contacts } = impliedStraps(
      [read('A1', 'A2', 0.2, 'off-hook'), read('A1', 'A2', Number.POSITIVE_INFINITY)],
      3,
    )
    expect(groups).toEqual([])
    expect(contacts).toEqual([['A1', 'A2']])
  })

  test('say which reading others contradict', () => {
    const all = [read('A1', 'A2', 0.1), read('A2', 'A3', 0.1), read('A1', 'A3', 900)]
    expect(impliedStraps(all, 3)).toMatchObject({
      groups: [['A1', 'A2', 'A3']],
      against: [['A1', 'A3']],
      apart: [],
    })
  })
})

describe('findings', () => {
  test('count once, the last of them; the same reading again counts as read so often', () => {
    expect(standingFindings([read('A1', 'A2', 100), read('A1', 'A2', 102)])).toEqual([
      { ...read('A1', 'A2', 102), times: 2 },
    ])
    expect(standingFindings([read('A1', 'A2', 100), read('A1', 'A2', 2)])).toEqual([read('A1', 'A2', 2)])
    const open = read('A1', 'A2', Number.POSITIVE_INFINITY)
    expect(standingFindings([open, open, open])).toEqual([{ ...open, times: 3 }])
    // a share of what is open would be anything
    expect(standingFindings([open, read('A1', 'A2', 0.2)])).toEqual([read('A1', 'A2', 0.2)])
    expect(standingFindings([read('A1', 'A2', 0.2), open])).toEqual([open])
  })
})
