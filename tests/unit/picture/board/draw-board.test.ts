import fc from 'fast-check'
import { type Board, boardOf, drawBoard, markText, now, standalone, type Thing } from 'ringproof'
import { describe, expect, test } from 'vitest'
import { DEMO } from '../../../support/bench.ts'
import { wellFormed } from '../../../support/well-formed.ts'
import { BOARDS, collisions, marksIn, rewiredBy, setNamed } from './_boards.ts'

const everything = ({ straps, cores, parts, slots, strips }: Board): readonly string[] => [
  ...[...straps, ...cores, ...parts, ...slots].map(({ thing }) => thing),
  ...strips.flatMap(({ terminals }) => terminals.map(({ name }) => `terminal:${name}`)),
]

const thingsIn = (board: Board, live = false): readonly string[] =>
  marksIn(drawBoard(board, { live })).flatMap(({ attributes }) => {
    const thing = attributes['data-thing']
    return thing === undefined ? [] : [String(thing)]
  })

describe('the terminal picture', () => {
  test.each([1, 2, 3, 4])('has no text on another with %i strips side by side', (columns) => {
    for (const [name, board] of BOARDS) {
      const leads = {
        red: board.strips[0]?.terminals[0]?.name ?? '',
        black: board.strips[0]?.terminals.at(-1)?.name ?? '',
      }
      expect([name, collisions(drawBoard(board, { columns, leads, path: [leads.red] }))]).toEqual([name, []])
    }
  })

  test('shows every thing of the set, and nothing that is not on it', () => {
    for (const [, board] of BOARDS) expect(new Set(thingsIn(board))).toEqual(new Set(everything(board)))
  })

  test('is the same twice over', () => {
    for (const [name, board] of BOARDS) {
      expect([name, markText(drawBoard(board))]).toEqual([name, markText(drawBoard(structuredClone(board)))])
    }
  })

  test('makes each thing a button once where it is live, with its state and all that it is', () => {
    const board = boardOf(setNamed('fescue'))
    const selected: Thing = 'core:handset.r2'
    const buttons = marksIn(drawBoard(board, { live: true, selected })).filter(
      ({ attributes }) => attributes.role === 'button',
    )
    const names = buttons.map(({ attributes }) => attributes['data-thing'])
    expect(new Set(names).size).toBe(names.length)
    expect(new Set(names)).toEqual(new Set(everything(board)))
    const pressed = buttons.filter(({ attributes }) => attributes['aria-pressed'] === 'true')
    expect(pressed.map(({ attributes }) => attributes['aria-label'])).toEqual([
      'core handset r2, turquoise TQ, on B3, to the handset',
    ])
    expect(marksIn(drawBoard(board)).some(({ attributes }) => 'tabindex' in attributes)).toBe(false)
  })

  test('gives a hand 44 units of height for whatever it can take up', () => {
    for (const [name, board] of BOARDS) {
      const small = marksIn(drawBoard(board, { live: true }))
        .filter(({ attributes }) => attributes.role === 'button')
        .filter(({ children }) => {
          const areas = children.filter((child) => typeof child !== 'string' && child.tag === 'rect')
          return !areas.some((area) => typeof area !== 'string' && Number(area.attributes.height) >= 44)
        })
      expect([name, small.map(({ attributes }) => attributes['data-thing'])]).toEqual([name, []])
    }
  })

  test('says in words and signs what is offered, refused, on the way and at the leads', () => {
    const board = boardOf(setNamed('fescue'))
    const drawn = drawBoard(board, {
      offered: new Set<Thing>(['terminal:B2']),
      refused: new Set<Thing>(['terminal:C4']),
      path: ['A1'],
      leads: { red: 'A2', black: 'A2' },
    })
    const titles = marksIn(drawn)
      .filter(({ tag }) => tag === 'title')
      .map(({ children }) => children.join(''))
    expect(titles).toContain('terminal B2, it can go here')
    expect(titles).toContain('terminal C4, spare, cores line spare, refused')
    expect(titles).toContain('terminal A1, cores line a, on the path')
    expect(titles).toContain('terminal A2, both leads of the meter')
  })

  test('lets no two straps share a lane where they would lie on each other', () => {
    const { set } = rewiredBy('fescue-cores-bridged')
    const straps = {
      ...set.straps,
      'A1-A6': { hold: 'screw' as const },
      'A2-A4': { hold: 'screw' as const },
      'A3-A5': { hold: 'screw' as const },
    }
    const board = boardOf({ ...set, straps })
    for (const columns of [1, 2, 3]) {
      const runs = marksIn(drawBoard(board, { columns }))
        .filter(({ tag, attributes }) => tag === 'polyline' && String(attributes.class).startsWith('run'))
        .map(({ attributes }) =>
          String(attributes.points)
            .split(' ')
            .map((one) => one.split(',').map(Number)),
        )
      const upright = runs.flatMap((points, run) =>
        points.slice(1).flatMap(([x = 0, y = 0], k) => {
          const [u = 0, v = 0] = points[k] ?? []
          return u === x && v !== y ? [{ run, x, low: Math.min(v, y), high: Math.max(v, y) }] : []
        }),
      )
      const meet = upright.filter((p, k) =>
        upright
          .slice(k + 1)
          .some((q) => p.run !== q.run && p.x === q.x && p.low <= q.high && q.low <= p.high),
      )
      expect(meet).toEqual([])
    }
  })

  test('lets a hand take hold of a strap wherever it runs', () => {
    for (const [, board] of BOARDS) {
      for (const columns of [1, 3]) {
        const straps = marksIn(drawBoard(board, { live: true, columns })).filter(({ attributes }) =>
          String(attributes['data-thing']).startsWith('strap:'),
        )
        expect(straps.length).toBe(board.straps.length)
        for (const strap of straps) {
          const runs = marksIn(strap).filter(({ tag }) => tag === 'polyline')
          const points = (look: string) =>
            runs.find(({ attributes }) => String(attributes.class).split(' ').includes(look))?.attributes
              .points
          expect(points('reach')).toBe(points('run'))
        }
      }
    }
  })

  test('keeps what is cut for want of room in the title', () => {
    const set = setNamed('fescue')
    const long = 'a name that is far longer than any strip is broad, and says so at some length'
    const cords = {
      [long]: { 'ends in': 'plug' as const, cores: { a: { lands: 'A1' } } },
    }
    const drawn = marksIn(drawBoard(boardOf({ ...set, cords }), { columns: 1, live: true }))
    const core = drawn.find(({ attributes }) => attributes['data-thing'] === `core:${long}.a`)
    const texts = (tag: string) =>
      marksIn(core ?? drawBoard(boardOf(set)))
        .filter((one) => one.tag === tag)
        .map(({ children }) => children.join(''))
    expect(texts('text').some((text) => text.endsWith('…'))).toBe(true)
    expect(texts('title')[0]).toContain(long)
    expect(core?.attributes['aria-label']).toContain(long)
  })

  test('has no letters smaller than 12 units', () => {
    for (const [, board] of BOARDS)
      for (const { tag, attributes } of marksIn(drawBoard(board, { columns: 1 })))
        if (tag === 'text') expect(Number(attributes['font-size'])).toBeGreaterThanOrEqual(12)
  })

  test('stays well-formed and free of style whatever the sheets say', () => {
    const set = setNamed('sedge')
    const anything = fc.string({ unit: 'binary', maxLength: 60 })
    fc.assert(
      fc.property(anything, anything, anything, (title, colour, name) => {
        const cords = {
          [name || 'c']: { 'ends in': 'plug' as const, cores: { [colour || 'x']: { lands: 'A1', colour } } },
        }
        const slots = { [title || 's']: { sockets: { [name || 'p']: 'A2' }, fitted: colour || 'u' } }
        const board = boardOf({ ...set, title, name, cords, slots })
        for (const live of [true, false]) {
          const text = standalone(drawBoard(board, { live, columns: 1 }))
          expect(wellFormed(text)).toBeUndefined()
          expect(text).not.toContain(' style=')
        }
        expect(collisions(drawBoard(board, { columns: 1 }))).toEqual([])
      }),
      { numRuns: 60 },
    )
  })
})

