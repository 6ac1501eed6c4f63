import { mkdirSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { crewHere, type MadeStretch, ProblemError, type Stretch, stretchMaker } from 'ringproof'
import { layOut } from 'ringproof/answer/book-order'
import { stretchesOf } from 'ringproof/book/crew'
import { bookMeans } from 'ringproof/host/book-means'
import { threadCrew } from 'ringproof/host/crew'
import { describe, expect, test } from 'vitest'
import { DEMO } from '../../support/bench.ts'
import { folderWith } from './_folder.ts'
import { runnable } from './_runnable.ts'

/** A set alone: readings only, which is quick. */
const { order } = layOut({ target: 'sedge', on: 'none' }, DEMO)
const rows = stretchesOf('rows', 40, 10)
const pairs: readonly Stretch[] = stretchesOf('pairs', 60, 20)

async function all(made: AsyncIterable<MadeStretch>): Promise<readonly MadeStretch[]> {
  const found: MadeStretch[] = []
  for await (const one of made) found.push(one)
  return found.sort((p, q) => (p.what < q.what ? -1 : p.what > q.what ? 1 : p.from - q.from))
}

const bytes = (made: readonly MadeStretch[]) =>
  made.map((one) => [one.what, one.from, ...one.bytes.subarray(0, 4096)])

describe('a crew of threads', () => {
  test('makes in 1, 2 or 3 threads what is made in none', async () => {
    const entry = await runnable('crew-worker')
    const both = [...rows, ...pairs]
    const sound = await all(crewHere(1, stretchMaker).run(order, both))
    for (const lanes of [1, 2, 3]) {
      const crew = threadCrew(lanes, entry)
      expect(crew.lanes).toBe(lanes)
      expect(bytes(await all(crew.run(order, both)))).toEqual(bytes(sound))
    }
  }, 60_000)

  test('stops its threads where nobody asks on', async () => {
    const crew = threadCrew(2, await runnable('crew-worker'))
    let made = 0
    for await (const one of crew.run(order, pairs)) {
      expect(one.bytes.length).toBeGreaterThan(0)
      made += 1
      break
    }
    expect(made).toBe(1)
  }, 60_000)

  test('says what is wrong with an order as problems, and fails with a thread that dies', async () => {
    const entry = await runnable('crew-worker')
    const wrong = { ...order, request: { target: 'nothing-of-the-kind' } }
    const thrown: unknown = await all(threadCrew(2, entry).run(wrong, pairs)).catch((error: unknown) => error)
    expect(thrown).toBeInstanceOf(ProblemError)
    expect((thrown as ProblemError).problems[0]?.code).toBe('name-unknown')
    // as from another build: the thread finds that it would work on another book
    const other = await all(threadCrew(2, entry).run({ ...order, key: 'x' }, pairs)).catch(
      (error: unknown) => error,
    )
    expect((other as ProblemError).problems[0]).toMatchObject({ code: 'ours' })
    const dying = join(folderWith({ 'dying.mjs': 'throw new Error("dies")' }), 'dying.mjs')
    await expect(all(threadCrew(2, dying).run(order, pairs))).rejects.toThrow('dies')
  }, 60_000)

  test('works in this very thread where its file is not there, or the work is small', async () => {
    const crew = threadCrew(2, '/no/such/file.js')
    const made = await all(crew.run(order, pairs))
    expect(made.map(({ from }) => from)).toEqual([0, 20, 40])
    expect(await all(crew.run(order, []))).toEqual([])
    const dying = join(folderWith({ 'dying.mjs': 'throw new Error("dies")' }), 'dying.mjs')
    expect(await all(threadCrew(2, dying).run(order, rows.slice(0, 1)))).toHaveLength(1)
    expect(await all(threadCrew(2, dying).run(order, rows.slice(0, 2), 100))).toHaveLength(2)
  }, 60_000)
})

describe('by what this machine works', () => {
  test('is a crew, and a store where something may be kept', () => {
    const folder = folderWith({})
    expect(Object.keys(bookMeans({ RINGPROOF_CACHE: folder }, true)).sort()).toEqual([
      'build',
      'crew',
      'store',
    ])
    expect(Object.keys(bookMeans({ RINGPROOF_CACHE: folder }, false))).toEqual(['crew'])
    expect(Object.keys(bookMeans({ RINGPROOF_CACHE: 'off' }, true))).toEqual(['crew'])
  })

  test('a store that it cannot write to makes nothing fail', async () => {
    const folder = folderWith({})
    mkdirSync(join(folder, 'sub'))
    writeFileSync(join(folder, 'sub', 'file'), '')
    const { store } = bookMeans({ RINGPROOF_CACHE: join(folder, 'sub', 'file') }, true)
    await store?.write('key', Uint8Array.of(1))
    expect(await store?.read('key')).toBeUndefined()
  })
})
