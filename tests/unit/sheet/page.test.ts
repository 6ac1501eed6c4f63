import { excerptOf, pageOf, placeAt } from 'ringproof/sheet/page'
import { describe, expect, test } from 'vitest'

const page = (text: string) => pageOf({ file: 'a.yaml', text })

describe('a place', () => {
  test('counts lines and columns from 1, columns in UTF-16 units', () => {
    const text = 'a: 1\nbell: 😀 x\n'
    expect(placeAt(page(text), text.indexOf('x'), text.indexOf('x') + 1)).toEqual({
      file: 'a.yaml',
      line: 2,
      column: 10,
      length: 1,
    })
  })

  test('ends with its first line, carriage return and line feed left out', () => {
    expect(placeAt(page('ab: {\r\n}\r\n'), 4, 8)).toMatchObject({ line: 1, column: 5, length: 1 })
    expect(placeAt(page('ab: {\n}\n'), 0, 8)).toMatchObject({ line: 1, column: 1, length: 5 })
  })

  test('is at least one column long and never behind the end of the text', () => {
    expect(placeAt(page('ab'), 2, 2)).toMatchObject({ line: 1, column: 3, length: 1 })
    expect(placeAt(page('ab\n'), 99, 120)).toMatchObject({ line: 2, column: 1, length: 1 })
  })

  test('does not count a byte order mark in front, as editors do not', () => {
    const marked = page('\uFEFFab: 1')
    expect(marked.text).toBe('ab: 1')
    expect(placeAt(marked, 0, 2)).toMatchObject({ line: 1, column: 1, length: 2 })
  })
})

describe('an excerpt', () => {
  test('is the line as written', () => {
    expect(excerptOf(page('a: 1\r\n  b: ½ µF\r\n'), 2)).toBe('  b: ½ µF')
    expect(excerptOf(page('a: 1\n'), 2)).toBe('')
  })

  test('shows what could steer a terminal as dots, column for column', () => {
    expect(excerptOf(page('a\u001b[31m\u202eb'), 1)).toBe('a·[31m·b')
  })

  test('is left out for a line that is not there, or longer than 2000 columns', () => {
    expect(excerptOf(page('a'), 2)).toBeUndefined()
    expect(excerptOf(page('a'.repeat(2000)), 1)).toHaveLength(2000)
    expect(excerptOf(page('a'.repeat(2001)), 1)).toBeUndefined()
  })
})
