import fc from 'fast-check'
import { check, type Move, openBench, ProblemError, rewireText } from 'ringproof'
import { packagedFolder } from 'ringproof/host/packaged'
import { folderShelf } from 'ringproof/host/shelf'
import type { SetSheet } from 'ringproof/sheet/model'
import { readSheet } from 'ringproof/sheet/read'
import { describe, expect, test } from 'vitest'

const DEMO = folderShelf([], packagedFolder())

function setNamed(name: string): SetSheet {
  const text = DEMO.find('set', name)
  const sheet = text && readSheet(text, DEMO, 'set').sheet
  if (sheet === undefined) throw new Error(name)
  return sheet
}

/** Moves that a set may or may not allow. */
function movesOf(set: SetSheet): fc.Arbitrary<readonly Move[]> {
  const terminals = Object.entries(set.strips).flatMap(([strip, length]) =>
    Array.from({ length: length + 1 }, (_, k) => `${strip}${k + 1}`),
  )
  const cores = Object.entries(set.cords).flatMap(([cord, { cores: all }]) =>
    Object.keys(all).map((core) => `${cord}.${core}`),
  )
  const some = (names: readonly string[]) => fc.constantFrom(...names, 'a-stranger')
  const terminal = fc.constantFrom(...terminals)
  const strap = fc.oneof(
    fc.constantFrom(...Object.keys(set.straps), 'A1-A2'),
    fc.tuple(terminal, terminal).map(([p, q]) => `${p}-${q}`),
  )
  const resistance = { value: 3300, unit: 'Ω' as const, tolerance: 0.05, text: '3.3 kΩ ± 5 %' }
  return fc.array(
    fc.oneof(
      strap.map((what): Move => ({ do: 'fit strap', what })),
      strap.map((what): Move => ({ do: 'lift strap', what })),
      fc
        .tuple(fc.constantFrom(...cores), terminal)
        .map(([what, onto]): Move => ({ do: 'land core', what, onto })),
      fc.constantFrom(...cores).map((what): Move => ({ do: 'park core', what })),
      some(Object.keys(set.parts)).map((what): Move => ({ do: 'lift part', what })),
      some(Object.keys(set.parts)).map((what): Move => ({ do: 'bridge', what })),
      some(Object.keys(set.slots)).map((what): Move => ({ do: 'pull unit', what })),
      fc.tuple(terminal, terminal).map(([from, to]): Move => {
        return {
          do: 'fit part',
          what: 'own-resistor',
          with: { kind: 'resistor', from, to, resistance } as never,
        }
      }),
    ),
    { minLength: 1, maxLength: 4 },
  )
}

/** What either gives; or the codes of what it refuses, since not every wiring makes a netlist. */
function outcome<T>(ask: () => T): T | readonly string[] {
  try {
    return ask()
  } catch (thrown) {
    if (thrown instanceof ProblemError) return thrown.problems.map(({ code }) => code)
    throw thrown
  }
}

describe('the bench says what check says of the written rewire', () => {
  const places = [
    { set: 'sedge', where: {} },
    { set: 'fescue', where: { on: 'cottage' } },
    { set: 'melick', where: { on: 'station-house' } },
    { set: 'foxtail', where: { on: 'valley-exchange' } },
    { set: 'brome', where: { on: 'none' } },
  ] as const
  for (const { set, where } of places) {
    const bench = openBench({ target: `set/${set}`, ...where }, DEMO)

    test(`${set}, as found`, () => {
      const side = bench.side([])
      const whole = check({ target: `set/${set}`, ...where }, DEMO)
      expect(side.check()).toEqual(whole)
      expect(side.verdicts().verdicts).toEqual(whole.verdicts)
      expect(bench.set).toBe(set)
      expect(bench.moves).toEqual([])
    })

    test(`${set}, after moves`, () => {
      fc.assert(
        fc.property(movesOf(setNamed(set)), (moves) => {
          const ours = outcome(() => {
            const side = bench.side(moves)
            return { side, verdicts: side.verdicts().verdicts, whole: side.check() }
          })
          if (!('side' in ours)) return
          const { side, verdicts, whole } = ours
          expect(side.moves).toHaveLength(moves.length)
          expect(side.refused).toHaveLength(side.refusedMoves.length)
          expect(side.made).toEqual(moves.filter((_, k) => !side.refusedMoves.includes(k)))
          const text = rewireText({ name: set, set, moves: side.made })
          const theirs = check({ target: '', text: { file: 't.yaml', text }, ...where }, DEMO)
          expect(verdicts).toEqual(theirs.verdicts)
          expect(whole.verdicts).toEqual(theirs.verdicts)
          expect(whole.figures).toEqual(theirs.figures)
          expect(whole.faults).toEqual(theirs.faults)
          expect(whole.counts).toEqual(theirs.counts)
          expect(whole.outcome).toBe(theirs.outcome)
          expect(side.refused.every(({ code }) => code === 'move-refused')).toBe(true)
          expect(whole.problems.filter(({ code }) => code === 'move-refused')).toEqual(side.refused)
        }),
        { numRuns: 12 },
      )
    }, 30_000)
  }
})

