import { recordedShelf, replayedShelf } from 'ringproof/answer/recorded-shelf'
import { stand } from 'ringproof/answer/standing'
import type { Shelf } from 'ringproof/sheet/shelf'
import { expect, test } from 'vitest'
import { DEMO } from '../../support/bench.ts'

test('what was read from a shelf stands up again without it, as plain data', () => {
  const recorded = recordedShelf(DEMO)
  const where = { target: 'sedge-converted', on: 'gatehouse' }
  const standing = stand(where, recorded.shelf)
  const again = stand(where, replayedShelf(structuredClone(recorded.record())))
  expect(again.net.nodes).toEqual(standing.net.nodes)
  expect(again.net.parts.map(({ id, spec }) => [id, spec])).toEqual(
    standing.net.parts.map(({ id, spec }) => [id, spec]),
  )
  expect(again.warnings).toEqual(standing.warnings)
})

test('a question is asked once, and what was never asked is not there', () => {
  const asked: string[] = []
  const shelf: Shelf = {
    find: (kind, name, from) => {
      asked.push(`${kind} ${name} ${from}`)
      return name === 'there' ? { file: 'f', text: `${asked.length}` } : undefined
    },
    names: () => ['there'],
  }
  const { shelf: recorded, record } = recordedShelf(shelf)
  for (let k = 0; k < 2; k += 1) {
    expect(recorded.find('set', 'there')?.text).toBe('1')
    expect(recorded.find('set', 'gone')).toBeUndefined()
    expect(recorded.find('set', 'there', 'x')?.text).toBe('3')
    expect(recorded.twins?.('set', 'there')).toEqual([])
    expect(recorded.names('set')).toEqual(['there'])
  }
  expect(asked).toEqual(['set there undefined', 'set gone undefined', 'set there x'])
  const replayed = replayedShelf(record())
  expect(replayed.find('set', 'there')?.text).toBe('1')
  expect(replayed.find('set', 'gone')).toBeUndefined()
  expect(replayed.find('set', 'never')).toBeUndefined()
  expect(replayed.names('set')).toEqual(['there'])
  expect(replayed.names('line')).toEqual([])
  expect(replayed.twins?.('line', 'there')).toEqual([])
})
