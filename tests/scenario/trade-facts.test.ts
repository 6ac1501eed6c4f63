import { check, solve } from 'ringproof'
import { describe, expect, test } from 'vitest'
import { checkMoved, DEMO, verdictOf } from '../support/bench.ts'

type Solved = ReturnType<typeof solve>

function size({ currents }: Solved, branch: string): number {
  const amount = currents[branch]
  if (amount === null || amount === undefined) throw new Error(`no current in ${branch}`)
  return typeof amount === 'number' ? Math.abs(amount) : Math.hypot(amount.re, amount.im)
}

/** Currents in the plug's contacts by wiring number: 5 a wire, 2 b wire, 3 ringing lead. */
function plug(
  set: string,
  condition: string,
  frequency?: number,
): Readonly<Record<'a' | 'b' | 'ringing', number>> {
  const solved = solve({ target: set, condition, ...(frequency === undefined ? {} : { frequency }) }, DEMO)
  return {
    a: size(solved, `${set}/plug.5`),
    b: size(solved, `${set}/plug.2`),
    ringing: size(solved, `${set}/plug.3`),
  }
}

// common practice, no source
describe('a core landed on a strapped neighbour', () => {
  test.each([
    ['sedge', 'handset.r2', 'B3', 'handset.t2, handset.r2'],
    ['fescue', 'handset.t2', 'B2', 'handset.t2, handset.r2'],
    ['fescue', 'handset.r1', 'B2', 'handset.r1, handset.r2'],
  ])('shorts two handset cores: in a %s, %s on %s', (set, core, onto, pair) => {
    const one = verdictOf(checkMoved(set, `land core: ${core}, onto: ${onto}`), 'wiring.cores-separate')
    expect(one.subject).toBe(pair)
    expect(one.path.length).toBeGreaterThan(3)
  })
})

// common practice, no source
describe.each(['fescue', 'sedge'])('of the wires to a %s', (set) => {
  test('the two line wires carry the call, equally, and the ringing lead carries none of it', () => {
    for (const frequency of [undefined, 1000]) {
      const { a, b, ringing } = plug(set, 'off-hook/speech', frequency)
      expect(a).toBeGreaterThan(0)
      // at 1 kHz a little goes through the master socket's capacitor and the bell
      expect(Math.abs(a / b - 1)).toBeLessThan(frequency === undefined ? 1e-6 : 0.02)
      expect(ringing / a).toBeLessThan(frequency === undefined ? 1e-3 : 0.02)
    }
  })

  test('the ringing lead carries the bell’s current, which returns in the a wire, and the b wire carries none', () => {
    const { a, b, ringing } = plug(set, 'on-hook/ringing', 25)
    const bell = size(
      solve({ target: set, condition: 'on-hook/ringing', frequency: 25 }, DEMO),
      `${set}/bell`,
    )
    expect(bell).toBeGreaterThan(1e-3)
    expect(Math.abs(ringing / bell - 1)).toBeLessThan(1e-3)
    expect(Math.abs(a / bell - 1)).toBeLessThan(1e-3)
    expect(b / bell).toBeLessThan(1e-3)
  })

  test('the loss of the ringing lead silences the bell and leaves the call as it is', () => {
    const loose = checkMoved(set, 'park core: line.ringing')
    const whole = check({ target: set }, DEMO)
    const of = (answer: typeof whole, id: string) =>
      answer.figures.find((figure) => figure.id === id)?.value ?? Number.NaN
    expect(of(loose, 'ringing.current')).toBeLessThan(1e-6)
    expect(Math.abs(of(loose, 'loop.current') / of(whole, 'loop.current') - 1)).toBeLessThan(1e-3)
    expect(Math.abs(of(loose, 'speech.send') / of(whole, 'speech.send') - 1)).toBeLessThan(0.02)
  })
})
