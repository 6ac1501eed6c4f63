import { describe, expect, test } from 'vitest'
import { jsonOf, ringproof } from '../faces/ringproof.ts'

const talk = async (answers: readonly string[], argv: readonly string[] = []) => {
  const left = [...answers]
  return ringproof(['identify', '--ask', ...argv], { ask: () => Promise.resolve(left.shift()) })
}
/** A sedge that is all but found: what is asked begins with a strap. */
const BEGUN = [...['--seen', 'board=board', '--seen', 'slot=no'], ...['--reading', 'A5 C1 off-hook 4.35 kΩ']]

describe('the dialogue of identify', () => {
  test('asks what can be seen first, takes no for an answer that is none, and ends with the whole answer', async () => {
    const { out, code } = await talk(['yes', 'perhaps', '', 'stop'])
    expect(code).toBe(0)
    expect(out.indexOf('Question 1: Has it a handset?')).toBeGreaterThan(out.indexOf('Unplug the set'))
    expect(out).toContain('Not understood: `perhaps`.')
    expect(out).toContain('What it may be')
    // said once, at the top
    expect(out.match(/Unplug the set/g)).toHaveLength(1)
  })

  test('takes numbers of the answers, in any order with words, and says what they were taken for', async () => {
    const [numbered, worded] = await Promise.all([talk(['2', 'stop']), talk(['YES', 'stop'])])
    expect(numbered.out).toMatch(/1 {2}no\n {2}2 {2}yes/)
    expect(numbered.out).toContain('noted: yes')
    expect(worded.out).not.toContain('noted:')
    expect(worded.out).toContain('so far: Not told yet.')
    const found = /handset +yes/
    expect(numbered.out).toMatch(found)
    expect(worded.out).toMatch(found)
  })

  test('says how and why, and asks again', async () => {
    const { out } = await talk(['?', 'stop'])
    expect(out).toContain('it is expected to tell')
    expect(out.match(/Question 1: Has it a handset\?/g)).toHaveLength(2)
    expect(out).toContain('darnel, darnel-in-series')
    expect(out).toContain('Nothing is found yet.')
  })

  test('goes back, over what was skipped too, and not before the first question', async () => {
    const { out } = await talk(['back', 'no', 'skip', 'back', 'undo', 'stop'])
    expect(out).toContain('There is no answer to take back.')
    expect(out.match(/Question 1: Has it a handset\?/g)).toHaveLength(3)
    expect(out.match(/Question 2: /g)).toHaveLength(2)
    // as if nothing had been answered
    expect(out).toContain('Nothing is found yet.')
    expect(out).not.toContain('before; the last that you gave counts')
  })

  test('takes a bare number for ohms, and tells what is wrong with another', async () => {
    const { out } = await talk(['skip', 'skip', '0,2', '0.2', 'stop'], BEGUN)
    expect(out).toContain('What does the meter read between B1 and B3?')
    expect(out.replace(/\s+/g, ' ')).toContain('Write `0.2 Ω`, with a point')
    expect(out).toContain('noted: 0.2 Ω')
    expect(out).toMatch(/B1 B3 on-hook +0\.2 Ω/)
  })

  test('has no line wider than the page', async () => {
    const { out } = await talk(['no', '?', '', '', '?', ''], ['--width', '60'])
    expect(out.split('\n').filter((line) => [...line].length > 60)).toEqual([])
  })

  test('ends with its input', async () => {
    expect((await talk([])).code).toBe(0)
  })

  test('keeps its questions out of JSON', async () => {
    const ran = await talk(['yes'], ['--json'])
    const { data, wrong } = jsonOf(ran)
    expect(wrong).toEqual([])
    expect(data).toHaveProperty('cautions.0')
    expect(ran.err).toContain('Has it a handset?')
  })

  test('is refused where nobody can be asked', async () => {
    const { code, err } = await ringproof(['identify', '--ask'])
    expect(code).toBe(2)
    expect(err).toContain('--ask')
  })
})
