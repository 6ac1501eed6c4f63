import { bookMemory } from 'ringproof/web/worker/book-memory'
import { expect, test } from 'vitest'

const bytes = (length: number): Uint8Array => new Uint8Array(length)

test('what was used longest ago goes first, and reading is using', async () => {
  const books = bookMemory(10)
  books.write('one', bytes(4))
  books.write('two', bytes(4))
  expect((await books.read('one'))?.byteLength).toBe(4)
  books.write('three', bytes(4))
  expect(await books.read('two')).toBe(undefined)
  expect((await books.read('one'))?.byteLength).toBe(4)
  expect((await books.read('three'))?.byteLength).toBe(4)
})

test('a book written again counts once', async () => {
  const books = bookMemory(10)
  books.write('one', bytes(6))
  books.write('one', bytes(5))
  books.write('two', bytes(5))
  expect([(await books.read('one'))?.byteLength, (await books.read('two'))?.byteLength]).toEqual([5, 5])
})

test('a book that is taken away makes room, and one too long for all is not kept', async () => {
  const books = bookMemory(10)
  books.write('one', bytes(8))
  books.remove('one')
  books.remove('never')
  books.write('two', bytes(10))
  expect((await books.read('two'))?.byteLength).toBe(10)
  books.write('three', bytes(11))
  expect(await books.read('three')).toBe(undefined)
})
