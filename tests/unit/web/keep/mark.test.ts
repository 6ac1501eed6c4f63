import { markOf } from 'ringproof/web/keep/mark'
import { expect, test } from 'vitest'

// published test values of FNV-1a, 32 bits, from the same draft: '' 811c9dc5, 'a' e40c292c, 'foobar' bf9cf968 (from memory)
test.each([
  ['', '811c9dc5'],
  ['a', 'e40c292c'],
  ['foobar', 'bf9cf968'],
])('the mark of %j begins with its published hash', (text, hash) => {
  expect(markOf(text).slice(0, 8)).toBe(hash)
})

test('another text has another mark', () => {
  const marks = new Set(Array.from({ length: 20_000 }, (_, at) => markOf(`resistance: ${at} Ω`)))
  expect(marks.size).toBe(20_000)
})
