import { fileURLToPath } from 'node:url'
import { describe, expect, test } from 'vitest'
import { beside, jsonOf, ringproof } from './ringproof.ts'

interface Read {
  readonly readings: readonly {
    readonly id: string
    readonly red: string
    readonly black: string
    readonly value: number | null
    readonly floating?: boolean
    readonly peak?: { readonly between?: number; readonly 'to earth'?: number }
  }[]
  readonly points: readonly { readonly name: string; readonly ids: readonly string[] }[]
  readonly cautions: readonly string[]
  readonly what: string
}

const INSTRUMENTS = fileURLToPath(new URL('../../netlists/instruments.yaml', import.meta.url))
const LIVE = ['meter', 'fescue', '--on', 'depot-exchange']
const flat = (text: string): string => text.replace(/\s+/g, ' ')

async function data(argv: readonly string[]): Promise<Read> {
  const ran = await ringproof([...argv, '--json'])
  const { data: read, wrong } = jsonOf(ran)
  expect({ argv, code: ran.code, wrong }).toEqual({ argv, code: 0, wrong: [] })
  return read as unknown as Read
}

describe('a meter in JSON', () => {
  test.each([
    ['a table', ['meter', 'fescue'], 'table'],
    ['a short table', ['meter', 'fescue', '--short'], 'table'],
    ['a table by needle', ['meter', 'fescue', '--instrument', 'needle'], 'table'],
    ['one reading', ['meter', 'fescue', '--between', 'plug.a', 'plug.b'], 'one'],
    ['a capacitance', ['meter', 'fescue', '--between', 'A6', 'B5', '--range', 'capacitance'], 'one'],
    ['a live table', LIVE, 'live'],
    ['one live reading', [...LIVE, '--between', 'plug.a', 'plug.b', '--condition', 'on-hook/ringing'], 'one'],
  ])('is as its schema says: %s', async (_says, argv, what) => {
    expect((await data(argv)).what).toBe(what)
  })

  test('is the same for a short table as for the whole one', async () => {
    const [short, whole] = [await data(['meter', 'fescue', '--short']), await data(['meter', 'fescue'])]
    expect(short.readings).toEqual(whole.readings)
  })
})

describe('a meter on a live line', () => {
  // common practice, no source: nobody opens a set that is alive
  test('is held to the contacts of the plug, which need no open case', async () => {
    const { points, readings } = await data(LIVE)
    expect(points.flatMap(({ ids }) => ids)).toEqual(
      ['a', 'b', 'ringing', 'spare'].map((core) => `fescue/plug.${core}`),
    )
    const held = new Set(readings.flatMap(({ red, black }) => [red, black]))
    for (const id of held) expect(id).toMatch(/^fescue\/plug\./)
  })

  test('cautions more strongly for a point inside, which must be named', async () => {
    const inside = (await data([...LIVE, '--between', 'A1', 'B5'])).cautions.join(' ')
    const outside = (await data([...LIVE, '--between', 'plug.a', 'plug.b'])).cautions.join(' ')
    expect(inside).toMatch(/stands open on a live line.*local codes and licensed practice/is)
    expect(outside).not.toMatch(/stands open/)
  })

  test('says how high a wire climbs while it rings, and calls a loose core floating', async () => {
    const { readings, cautions } = await data(LIVE)
    const top = Math.max(...readings.map(({ peak }) => peak?.['to earth'] ?? 0))
    // battery 50 V and √2 · 75 V of the sheet are the most that can come; the bell's load takes a little
    expect(top).toBeLessThan(50 + Math.SQRT2 * 75)
    expect(top).toBeGreaterThan(0.9 * (50 + Math.SQRT2 * 75))
    expect(cautions.join(' ')).toContain(`${Math.round(top)} V to earth`)
    const spare = readings.filter(({ black }) => black === 'fescue/plug.spare')
    expect(spare.length).toBeGreaterThan(0)
    for (const { value, floating } of spare)
      expect({ value, floating }).toEqual({ value: null, floating: true })
    expect((await ringproof(LIVE)).out).toContain('floating: it wanders: ')
  })
})

