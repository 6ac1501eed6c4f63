import { at, type Book } from 'ringproof/book/book'
import { type BookInputs, bookMaker, makeBook } from 'ringproof/book/make-book'
import type { Supply } from 'ringproof/book/scorer'
import { freshVariants } from 'ringproof/figures/variants'
import { describe, expect, test } from 'vitest'
import { assertClose } from '../../support/close.ts'
import { compiled } from '../../support/compiled.ts'
import { divider, faultOf, partOf, testOf, volts } from './_divider.ts'

const CLOSE = { relative: 1e-9, absolute: 1e-12 }
const R3 = 1e7
const beside = (one: number, other: number): number => 1 / (1 / one + 1 / other)

/** V(q) of the divider in closed form. */
const voltage = (r1: number, r2: number, r3 = R3): number => {
  const low = beside(r2, r3)
  return (12 * low) / (r1 + low)
}
const u = (score: number): number => Math.asinh(score / 0.5)

/** One standard deviation of u(V(q)) for steps of one standard deviation, r1 2 % and r2 4 %. */
function stepped(value: (f1: number, f2: number) => number): number {
  const sound = u(value(1, 1))
  return Math.hypot(u(value(1.02, 1)) - sound, u(value(1, 1.04)) - sound)
}

const score = (book: Book, row: number, t = 0): number | undefined => book.scores[at(book, row, t)]
const spread = (book: Book, row: number, t = 0): number | undefined => book.spreads[at(book, row, t)]

describe('the book of a divider', () => {
  const book = makeBook(divider())

  test('holds what each fault makes of each reading, as Ohm’s law says', () => {
    const expected = [
      voltage(1000, 2000),
      0,
      voltage(1000, 500),
      0,
      voltage(2000, 2000),
      voltage(1000, 2000, Number.POSITIVE_INFINITY),
    ]
    for (const [row, value] of expected.entries()) assertClose(score(book, row), value, CLOSE, `row ${row}`)
  })

  test('spreads as steps of one standard deviation of each value do, a third of the stated tolerance', () => {
    assertClose(
      spread(book, 0),
      stepped((f, g) => voltage(1000 * f, 2000 * g)),
      CLOSE,
      'sound',
    )
    // the fault's own value drifts too, by the same share
    assertClose(
      spread(book, 2),
      stepped((f, g) => voltage(1000 * f, 500 * g)),
      CLOSE,
      'r2 of 500 Ω',
    )
    assertClose(
      spread(book, 4),
      stepped((f, g) => voltage(1000 * f + 1000, 2000 * g)),
      CLOSE,
      '1 kΩ within r1',
    )
  })

  test('spreads as the derivatives of the divider say, to the second order of the tolerances', () => {
    // V = E·r2/(r1+r2): dV/V = r1/(r1+r2)·(dr2/r2 − dr1/r1), and du = dV/√(V² + scale²)
    const v = 8
    const relative = (1000 / 3000) * Math.hypot(0.02, 0.04)
    assertClose(spread(book, 0), (v * relative) / Math.hypot(v, 0.5), { relative: 0.03 }, 'sound')
  })

  test('does not spread where the tolerances reach nothing', () => {
    for (const row of [0, 1, 2, 3, 4, 5])
      assertClose(spread(book, row, 1), 0, { relative: 0, absolute: 1e-12 }, 'p')
    assertClose(spread(book, 3), 0, { relative: 0, absolute: 1e-12 }, 'shorted')
  })

  test('comes out the same in whatever pieces it is made', () => {
    const maker = bookMaker(divider())
    for (const cuts of [
      [0, 6],
      [0, 1, 6],
      [0, 2, 3, 6],
    ]) {
      cuts.slice(1).forEach((to, k) => {
        const from = cuts[k] ?? 0
        const rows = maker.rows(from, to)
        expect(rows.scores).toEqual(book.scores.slice(2 * from, 2 * to))
        expect(rows.spreads).toEqual(book.spreads.slice(2 * from, 2 * to))
      })
    }
    const backwards = bookMaker(divider())
    const last = backwards.rows(5, 6)
    backwards.rows(0, 1)
    expect(last.scores).toEqual(book.scores.slice(10))
    expect(() => maker.rows(5, 8)).toThrow(RangeError)
  })

  test('is the same by updates as solved afresh', () => {
    const fresh = makeBook(divider(), undefined, freshVariants)
    for (const [k, one] of book.scores.entries())
      assertClose(one, fresh.scores[k] ?? Number.NaN, CLOSE, `score ${k}`)
    for (const [k, one] of book.spreads.entries())
      assertClose(one, fresh.spreads[k] ?? Number.NaN, { relative: 1e-9, absolute: 1e-9 }, `spread ${k}`)
  })

  test('tells how far it is', () => {
    const said: string[] = []
    makeBook(divider(), (says) => said.push(says))
    expect(said).toEqual(['working out faults: 0 of 5'])
  })
})

