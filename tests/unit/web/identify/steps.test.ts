import { fileURLToPath } from 'node:url'
import { identify } from 'ringproof'
import { folderShelf } from 'ringproof/host/shelf'
import { NO_INQUIRY, readingWritten, requestOf, writtenFor } from 'ringproof/web/views/identify/steps'
import { describe, expect, test } from 'vitest'

const shelf = folderShelf([], fileURLToPath(new URL('../../../../netlists', import.meta.url)))

describe('an identification step by step', () => {
  test('an answer is written as on the command line; a bare number of a reading is ohms', () => {
    expect(writtenFor({ id: 'slot', ask: 'sighting' }, ' yes ')).toBe('slot=yes')
    expect(writtenFor({ id: 'A3 A4 on-hook', ask: 'reading' }, '0.2')).toBe('A3 A4 on-hook 0.2 Ω')
    expect(writtenFor({ id: 'A3 A4 on-hook', ask: 'reading' }, 'open')).toBe('A3 A4 on-hook open')
  })

  test('an own reading takes terminals in small letters', () => {
    expect(readingWritten({ red: 'a5', black: ' c1', condition: 'off-hook', shown: '4.35k' })).toBe(
      'A5 C1 off-hook 4.35k',
    )
  })

  test('the request holds what was found, in order, without what it has not', () => {
    const steps = [
      { found: 'seen', written: 'slot=no' },
      { found: 'skipped', written: 'dial' },
      { found: 'reading', written: 'B3 B4 on-hook 0.2 Ω' },
    ] as const
    expect(requestOf({ steps, rewires: true })).toEqual({
      seen: ['slot=no'],
      skipped: ['dial'],
      readings: ['B3 B4 on-hook 0.2 Ω'],
      rewires: true,
    })
    expect(requestOf(NO_INQUIRY)).toEqual({ seen: [], skipped: [], readings: [] })
  })

  test('three readings tell a sedge from a fescue', () => {
    const readings = [
      { red: 'A5', black: 'C1', condition: 'off-hook', shown: '4.35k' },
      { red: 'B1', black: 'B3', condition: 'off-hook', shown: 'open' },
      { red: 'B3', black: 'B4', condition: 'on-hook', shown: '0.2' },
    ].map((one) => ({ found: 'reading', written: readingWritten(one) }) as const)
    const { groups } = identify(requestOf({ steps: readings, rewires: false }), shelf)
    const names = groups.flatMap(({ sets, probability }) =>
      probability > 0.01 ? sets.map(({ set }) => set) : [],
    )
    expect(names).toContain('sedge')
    expect(names.filter((one) => one.startsWith('fescue'))).toEqual([])
  })
})
