import { type Crew, crewHere, type MadeStretch, type Stretch, stretchesOf } from 'ringproof/book/crew'
import { bookMaker, makeBook } from 'ringproof/book/make-book'
import { bytesOf, unpack } from 'ringproof/book/pack'
import { makePairs, pairMaker } from 'ringproof/book/pairs'
import { type BookStore, NO_STORE } from 'ringproof/book/store'
import { workBook, workPairs } from 'ringproof/book/work-book'
import { describe, expect, test } from 'vitest'
import { compiled } from '../../support/compiled.ts'
import { branchOf, faultOf, testOf, volts } from './_divider.ts'

/** A ladder with so many rungs that its faults are several stretches. */
function ladder() {
  const rungs = Array.from({ length: 36 }, (_, k) => [
    `s${k}: {kind: resistor, from: n${k}, to: n${k + 1}, resistance: ${100 + k} Ω ± 5 %}`,
    `t${k}: {kind: resistor, from: n${k + 1}, to: earth, resistance: ${2000 + 10 * k} Ω}`,
  ]).flat()
  const net = compiled('e: {kind: voltage-source, from: n0, to: earth, direct: 12 V}', ...rungs.slice(0, 12))
  const names = net.parts.map(({ name }) => name).filter((name) => name !== 'e')
  const faults = names.flatMap((name) =>
    [10, 100, 1000, 1e4, 1e5, 1e6].map((ohms) =>
      faultOf(`${name}/${ohms} high`, { within: { branch: branchOf(net, name), ohms } }),
    ),
  )
  const tests = ['n1', 'n3', 'n6'].map((node) => testOf(node, volts(net, `trial/${node}`)))
  return { net, tests, transmitterSpread: 3, faults }
}

const inputs = ladder()
const task = { order: 'ladder', inputs, key: 'ladder' }

const makerOf = () => {
  const [rows, pairs] = [bookMaker(inputs), pairMaker(inputs)]
  return ({ what, from, to }: Stretch): Uint8Array => {
    if (what === 'pairs') return bytesOf(pairs.rows(from, to).scores)
    const made = rows.rows(from, to)
    return bytesOf(made.scores, made.spreads, made.steps)
  }
}

/** A store that remembers, and counts what it is asked for. */
function memory(): BookStore & { readonly held: Map<string, Uint8Array> } {
  const held = new Map<string, Uint8Array>()
  return {
    held,
    read: (key) => held.get(key),
    write: (key, bytes) => {
      held.set(key, bytes.slice())
    },
    remove: (key) => {
      held.delete(key)
    },
  }
}

/** A crew that counts, and dies before it has made so many stretches. */
function counting(lives = Number.POSITIVE_INFINITY): Crew<string> & { readonly made: string[] } {
  const crew = crewHere(1, makerOf)
  const made: string[] = []
  return {
    lanes: 1,
    made,
    async *run(order, stretches) {
      for await (const one of crew.run(order, stretches)) {
        if (made.length >= lives) throw new Error('stopped')
        made.push(`${one.what} ${one.from}`)
        yield one
      }
    },
  }
}

const means = (crew: Crew<string>, store: BookStore = NO_STORE, tell: (says: string) => void = () => {}) => ({
  crew,
  store,
  tell,
})

describe('a crew', () => {
  const book = makeBook(inputs)
  const pairs = makePairs(inputs)

  test.each([1, 2, 3])('makes the same book and the same pairs with %i lanes', async (lanes) => {
    const crew = crewHere(lanes, makerOf)
    expect(await workBook(task, means(crew))).toEqual(book)
    const worked = await workPairs(task, means(crew))
    expect(worked.scores).toEqual(pairs.scores)
    expect([...worked.first]).toEqual([...pairs.first])
  })

  test('may be done with its stretches in any order', async () => {
    const here = crewHere(2, makerOf)
    const backwards: Crew<string> = {
      lanes: 2,
      async *run(order, stretches) {
        const all: MadeStretch[] = []
        for await (const one of here.run(order, stretches)) all.unshift(one)
        yield* all
      },
    }
    expect(await workBook(task, means(backwards))).toEqual(book)
    expect((await workPairs(task, means(backwards))).scores).toEqual(pairs.scores)
  })

  test('is told on, stretch by stretch', async () => {
    const said: string[] = []
    await workBook(
      task,
      means(crewHere(1, makerOf), NO_STORE, (says) => said.push(says)),
    )
    expect(said).toEqual(['0', '32', '64', '73'].map((done) => `working out faults: ${done} of 73`))
  })

  test('stops where it is no longer asked, and lets others have their turn', async () => {
    let turns = 0
    const crew = crewHere(2, makerOf, async () => {
      turns += 1
    })
    for await (const { from } of crew.run('ladder', stretchesOf('rows', 73, 10))) if (from === 20) break
    expect(turns).toBe(3)
  })

  test('that makes too little is found out', async () => {
    const short: Crew<string> = {
      lanes: 1,
      async *run(_, stretches) {
        for (const one of stretches) yield { ...one, bytes: new Uint8Array(8) }
      },
    }
    await expect(workBook(task, means(short))).rejects.toThrow(RangeError)
  })
})

describe('a store', () => {
  const book = makeBook(inputs)

  test('spares what was worked out before, whoever works', async () => {
    const store = memory()
    const crew = counting()
    expect(await workBook(task, means(crew, store))).toEqual(book)
    expect(crew.made).toEqual(['rows 0', 'rows 32', 'rows 64'])
    const again = counting()
    expect(await workBook(task, means(again, store))).toEqual(book)
    expect(again.made).toEqual([])
  })

  test('lets pairs that were stopped go on where they were', async () => {
    const store = memory()
    const stopped = counting(1)
    await expect(workPairs(task, means(stopped, store))).rejects.toThrow('stopped')
    expect(stopped.made).toEqual(['pairs 0'])
    const rest = counting()
    const worked = await workPairs(task, means(rest, store))
    expect(worked.scores).toEqual(makePairs(inputs).scores)
    expect(rest.made).toEqual(['pairs 2048'])
  })

  test('is never taken for another book’s, nor for what has another length', async () => {
    const store = memory()
    await workBook(task, means(counting(), store))
    const other = counting()
    await workBook({ ...task, key: 'another' }, means(other, store))
    expect(other.made).toHaveLength(3)
    for (const key of store.held.keys()) store.held.set(key, new Uint8Array(8))
    const torn = counting()
    expect(await workBook(task, means(torn, store))).toEqual(book)
    expect(torn.made).toHaveLength(3)
  })
})

describe('numbers as bytes', () => {
  test('come back as they were, and only as many as there were', () => {
    const numbers = Float64Array.of(1.5, Number.NaN, Number.NEGATIVE_INFINITY)
    const small = Float32Array.of(0.25)
    const bytes = bytesOf(numbers.subarray(1), small)
    expect(bytes).toHaveLength(20)
    const [into, intoSmall] = [new Float64Array(2), new Float32Array(1)]
    expect(unpack(bytes, [into, intoSmall])).toBe(true)
    expect([...into, ...intoSmall]).toEqual([Number.NaN, Number.NEGATIVE_INFINITY, 0.25])
    expect(unpack(bytes, [into])).toBe(false)
    expect(unpack(new Uint8Array(0), [])).toBe(true)
  })

  test('stretches cover everything once', () => {
    expect(stretchesOf('rows', 5, 2).map(({ from, to }) => [from, to])).toEqual([
      [0, 2],
      [2, 4],
      [4, 5],
    ])
    expect(stretchesOf('pairs', 0, 2)).toEqual([])
  })
})
