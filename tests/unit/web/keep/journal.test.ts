import { forget, leftBehind, type Noted, type Notes, note, notedBy } from 'ringproof/web/keep/journal'
import { describe, expect, test } from 'vitest'

/** A browser's storage with room for so many characters. */
function storage(room: number = Number.POSITIVE_INFINITY): Notes & { readonly all: Map<string, string> } {
  const all = new Map<string, string>()
  return {
    all,
    get length() {
      return all.size
    },
    key: (at) => [...all.keys()][at] ?? null,
    getItem: (key) => all.get(key) ?? null,
    setItem(key, value) {
      if (value.length > room) throw new DOMException('full', 'QuotaExceededError')
      all.set(key, value)
    },
    removeItem: (key) => void all.delete(key),
  }
}

const one: Noted = {
  tab: 't1',
  at: 5,
  work: {
    set: 'some-set',
    moves: [{ strap: 'A1-A2' } as never],
    title: 'A title',
    notes: ['a note'],
    name: 'n',
  },
  kept: { set: 'some-set', moves: [] },
  origin: { file: 'n.yaml', text: 'x: 1', mark: 'ab' },
}

describe('the journal', () => {
  test('gives back what was noted, word for word', () => {
    const notes = storage()
    expect(note(notes, one)).toBe(true)
    expect(notedBy(notes, 't1')).toEqual(one)
    expect(notedBy(notes, 't2')).toBeUndefined()
  })

  test('offers what closed tabs left, the newest first, and nothing of open ones', () => {
    const notes = storage()
    for (const [tab, at] of [
      ['a', 1],
      ['b', 3],
      ['c', 2],
    ] as const)
      note(notes, { ...one, tab, at })
    notes.setItem('something else', '{}')
    expect(leftBehind(notes, new Set(['c'])).map(({ tab }) => tab)).toEqual(['b', 'a'])
    forget(notes, 'b')
    expect(leftBehind(notes, new Set()).map(({ tab }) => tab)).toEqual(['c', 'a'])
  })

  test('says so where the browser keeps nothing', () => {
    const full = storage(10)
    expect(note(full, one)).toBe(false)
    expect(notedBy(full, 't1')).toBeUndefined()
    expect(() => forget(full, 't1')).not.toThrow()
  })

  test.each([
    ['no JSON', '{"tab":'],
    ['null', 'null'],
    ['a list', '[]'],
    ['no document', JSON.stringify({ tab: 't1', at: 1 })],
    ['no moves', JSON.stringify({ tab: 't1', at: 1, work: { set: 'a' } })],
    ['moves that are none', JSON.stringify({ tab: 't1', at: 1, work: { set: 'a', moves: [3] } })],
    ['no time', JSON.stringify({ tab: 't1', work: { set: 'a', moves: [] } })],
  ])('takes nothing that makes no sense: %s', (_, text) => {
    const notes = storage()
    notes.setItem('ringproof/work/t1', text)
    expect(notedBy(notes, 't1')).toBeUndefined()
    expect(leftBehind(notes, new Set())).toEqual([])
  })
})
