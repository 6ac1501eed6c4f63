import fc from 'fast-check'
import { readSheet } from 'ringproof/sheet/read'
import { describe, test } from 'vitest'
import { SEED } from '../../support/seed.ts'
import { SKELETONS, sheetsIn, skeletonShelf } from '../../support/sheets.ts'

const shelf = skeletonShelf()
const skeletons = sheetsIn(SKELETONS)

/** Reads, and checks what holds for every text whatsoever. */
function judge(file: string, text: string): void {
  const { sheet, problems } = readSheet({ file, text }, shelf)
  const errors = problems.filter(({ severity }) => severity === 'error')
  if ((sheet === undefined) !== errors.length > 0) throw new Error('neither a sheet nor an error, or both')
  const lines = text.replace(/^\uFEFF/, '').split('\n')
  for (const { place, found, expected, excerpt } of problems) {
    if (found === '' || expected === '' || place === undefined)
      throw new Error('a problem without words or place')
    if (place.file !== file) continue
    const line = lines[place.line - 1]
    if (line === undefined || place.column < 1 || place.column > line.length + 1 || place.length < 1) {
      throw new Error(`a place outside the text: ${JSON.stringify(place)}`)
    }
    if (excerpt !== undefined && excerpt.length !== line.replace(/\r$/, '').length)
      throw new Error('an excerpt of another length')
  }
}

/** Words and signs of which sheets and nonsense are made. */
const PIECES = [
  'ringproof: 1\n',
  'sheet: set\n',
  'sheet: circuit\n',
  'sheet: rewire\n',
  'name: x\n',
  'parts:\n',
  'moves:\n',
  'strips: ',
  'based on: fescue\n',
  'without: [parts.bell]\n',
  '{kind: resistor, ',
  'from: A1, ',
  'to: earth, ',
  'resistance: 1 kΩ',
  'land core: handset.r1',
  '  ',
  '- ',
  '? ',
  ': ',
  ', ',
  '\n',
  '\t',
  '[',
  ']',
  '{',
  '}',
  '"',
  "'",
  '|\n',
  '>\n',
  '#',
  '&a ',
  '*a',
  '!t ',
  '<<: ',
  '---\n',
  '...\n',
  '%',
  '\\',
  '1',
  '.nan',
  '-',
  'é',
  '😀',
  '\u2028',
  '__proto__: ',
  'constructor: ',
  '\r\n',
  '\u0000',
  '\ud800',
  'null',
  'A1',
]

describe('any text whatsoever', () => {
  test('gives a sheet or an error with a place inside the text, and never throws', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 200 }), (text) => judge('any.yaml', text)),
      {
        seed: SEED,
        numRuns: 400,
      },
    )
  })

  test('does so when it is made of the pieces of sheets', () => {
    const text = fc.array(fc.constantFrom(...PIECES), { maxLength: 40 }).map((pieces) => pieces.join(''))
    fc.assert(
      fc.property(text, (made) => judge('any.yaml', made)),
      { seed: SEED, numRuns: 1500 },
    )
  })
})

describe('a skeleton', () => {
  const place = fc.double({ min: 0, max: 1, noNaN: true })
  const change = fc.record({
    at: place,
    cut: fc.nat({ max: 12 }),
    put: fc.oneof(fc.constantFrom(...PIECES), fc.string({ maxLength: 3 })),
  })

  test('with a few places changed gives a sheet or an error, and never throws', () => {
    const changed = fc.record({
      sheet: fc.constantFrom(...skeletons),
      changes: fc.array(change, { minLength: 1, maxLength: 3 }),
    })
    fc.assert(
      fc.property(changed, ({ sheet, changes }) => {
        const text = changes.reduce((left, { at, cut, put }) => {
          const offset = Math.floor(at * left.length)
          return left.slice(0, offset) + put + left.slice(offset + cut)
        }, sheet.text)
        judge(sheet.file, text)
      }),
      { seed: SEED, numRuns: 600 },
    )
  })

  test('with any of its lines left out or doubled gives a sheet or an error', () => {
    for (const { file, text } of skeletons) {
      const lines = text.split('\n')
      lines.forEach((line, at) => {
        judge(file, lines.toSpliced(at, 1).join('\n'))
        judge(file, lines.toSpliced(at, 0, line).join('\n'))
      })
    }
  })

  test('with any of its scalars replaced by something else gives a sheet or an error', () => {
    // an odd number of them, so that each scalar's neighbour meets two others
    const others = [
      '7',
      '.inf',
      'null',
      '[]',
      '{}',
      '"two words"',
      'constructor',
      '{a: 1}',
      '[[1]]',
      'yes',
      '-5 V',
    ]
    let turn = 0
    for (const { file, text } of skeletons) {
      for (const { index, 1: value = '' } of text.matchAll(/: ([^\s{[,}\]#][^,}\]#\n]*)/g)) {
        // two of them each: all of them together take ten times as long and have found nothing more
        for (const other of [others[turn++ % others.length], others[turn++ % others.length]]) {
          judge(file, `${text.slice(0, index + 2)}${other}${text.slice(index + 2 + value.length)}`)
        }
      }
    }
  })
})