describe('what a book rests on', () => {
  const net = compiled(
    'e: {kind: voltage-source, from: p, to: earth, direct: 12 V}',
    'r: {kind: resistor, from: p, to: q, resistance: 1 kΩ}',
    't: {kind: transmitter, from: q, to: earth, resistance: 100 Ω at 10 mA, falls with exponent: 0}',
  )
  const plan = volts(net, 'trial/q')

  test('a carbon transmitter spreads by a third of its habit’s decades, whatever its sheet says', () => {
    const book = makeBook({ net, transmitterSpread: 8, tests: [testOf('q', plan)], faults: [] })
    // the cube root of 8 is one standard deviation: 100 Ω becomes 200 Ω
    const step = u((12 * 200) / 1200) - u((12 * 100) / 1100)
    assertClose(spread(book, 0), step, { relative: 1e-6 }, 'transmitter')
  })

  test('a score may ask what its parts are, as the fault makes them and as they drift', () => {
    const ohms = testOf('r2 itself', plan, {
      plans: [],
      scale: 1,
      score: (_, specs) =>
        (specs(partOf(divider().net, 'r2')) as never as { resistance: { value: number } }).resistance.value,
    })
    const book = makeBook({ ...divider(), tests: [ohms] })
    expect([...book.scores]).toEqual([2000, 2000, 500, 2000, 2000, 2000])
    assertClose(spread(book, 2), Math.asinh(520) - Math.asinh(500), { relative: 1e-9 }, 'drifted')
    const wrong = testOf('none', plan, { plans: [], score: (_, specs) => (specs(99) === undefined ? 0 : 1) })
    expect(() => makeBook({ ...divider(), tests: [wrong] })).toThrow(RangeError)
  })

  test('figures come to a test in the order of its plans, though tests share them', () => {
    const inputs = divider()
    const [p, q] = [volts(inputs.net, 'trial/p'), volts(inputs.net, 'trial/q')]
    const tests = [
      testOf('difference', p, { plans: [p, q], score: ([one = 0, other = 0]) => one - other }),
      testOf('turned', p, { plans: [q, p], score: ([one = 0, other = 0]) => one - other }),
    ]
    const book = makeBook({ ...inputs, tests })
    assertClose(score(book, 0, 0), 12 - voltage(1000, 2000), CLOSE, 'difference')
    assertClose(score(book, 0, 1), voltage(1000, 2000) - 12, CLOSE, 'turned')
  })

  test('a score that is no number has no spread, and a step that is none does not count', () => {
    const inputs = divider()
    const q = volts(inputs.net, 'trial/q')
    const open = testOf('open', q, { score: () => Number.POSITIVE_INFINITY })
    // beyond 8.05 V nothing is shown: half of the steps go nowhere
    const bounded = testOf('bounded', q, { score: ([v = 0]) => (v > 8.05 ? Number.POSITIVE_INFINITY : v) })
    const book = makeBook({ ...inputs, tests: [open, bounded] })
    expect([score(book, 0, 0), spread(book, 0, 0)]).toEqual([Number.POSITIVE_INFINITY, 0])
    const alone = Math.abs(u(voltage(1020, 2000)) - u(voltage(1000, 2000)))
    assertClose(spread(book, 0, 1), alone, { relative: 1e-9 }, 'r1 alone')
  })

  test('two faults of one change are made once, and what the netlist contradicts has no score', () => {
    const inputs = divider()
    const short = { bridge: { from: 0, to: inputs.net.nodeIndex.get('trial/p') ?? 0, ohms: 0 } }
    const book = makeBook({
      ...inputs,
      faults: [faultOf('e shorted', short), faultOf('again', { ...short })],
    })
    expect(score(book, 1, 0)).toBe(Number.NEGATIVE_INFINITY)
    expect(score(book, 2, 0)).toBe(Number.NEGATIVE_INFINITY)
  })
})

describe('values of other sets', () => {
  test('are moved where the set’s scores feel them, and its own always', () => {
    const base = divider()
    const parts = base.net.parts.map((part) => ({
      ...part,
      place: part.name === 'r2' ? 'neighbour' : 'mine',
    }))
    const tests = [...base.tests, testOf('r2 at all', volts(base.net, 'trial/q'), { score: () => 1 })]
    const placed: BookInputs = { ...base, tests, net: { ...base.net, parts }, place: 'mine' }
    const whole = makeBook({ ...base, tests })
    // both resistors are felt at q
    expect(makeBook(placed).spreads).toEqual(whole.spreads)
    // at p neither is: the neighbour's is left alone then, in rows with a fault too
    const deaf = { ...placed, tests: [testOf('p', volts(base.net, 'trial/p'))] }
    const reads: (readonly number[])[] = []
    const counted: Supply = (net, plans, changes) => {
      const fresh = freshVariants(net, plans, changes)
      return {
        ...fresh,
        read: (made, out) => {
          reads.push(made)
          fresh.read(made, out)
        },
      }
    }
    bookMaker(deaf, counted).rows(1, 2)
    // the sound set, the neighbour's value once, the fault, and r1 with the fault
    expect(reads).toHaveLength(4)
    bookMaker({ ...deaf, place: 'neighbour' }, counted).rows(1, 2)
    bookMaker({ net: placed.net, faults: placed.faults, tests, transmitterSpread: 3 }, counted).rows(1, 2)
    expect(reads).toHaveLength(4 + 4 + 4)
  })
})