describe('a bench', () => {
  test('opens a rewire with its set and moves', () => {
    const bench = openBench({ target: 'rewire/fescue-converted' }, DEMO)
    expect(bench.set).toBe('fescue-as-found')
    const side = bench.side(bench.moves)
    const whole = check({ target: 'rewire/fescue-converted' }, DEMO)
    expect(side.check().verdicts).toEqual(whole.verdicts)
    expect(side.check().stands?.notes).toEqual(whole.stands?.notes)
    expect(side.check()).toBe(side.check())
  })

  test('keeps its last sides', () => {
    const bench = openBench({ target: 'fescue' }, DEMO)
    const first = bench.side([])
    expect(bench.side([])).toBe(first)
    for (let k = 1; k <= 32; k += 1) bench.side([{ do: 'park core', what: `line.${k}` }])
    expect(bench.side([])).not.toBe(first)
  })

  test('refuses premises, and a place that is not there', () => {
    expect(() => openBench({ target: 'premises/cottage' }, DEMO)).toThrow(/cottage/)
    expect(() => openBench({ target: 'fescue', on: 'cottage', at: 'nowhere' }, DEMO).side([])).toThrow(
      ProblemError,
    )
  })

  test('knows the conditions of its set', () => {
    const of = (target: string, on?: string) =>
      openBench({ target, ...(on === undefined ? {} : { on }) }, DEMO)
        .side([])
        .conditions()
    expect(of('fescue')).toContain('off-hook/break')
    expect(of('brome')).toContain('off-hook/key')
    expect(of('fescue')).not.toContain('off-hook/key')
    expect(of('fescue', 'none').some((one) => one.includes('ringing') || one.includes('speech'))).toBe(false)
  })

  test('tells what flows now, also with the pair the other way round', () => {
    const side = openBench({ target: 'fescue' }, DEMO).side([])
    const one = side.now({ condition: 'off-hook' })
    const other = side.now({ condition: 'off-hook', reversed: true })
    const current = (now: typeof one) => now.figures.find(({ id }) => id === 'loop.current')?.value
    expect(one.shown.frequency).toBeNull()
    expect(current(one)).toBeGreaterThan(0.02)
    expect(current(one)).toBe(side.check().figures.find(({ id }) => id === 'loop.current')?.value)
    expect(other.shown.carries).not.toEqual(one.shown.carries)
    const ringing = side.now({ condition: 'on-hook/ringing' })
    expect(ringing.shown.analysis).toBe('alternating')
    expect(ringing.figures.map(({ id }) => id)).toContain('ringing.current')
    expect(() => side.now({ condition: 'upside-down' })).toThrow(ProblemError)
    const apart = openBench({ target: 'fescue', on: 'none' }, DEMO).side([])
    expect(apart.now({ condition: 'off-hook' }).figures).toEqual([])
  })

  test('judges all of the premises with the set in its place', () => {
    const where = { target: 'fescue', on: 'cottage' }
    const [at = ''] = check({ target: 'premises/cottage' }, DEMO).stands?.sets.map(({ place }) => place) ?? []
    const side = openBench({ ...where, at }, DEMO).side([{ do: 'lift strap', what: 'B2-B3' }])
    const all = side.premises()
    const others = check({ target: 'premises/cottage' }, DEMO)
    expect(new Set(all.verdicts.map(({ check: id }) => id))).toEqual(
      new Set(others.verdicts.map(({ check: id }) => id)),
    )
    expect(all.stands?.sets).toHaveLength(others.stands?.sets.length ?? 0)
    expect(all.outcome).toBe('fails')
  })

  test('speaks from 200 Hz to 4 kHz', () => {
    const figures = openBench({ target: 'fescue' }, DEMO).side([]).speech()
    expect(figures.filter(({ id }) => id === 'speech.send').length).toBeGreaterThan(12)
  })
})
