import { progressOn, watched } from 'ringproof/cli/progress'
import { describe, expect, test } from 'vitest'
import { ringproof } from '../../faces/ringproof.ts'

/** A terminal whose lines are kept, with a clock that is turned by hand. */
function terminal() {
  const lines: string[] = []
  let now = 0
  const io = { status: (text: string) => lines.push(text) }
  return { io: io as never, lines, wait: (ms: number) => (now += ms), clock: () => now }
}

describe('progress', () => {
  test('shows nothing for work of less than a second', () => {
    const { io, lines, wait, clock } = terminal()
    const { tell, done } = progressOn(io, clock)
    wait(999)
    tell('checking the hall')
    done()
    expect(lines).toEqual([])
  })

  test('shows one line after a second and takes it away at the end', () => {
    const { io, lines, wait, clock } = terminal()
    const { tell, done } = progressOn(io, clock)
    wait(1000)
    tell('checking the hall')
    tell('checking the porch')
    done()
    expect(lines).toEqual(['checking the hall', 'checking the porch', ''])
  })

  test('says a word at once before work that cannot be looked into, and whatever follows', () => {
    const { io, lines, clock } = terminal()
    const { tell, begin, done } = progressOn(io, clock)
    begin('laying out')
    tell('checking the hall')
    done()
    expect(lines).toEqual(['laying out', 'checking the hall', ''])
  })

  test('is silent where errors go to no terminal', () => {
    const { tell, begin, done } = progressOn({} as never, () => Number.MAX_SAFE_INTEGER)
    begin('laying out')
    tell('checking the hall')
    done()
    expect(watched({} as never, () => 7)).toBe(7)
  })

  test('is taken away when the work fails', () => {
    const { io, lines } = terminal()
    const real = performance.now
    let now = 0
    performance.now = () => now
    try {
      expect(() =>
        watched(io, (tell) => {
          now = 2000
          tell('checking')
          throw new Error('broken')
        }),
      ).toThrow('broken')
    } finally {
      performance.now = real
    }
    expect(lines).toEqual(['checking', ''])
  })

  test.each([
    [['check', 'lodge'], /^checking /],
    [['compare', 'sedge-converted'], /^leaving out move /],
    [['meter', 'fescue', '--short'], /^reading /],
  ])('is told by %j, on the terminal alone', async (argv, words) => {
    const shown: string[] = []
    const real = performance.now
    let now = 0
    // every look at the clock finds a second gone
    performance.now = () => (now += 1000)
    try {
      const { out, err } = await ringproof(argv, { status: (text) => shown.push(text) })
      expect(shown.some((line) => words.test(line))).toBe(true)
      expect(shown.at(-1)).toBe('')
      expect(err).toBe('')
      for (const line of shown.filter((one) => one !== '')) expect(out).not.toContain(line)
    } finally {
      performance.now = real
    }
  })
})
