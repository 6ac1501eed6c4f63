/** Twelve sets on one capacitor: none rings, and what would make them. */
import { check, figures } from 'ringproof'
import { describe, expect, test } from 'vitest'
import { besides, DEMO, verdictsOf } from '../support/bench.ts'
import { bellsOf, FESCUE, IDEAL, rings, shares, silent } from './_ringing.ts'

describe('twelve sets in the museum hall', () => {
  test('none rings, though each would alone', () => {
    const answer = check({ target: 'museum-hall' }, DEMO)
    expect(rings(answer)).toEqual([])
    expect(silent(answer)).toHaveLength(12)
    expect(rings(answer, 'bell.rings-alone')).toHaveLength(12)
  })

  test('of which as many ring as the mend leaves plugged in, and with one set more it does not help', () => {
    const text = DEMO.find('premises', 'museum-hall')?.text ?? ''
    const [one] = verdictsOf(check({ target: 'museum-hall' }, DEMO), 'bell.rings-with-all')
    const named = /unplug (.*), who take/.exec(one?.state === 'fails' ? one.mend : '')?.[1] ?? ''
    const count = named.match(/case-\d+/g)?.length ?? 0
    const [first = ''] = one?.subject.split('/') ?? []
    const takers = Object.entries(bellsOf('museum-hall', 'depot-exchange'))
      .filter(([place]) => place !== first)
      .sort(([, p], [, q]) => q - p)
      .map(([place]) => place)
    const without = (gone: number): number => {
      const places = takers.slice(0, gone).join('|')
      const rest = text.replace(new RegExp(`^ {2}(${places}): .*\n`, 'gm'), '')
      const found = figures(
        { target: '', text: { file: 'rest.yaml', text: rest }, only: 'ringing.current' },
        DEMO,
      )
      const mine = found.figures.filter(({ subject }) => subject.startsWith(`${first}/`))
      expect(found.figures.filter(({ id }) => id === 'ringing.current')).toHaveLength(12 - gone)
      return 1e3 * (mine[0]?.value ?? Number.NaN)
    }
    expect(without(count)).toBeGreaterThanOrEqual(3)
    expect(without(count - 1)).toBeLessThan(3)
  })

  test('four of them on a line of their own all ring, and are what the line allows', () => {
    const answer = check({ target: 'museum-annexe' }, DEMO)
    expect(rings(answer)).toHaveLength(4)
    expect(verdictsOf(answer, 'line.ringing-load').map(({ state }) => state)).toEqual([
      expect.stringMatching(/^(holds|marginal)$/),
    ])
  })

  test('of equal sets just as many ring as the closed form says', () => {
    const each = (count: number): number => shares(Array.from({ length: count }, () => FESCUE))[0] ?? 0
    const counts = Array.from({ length: 12 }, (_, k) => k + 1)
    const most = Math.max(...counts.filter((count) => each(count) >= 3))
    expect(most).toBeGreaterThan(4)
    expect(most).toBeLessThan(12)
    for (const count of counts) {
      const currents = Object.values(bellsOfMany(count))
      expect(currents).toHaveLength(count)
      expect(Math.min(...currents) >= 3, `${count} sets`).toBe(count <= most)
    }
  })
})

/** mA in the bells of so many fescues in one master socket and on what it feeds. */
function bellsOfMany(count: number): Readonly<Record<string, number>> {
  const numbers = Array.from({ length: count }, (_, k) => k + 1)
  const text = [
    'ringproof: 1',
    'sheet: premises',
    'name: many',
    'line: depot-exchange',
    'sockets:',
    '  s0: {is: master, capacitance: 1.8 µF, resistance: 470 kΩ}',
    ...numbers.map((k) => `  s${k}: {is: secondary, fed from: s0}`),
    'sets:',
    ...numbers.map((k) => `  set-${k}: {set: fescue, in: s${k}}`),
    '',
  ].join('\n')
  const found = figures({ target: 'many', onText: IDEAL, only: 'ringing.current' }, besides(text)).figures
  return Object.fromEntries(found.map(({ subject, value }) => [subject, 1e3 * (value ?? Number.NaN)]))
}
