import { change, isKept, make, open, origin, present, redo, saved, undo } from 'ringproof/web/state/work'
import { beforeEach, describe, expect, test } from 'vitest'

const move = { strap: { add: 'A1-A2' } } as never

beforeEach(() => open({ set: 'some-set', moves: [] }))

describe('a document', () => {
  test('is kept when it is opened, not after a move, and again when the move is taken back', () => {
    expect(isKept.value).toBe(true)
    make(move)
    expect(isKept.value).toBe(false)
    undo()
    expect(isKept.value).toBe(true)
    redo()
    expect(isKept.value).toBe(false)
  })

  test('is kept once it is saved, and keeps its new name through undo and redo', () => {
    make(move)
    const from = { file: 'mine.yaml', text: 'x', mark: '1' }
    saved({ ...present.value!, name: 'mine', file: 'mine.yaml' }, from)
    expect(isKept.value).toBe(true)
    expect(origin.value).toEqual(from)
    undo()
    expect(present.value).toEqual({ set: 'some-set', moves: [], name: 'mine', file: 'mine.yaml' })
    expect(isKept.value).toBe(false)
    redo()
    expect(present.value?.moves).toEqual([move])
    expect(isKept.value).toBe(true)
  })

  test('is the same wherever it is looked at: a place is no change to save', () => {
    change((now) => ({ ...now, on: 'none' }))
    expect(isKept.value).toBe(true)
  })

  test('forgets where the one before came from', () => {
    open({ set: 'a', moves: [] }, { file: 'a.yaml', text: '', mark: '1' })
    open({ set: 'b', moves: [] })
    expect(origin.value).toBeUndefined()
  })
})
