import { presentedBy, textShelf } from 'ringproof'
import { describe, expect, test } from 'vitest'

const sheet = (file: string, name: string, more = '') => ({
  file,
  text: `ringproof: 1\nsheet: set\nname: ${name}\n${more}`,
})

describe('a shelf of texts', () => {
  const shelf = textShelf(
    [sheet('b/two.yaml', 'one', 'title: second\n'), sheet('c/one.yaml', 'one'), sheet('a/one.yaml', 'one')],
    [sheet('demo/one.yaml', 'one'), sheet('demo/two.yaml', 'two'), { file: 'x', text: 'words' }],
  )

  test('finds one’s own before the packaged, by file name', () => {
    expect(shelf.find('set', 'one')?.file).toBe('a/one.yaml')
    expect(shelf.twins?.('set', 'one')).toEqual(['a/one.yaml', 'c/one.yaml', 'b/two.yaml'])
    expect(shelf.find('set', 'two')?.file).toBe('demo/two.yaml')
    expect(shelf.find('unit', 'two')).toBeUndefined()
    expect(shelf.twins?.('unit', 'two')).toEqual([])
  })

  test('names each once, sorted', () => {
    expect(shelf.names('set')).toEqual(['one', 'two'])
    expect(shelf.names('line')).toEqual([])
  })
})

describe('what a sheet presents itself as', () => {
  const title = (line: string) => presentedBy(`sheet: set\nname: x\n${line}\n`)?.title

  test('is kind, name and title of its first lines', () => {
    expect(presentedBy('\uFEFFsheet: "set"\r\nname: \'x\' # its name\r\n')).toEqual({
      kind: 'set',
      name: 'x',
    })
    expect(presentedBy('sheet: set\n')).toBeUndefined()
    expect(presentedBy('  sheet: set\n  name: x\n')).toBeUndefined()
  })

  test('a title in one line, without quotation marks and comment', () => {
    expect(title('title: a set (wrong)')).toBe('a set (wrong)')
    expect(title('title: a set # why')).toBe('a set')
    expect(title('title: "a: b" # why')).toBe('a: b')
    expect(title("title: 'it''s'")).toBe("it's")
    expect(title('title: "a \\" b"')).toBeUndefined()
    expect(title('title: >-\n  folded')).toBeUndefined()
    expect(title('')).toBeUndefined()
  })
})