describe('currents in the terminal picture', () => {
  const { carries } = now({ target: 'fescue', condition: 'off-hook' }, DEMO)
  const board = boardOf(setNamed('fescue'))
  const marks = marksIn(drawBoard(board, { carries }))

  test('each winding is drawn by what it carries itself', () => {
    const lines = marks.filter(
      ({ attributes }) =>
        attributes['data-thing'] === 'part:coil' && String(attributes.class).includes('line'),
    )
    const weightOf = (words: string): string | undefined => {
      const line = lines.find((one) => markText(one).includes(words))
      expect(line).toBeDefined()
      return (line === undefined ? [] : marksIn(line))
        .map(({ attributes }) => String(attributes.class))
        .find((one) => one.startsWith('flow '))
    }
    expect(weightOf('coil a → A5')).toBe('flow flow-4')
    // a capacitor lies behind it, and blocks direct current
    expect(weightOf('coil b → A6')).toBeUndefined()
  })

  test('each strap is drawn by what it carries, one without current too', () => {
    const runs = new Map(
      marks
        .filter(({ attributes }) => String(attributes.class).startsWith('thing strap'))
        .map((strap) => [
          String(strap.attributes['data-thing']),
          marksIn(strap)
            .map(({ attributes }) => String(attributes.class))
            .find((one) => one.startsWith('run')),
        ]),
    )
    expect(runs.size).toBe(board.straps.length)
    for (const { thing } of board.straps)
      expect([thing, runs.get(thing)]).toEqual([thing, `run flow flow-${carries[thing]?.weight ?? 0}`])
    expect(new Set(runs.values()).size).toBeGreaterThan(1)
  })
})
