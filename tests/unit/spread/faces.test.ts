import { describe, expect, test } from 'vitest'
import { jsonOf, ringproof } from '../../faces/ringproof.ts'

const run = (line: string) => ringproof(line.split(' '))

describe('`ringproof spread`', () => {
  test('tells figures by condition, and the verdicts in doubt', async () => {
    const { code, out } = await run('spread fescue --draws 40')
    expect(code).toBe(0)
    expect(out).toContain('40 sets drawn, normal with three standard deviations at the limits, seed 1.')
    expect(out).toMatch(/loop current +60\.4 mA +48\.1 to 65\.8 mA +\S+ to \S+ mA +transmitter/)
    expect(out).toContain('MARGINAL speech.receives of receiver')
    expect(out).toContain('Hardly moved')
    expect(out).toContain('no proof that nothing is')
    expect(Math.max(...out.split('\n').map((one) => one.length))).toBeLessThanOrEqual(80)
  })

  test('prints JSON of its schema', async () => {
    for (const line of [
      'spread fescue loop --draws 5 --age 30 --json',
      'spread foxtail ringing.current --draws 3 --json',
    ]) {
      const { data, wrong } = jsonOf(await run(line))
      expect(wrong).toEqual([])
      expect(data.ringproof).toBe('spread/1')
    }
  })

  test('says what age does, from memory', async () => {
    const { out } = await run('spread fescue loop.current --draws 5 --age 50')
    expect(out).toContain('Aged by 50 years: capacitor capacitance × 1.10')
    expect(out.replace(/\s+/g, ' ')).toContain('a leakage of 20.0 MΩ beside each µF of a capacitor')
    expect(out).toContain('no measurement')
  })

  test('names the figures whose slopes are by differences', async () => {
    const { out } = await run('spread foxtail ringing.current --draws 3')
    expect(out).toMatch(/by differences of whole solves, not by the adjoint\s+method:\s+ringing.current/)
  })

  test('says when there are no figures', async () => {
    const { out } = await run('spread fescue --on none --draws 2')
    expect(out).toContain('No figures')
    // its wiring is judged all the same
    expect(out).toMatch(/All \d+ hold in the worst case too/)
    const other = (await run('spread fescue resistance.between --draws 2')).out
    expect(other).toContain('No figure of that name is worked out here.')
    expect(other).not.toContain('plugged into a line')
  })

  test('leaves no verdict out without a word: followed and not followed are all that `check` has', async () => {
    const { data, wrong } = jsonOf(await run('spread sedge --draws 2 --json'))
    expect(wrong).toEqual([])
    const { data: check } = jsonOf(await run('check sedge --json'))
    const names = (given: unknown): string[] =>
      (given as { check: string; subject: string }[])
        .map(({ check: id, subject }) => `${id} ${subject}`)
        .sort()
    type Verdicts = { readonly verdicts: unknown; readonly 'not followed': unknown }
    const all = data as unknown as Verdicts
    const left = all['not followed'] as { check: string; state: string; reason?: string }[]
    expect([...names(all.verdicts), ...names(left)].sort()).toEqual(
      names((check as unknown as Verdicts).verdicts),
    )
    expect(left.find(({ check: id }) => id === 'dial.rate')).toMatchObject({
      state: 'unknown',
      reason: 'not-modelled',
    })
    const { out } = await run('spread sedge --draws 2')
    expect(out.replace(/\s+/g, ' ')).toContain(
      '17 more compare no figure with a limit, so that nothing can spread: 7 HOLDS, 10 UNKNOWN.',
    )
  })

  test('names the figure that decides in the worst case where it is another one, and draws fewer of many sets', async () => {
    const { out } = await run('spread station-house loop.voltage')
    expect(out).toContain('200 sets drawn')
  })

  test.each([
    ['--draws many', 'found `many` behind `--draws`'],
    ['--draws 0', 'expected a whole number from 1 to 100000'],
    ['--seed 1.5', 'found `1.5` behind `--seed`'],
    ['--age old', 'found the age `old`'],
    ['--age 151', 'expected 0 to 150 years'],
    ['--law triangle', 'expected `normal` or `uniform`'],
  ])('refuses %s', async (words, says) => {
    const { code, err, out } = await run(`spread fescue ${words}`)
    expect(code).toBe(2)
    expect(err + out).toContain(says)
  })
})
