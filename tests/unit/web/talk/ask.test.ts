import { AskedWrong, type Asker, askerOf } from 'ringproof/web/talk/ask'
import type { Came, Sent } from 'ringproof/web/talk/protocol'
import { beforeEach, expect, test } from 'vitest'

interface Talk {
  shelf: [ask: string, answer: string]
  sum: [ask: unknown, answer: number]
}

/** A worker that does what the test says. */
class FakeWorker extends EventTarget {
  readonly sent: Sent[] = []
  ended = false
  postMessage(sent: Sent): void {
    this.sent.push(structuredClone(sent))
  }
  terminate(): void {
    this.ended = true
  }
  says(data: Came): void {
    this.dispatchEvent(Object.assign(new Event('message'), { data }))
  }
  breaks(message?: string): void {
    this.dispatchEvent(Object.assign(new Event('error'), { message }))
  }
}

let made: FakeWorker[]
let asker: Asker<Talk>
const at = (k: number): FakeWorker => {
  const worker = made[k]
  if (worker === undefined) throw new Error(`no worker ${k}`)
  return worker
}
const whats = (k: number): string[] => at(k).sent.map(({ what }) => what)
const settled = (): Promise<void> => new Promise((resolve) => setTimeout(resolve))
const another = (): Worker => {
  const worker = new FakeWorker()
  made.push(worker)
  return worker as unknown as Worker
}
beforeEach(() => {
  made = []
  asker = askerOf<Talk>(another)
})

test('answers come in any order, problems as problems, and what broke as an error', async () => {
  const told: string[] = []
  const [one, two, three] = [
    asker.ask('sum', 1, (text) => told.push(text)),
    asker.ask('sum', 2),
    asker.ask('sum', 3),
  ]
  at(0).says({ id: 2, answer: 20 })
  at(0).says({ id: 1, tells: 'half' })
  at(0).says({ id: 9, answer: 'nobody asked' })
  at(0).says({ id: 1, answer: 10 })
  const problem = { code: 'syntax', severity: 'error', found: 'x', expected: 'y' } as const
  at(0).says({ id: 3, problems: [problem] })
  expect([await one, await two, told]).toEqual([10, 20, ['half']])
  await expect(three).rejects.toThrow(AskedWrong)
  const four = asker.ask('sum', 4)
  at(0).says({ id: 4, broke: 'a mistake' })
  await expect(four).rejects.toThrow('a mistake')
  expect(made).toHaveLength(1)
})

test('a worker that breaks down leaves nobody waiting, and the next ask finds another that knows as much', async () => {
  asker = askerOf<Talk>(another, 'shelf')
  void asker.ask('shelf', 'old').catch(() => {})
  void asker.ask('shelf', 'new').catch(() => {})
  const lost = asker.ask('sum', 1)
  at(0).breaks()
  await expect(lost).rejects.toThrow('has stopped')
  expect(at(0).ended).toBe(true)
  const again = asker.ask('sum', 2)
  expect(at(1).sent).toMatchObject([
    { what: 'shelf', ask: 'new', id: 0 },
    { what: 'sum', ask: 2 },
  ])
  at(1).says({ id: 0, answer: 'rows' })
  // what the old one says now concerns nobody
  at(0).breaks('late')
  at(1).says({ id: 4, answer: 2 })
  expect(await again).toBe(2)
  const unread = asker.ask('sum', 3)
  at(1).dispatchEvent(new Event('messageerror'))
  await expect(unread).rejects.toThrow('has stopped')
})

test('whatever is asked before the worker knows what it must know waits until it was told', async () => {
  asker = askerOf<Talk>(another, 'shelf')
  const early = asker.ask('sum', 1)
  const lane = asker.newest('lane', 'sum', 2)
  const never = asker.ask('sum', () => 1)
  // the worker is being loaded meanwhile
  expect(at(0).sent).toEqual([])
  void asker.ask('shelf', 'sheets')
  await expect(never).rejects.toThrow()
  expect(at(0).sent.map(({ ask }) => ask)).toEqual(['sheets', 1, 2])
  at(0).says({ id: 1, answer: 10 })
  at(0).says({ id: 2, answer: 20 })
  expect([await early, await lane]).toEqual([10, 20])
  void asker.ask('shelf', 'others')
  void asker.ask('sum', 3)
  expect(at(0).sent.map(({ ask }) => ask)).toEqual(['sheets', 1, 2, 'others', 3])
})

test('what waits for a worker that never comes is told so', async () => {
  asker = askerOf<Talk>(another, 'shelf')
  const early = asker.ask('sum', 1)
  at(0).breaks()
  await expect(early).rejects.toThrow('has stopped')
  void asker.ask('shelf', 'sheets')
  expect(whats(1)).toEqual(['shelf'])
})

test('what cannot be sent is refused at once, and keeps nothing else from being asked', async () => {
  await expect(asker.ask('sum', () => 1)).rejects.toThrow()
  const fine = asker.ask('sum', 1)
  at(0).says({ id: 2, answer: 1 })
  expect(await fine).toBe(1)
})

test('of one lane only the newest counts, and what is outdated by its turn is never asked', async () => {
  const first = asker.newest('lane', 'sum', 1)
  const second = asker.newest('lane', 'sum', 2)
  const third = asker.newest('lane', 'sum', 3)
  const other = asker.newest('other', 'sum', 4)
  expect(at(0).sent.map(({ ask }) => ask)).toEqual([1, 4])
  at(0).says({ id: 1, answer: 1 })
  expect([await first, await second]).toEqual([undefined, undefined])
  await settled()
  expect(at(0).sent.map(({ ask }) => ask)).toEqual([1, 4, 3])
  at(0).says({ id: 2, answer: 40 })
  at(0).says({ id: 3, answer: 30 })
  expect([await third, await other]).toEqual([30, 40])
})

test('trouble of one that is outdated is nobody’s; that of the newest is told', async () => {
  const first = asker.newest('lane', 'sum', 1)
  const second = asker.newest('lane', 'sum', 2)
  at(0).says({ id: 1, broke: 'outdated' })
  expect(await first).toBe(undefined)
  await settled()
  at(0).says({ id: 2, broke: 'news' })
  await expect(second).rejects.toThrow('news')
  const third = asker.newest('lane', 'sum', 3)
  await settled()
  expect(whats(0)).toEqual(['sum', 'sum', 'sum'])
  at(0).says({ id: 3, answer: 3 })
  expect(await third).toBe(3)
})
