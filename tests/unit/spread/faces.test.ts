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
    expect(out).toContain('no measurement')
  })

  test('names the figures whose slopes are by differences', async () => {
    const { out } = await run('spread foxtail ringing.current --draws 3')
    expect(out).toMatch(/by differences of whole solves, not by the adjoint\s+method:\s+ringing.current/)
  })

  test('says when there are no figures', async () => {
    expect((await run('spread fescue --on none --draws 2')).out).toContain('No figures')
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
