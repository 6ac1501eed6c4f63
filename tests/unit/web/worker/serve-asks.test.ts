import type { Came, Sent } from 'ringproof/web/talk/protocol'
import { benchAnswers } from 'ringproof/web/worker/bench-answers'
import { bookMemory } from 'ringproof/web/worker/book-memory'
import { answered, serveAsks } from 'ringproof/web/worker/serve-asks'
import { studyAnswers } from 'ringproof/web/worker/study-answers'
import { afterEach, expect, test, vi } from 'vitest'

const quiet = (): void => {}
const SOUND = ['ringproof: 1', 'sheet: rewire', 'name: mine', 'set: none', 'moves: []', ''].join('\n')

test.each(['nothing', '', '__proto__', 'constructor', 'toString', 'hasOwnProperty', 'valueOf'])(
  'an ask that nobody knows is answered in words: %j',
  async (what) => {
    for (const answers of [benchAnswers(), studyAnswers()]) {
      const came = await answered(answers as Parameters<typeof answered>[0], what, {}, quiet)
      expect(came).toEqual({ broke: expect.stringContaining('nothing here answers') })
    }
  },
)

test.each([
  undefined,
  null,
  0,
  'x',
  [],
  {},
  { bench: null },
  { bench: { set: 5, moves: 7 } },
  { request: [] },
])('an ask of the wrong shape is answered too: %j', async (ask) => {
  const all = [benchAnswers(), studyAnswers()] as readonly Parameters<typeof answered>[0][]
  for (const answers of all) {
    for (const what of Object.keys(answers)) {
      const came = await answered(answers, what, ask, quiet)
      expect(Object.keys(came), `${what} ${JSON.stringify(ask)}`).toHaveLength(1)
      if ('broke' in came) expect(came.broke).not.toBe('')
    }
  }
})

afterEach(() => vi.unstubAllGlobals())

test('a worker answers every message, what cannot be sent among them', async () => {
  let hear: (event: { data: Sent }) => void = quiet
  const came: Came[] = []
  vi.stubGlobal('addEventListener', (_: string, listener: typeof hear) => {
    hear = listener
  })
  vi.stubGlobal('postMessage', (message: Came) => came.push(structuredClone(message)))
  serveAsks<{ good: [unknown, unknown]; odd: [unknown, unknown]; word: [unknown, unknown] }>({
    good: (ask, tells) => {
      tells('half')
      return ask
    },
    odd: () => () => 1,
    word: () => {
      throw 'a word'
    },
  })
  for (const [k, what] of ['good', 'odd', 'word', '__proto__'].entries())
    hear({ data: { id: k, what, ask: k } })
  await vi.waitFor(() => expect(came).toHaveLength(5))
  expect(came.toSorted((a, b) => a.id - b.id)).toEqual([
    { id: 0, tells: 'half' },
    { id: 0, answer: 0 },
    { id: 1, broke: expect.stringContaining('could not be cloned') },
    { id: 2, broke: 'a word' },
    { id: 3, broke: expect.stringContaining('__proto__') },
  ])
})

test('a set with a strange name steers nothing when a part is fitted', async () => {
  const values = { from: 'A1', to: 'A2', resistance: '1 kΩ' }
  const set = 'x\nmoves: []\nnotes: [evil]'
  const came = await answered(benchAnswers(), 'partMove', { set, name: 'r', part: 'resistor', values }, quiet)
  expect(came).toHaveProperty('problems')
})

test('an old sheet with mistakes, or none at all, is written anew', async () => {
  const bench = { set: 'fescue', moves: [] }
  for (const text of ['', 'x: [', SOUND.replace('moves', 'moved'), '\0', SOUND]) {
    const came = await answered(
      benchAnswers(),
      'write',
      { bench, name: 'mine', old: { file: 'm.yaml', text } },
      quiet,
    )
    expect(came).toMatchObject({ answer: { text: expect.stringContaining('set: fescue') } })
  }
})

test('books are kept up to a limit, those used last the longest', async () => {
  const books = bookMemory(10)
  const sizeOf = async (key: string): Promise<number | undefined> => (await books.read(key))?.byteLength
  books.write('a', new Uint8Array(4))
  books.write('b', new Uint8Array(4))
  expect(await sizeOf('a')).toBe(4)
  books.write('c', new Uint8Array(4))
  expect([await sizeOf('b'), await sizeOf('a')]).toEqual([undefined, 4])
  books.write('a', new Uint8Array(6))
  expect(await sizeOf('c')).toBe(4)
  books.write('huge', new Uint8Array(11))
  expect(await sizeOf('huge')).toBe(undefined)
  books.remove('nobody')
  books.write('d', new Uint8Array(10))
  expect(await sizeOf('d')).toBe(10)
})
