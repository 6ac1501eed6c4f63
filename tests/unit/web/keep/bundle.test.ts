import fc from 'fast-check'
import { bundled, unbundled } from 'ringproof/web/keep/bundle'
import { fileFault } from 'ringproof/web/keep/keep'
import { describe, expect, test } from 'vitest'
import { SEED } from '../../../support/seed.ts'

const file = fc.stringMatching(/^[a-z0-9-]{1,20}(\/[a-z0-9-]{1,20}){0,2}$/).map((stem) => `${stem}.yaml`)
const sheets = fc.uniqueArray(fc.record({ file, text: fc.string({ unit: 'grapheme' }) }), {
  selector: (one) => one.file,
})

describe('everything in one file', () => {
  test('comes back word for word, whatever the texts hold', () => {
    fc.assert(
      fc.property(sheets, (all) => {
        expect(unbundled(bundled(all))).toEqual({ sheets: all, faults: [] })
      }),
      { seed: SEED },
    )
  })

  test('holds files and texts, and no marks', () => {
    const text = bundled([{ file: 'a.yaml', text: 't', mark: 'm' } as never])
    expect(JSON.parse(text)).toEqual({ ringproof: 'sheets/1', sheets: [{ file: 'a.yaml', text: 't' }] })
  })

  test('is refused in words, never thrown, whatever it is', () => {
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.json()), (text) => {
        const { sheets: none, faults } = unbundled(text)
        expect(none).toEqual([])
        expect(faults).not.toEqual([])
      }),
      { seed: SEED },
    )
  })

  test('gives the good sheets that stand beside bad ones', () => {
    const good = { file: 'good.yaml', text: 'x' }
    const list = [
      good,
      null,
      { file: '../out.yaml', text: '' },
      { file: 'a.txt', text: '' },
      good,
      { file: 'b.yaml', text: 3 },
    ]
    const { sheets: taken, faults } = unbundled(JSON.stringify({ ringproof: 'sheets/1', sheets: list }))
    expect(taken).toEqual([good])
    expect(faults.map((fault) => fault.slice(0, 7))).toEqual([
      'Sheet 2',
      'Sheet 3',
      'Sheet 4',
      'Sheet 5',
      'Sheet 6',
    ])
  })

  test('of another version is left alone', () => {
    expect(unbundled(JSON.stringify({ ringproof: 'sheets/2', sheets: [] })).faults).toHaveLength(1)
    expect(unbundled(JSON.stringify({ ringproof: 'sheets/1' })).faults).toHaveLength(1)
  })
})

describe('names of files', () => {
  test.each(['a.yaml', 'b/c.yaml', 'Über mir.yaml'])('%s can be', (name) => {
    expect(fileFault(name)).toBeUndefined()
  })
  test.each([
    'a.txt',
    '../a.yaml',
    '/a.yaml',
    '.a.yaml',
    'a/.b/c.yaml',
    'a\\b.yaml',
    'a//b.yaml',
    'a\u0000.yaml',
    `${'a'.repeat(200)}.yaml`,
  ])('%j cannot be', (name) => {
    expect(fileFault(name)).toBeDefined()
  })
})