describe('a printed table', () => {
  test('has room for a restorer’s own readings, a date and a mark', async () => {
    const { out } = await ringproof(['meter', 'fescue'])
    expect(out).toMatch(/^Date _+ +Mark of the set _+$/m)
    expect(out).toMatch(/red – black +reads +within +yours +through/)
    expect(out).toMatch(/449\.5 Ω .* ______ /)
  })

  test('explains its words, those that occur', async () => {
    const digital = (await ringproof(['meter', 'fescue'])).out
    for (const word of ['scrape', 'click']) expect(digital).toContain(`\n  ${word}: `)
    for (const word of ['misread', 'kick', 'floating']) expect(digital).not.toContain(`\n  ${word}: `)
    expect((await ringproof(['meter', 'fescue', '--instrument', 'needle'])).out).toContain('\n  kick: ')
  })

  test('calls a pair open on ohms where its capacitance stands above', async () => {
    const { out } = await ringproof(['meter', 'fescue', '--width', '160'])
    expect(out).toMatch(/ {2}open on ohms: .*A2 – A3/)
  })

  test('says what none of its readings tell', async () => {
    const { out } = await ringproof(['meter', 'fescue', '--width', '160'])
    expect(out).toMatch(/not told by any pair of points: .*balance-c,/)
  })

  test('fits one page of print when it is short', async () => {
    const { out } = await ringproof(['meter', 'fescue', '--short'])
    expect(out.split('\n').length).toBeLessThan(66)
    expect(out).toMatch(/a – b +down +open .*\n +a – b +up +449\.5 Ω .*scrape/)
    expect(out).toContain('told: a, b, ringing, spare')
    expect(out).not.toContain('joint-3')
    expect(out).toContain('\n  scrape: ')
    expect(out).not.toContain('\n  diode range: ')
  })

  test('is short for a set behind a bridge by the drops of its diodes as well', async () => {
    const { out } = await ringproof(['meter', beside('behind-a-bridge.yaml'), '--short'])
    expect(out).toMatch(/a – b +up +\d+\.\d kΩ .*\n +a – b +[12]\.\d{3} V .*diode range/)
    expect(out).toContain('\n  diode range: ')
  })
})

describe('what a meter is asked', () => {
  test('may name one instrument of several in a file', async () => {
    const between = ['--between', 'C1', 'C2']
    const needle = await ringproof(['meter', 'fescue', '--instrument', `${INSTRUMENTS}:needle`, ...between])
    expect(needle.out).toContain('needle: a needle instrument')
    const { code, err } = await ringproof(['meter', 'fescue', '--instrument', INSTRUMENTS])
    expect(code).toBe(2)
    expect(flat(err).replaceAll(' ', '')).toContain(`write\`--instrument${INSTRUMENTS}:digital\``)
    const own = beside('one-instrument.yaml')
    expect((await ringproof(['meter', 'fescue', '--instrument', `${own}:bench-box`, ...between])).code).toBe(
      0,
    )
  })

  test('names no contact by a number that two numberings count differently', async () => {
    const { code, err } = await ringproof(['meter', 'fescue', '--between', 'plug.5', 'plug.b'])
    expect(code).toBe(2)
    expect(flat(err)).toContain(
      '5 is `plug.a` by the wiring numbering and `plug.b` by the numbers of the contacts',
    )
  })

  test('of premises with several sets says how two points are written', async () => {
    const { code, err } = await ringproof(['meter', beside('two-sets.yaml')])
    expect(code).toBe(2)
    expect(flat(err)).toContain('--between hall/plug.a hall/plug.b')
  })
})

test('premises are counted by their own name, one or several', async () => {
  expect((await ringproof(['list', 'premises'])).out).toMatch(/\n\d+ premises\n$/)
})
