import { answerText, check, PLAIN, toJson } from 'ringproof'
import { describe, expect, test } from 'vitest'
import { DEMO } from '../support/bench.ts'
import { ringproof } from './ringproof.ts'

/** Premises of the demo in which sets stand. */
const houses = DEMO.names('premises').filter((name) => {
  const text = DEMO.find('premises', name)?.text ?? ''
  return !/^sets: \{\}/m.test(text)
})

describe('the page of premises', () => {
  test.each(houses)('of %s fits its page, names every place, and ends with its counts', (target) => {
    const answer = check({ target }, DEMO)
    for (const width of [60, 80, 120]) {
      const text = answerText(answer, { width, paint: PLAIN })
      const lines = text.trimEnd().split('\n')
      expect(lines.filter((line) => Array.from(line).length > width)).toEqual([])
      for (const { place } of answer.stands?.sets ?? []) expect(text).toContain(`\n  ${place} `)
      expect(lines.at(-1)).toMatch(
        /^(?:\d+ faults? by name, )?\d+ fails?, \d+ marginal, \d+ unknown, \d+ holds?$/,
      )
      expect(text).not.toMatch(/NaN|Infinity|undefined\b(?!:)|\[object/)
    }
    expect(toJson(answer)).toHaveProperty('stands')
  })

  test('of twelve sets takes about two screens', () => {
    const largest = houses.map((target) => [target, DEMO.find('premises', target)?.text ?? ''] as const)
    const [name = ''] =
      largest.toSorted((p, q) => q[1].split('set: ').length - p[1].split('set: ').length)[0] ?? []
    const answer = check({ target: name }, DEMO)
    expect(answer.stands?.sets).toHaveLength(12)
    expect(answerText(answer, { width: 80, paint: PLAIN }).split('\n').length).toBeLessThan(110)
  })

  test('has a long form with every failing verdict and all figures', async () => {
    const [house = ''] = houses
    const short = (await ringproof(['check', house])).out
    const whole = (await ringproof(['check', house, '--whole'])).out
    expect(whole).toContain('\nFigures\n')
    expect(short).not.toContain('\nFigures\n')
    expect(whole.split('\n').length).toBeGreaterThan(short.split('\n').length)
    const json = async (...more: string[]) =>
      JSON.parse((await ringproof(['check', house, '--json', ...more])).out)
    const [a, b] = [await json(), await json('--whole')]
    expect({ ...b, request: a.request }).toEqual(a)
  })
})

test('help is laid out for the width that is asked for', async () => {
  for (const argv of [['help', 'check'], ['check', '--help'], ['--help']]) {
    const narrow = (await ringproof([...argv, '--width', '60'])).out
    const wide = (await ringproof([...argv, '--width', '160'], { columns: 60 })).out
    expect(narrow.split('\n').length).toBeGreaterThan(wide.split('\n').length)
    expect((await ringproof([...argv, '--width=60'])).out).toBe(narrow)
    expect((await ringproof([...argv, '--width', '9'])).code).toBe(2)
  }
})
