import { when } from 'ringproof/checks/context'
import { bothUp, othersWithHandset } from 'ringproof/checks/speech/together'
import { directCurrent } from 'ringproof/figures/loop'
import type { Condition } from 'ringproof/netlist/condition'
import type { SheetText } from 'ringproof/sheet/shelf'
import { describe, expect, test } from 'vitest'
import { assertClose } from '../../support/close.ts'
import { askOne, contexts, mendOf } from './_ask.ts'

const TWO = 'speech.two-sets'

/** Premises with these sets in one socket. */
function together(line: string, ...sets: readonly string[]): SheetText {
  const places = sets
    .map(
      (set, k) =>
        `  place-${k + 1}: {set: ${set.replace('-unit-left-out', '')}, in: box${set.endsWith('-unit-left-out') ? `, rewire: ${set}` : ''}}\n`,
    )
    .join('')
  return {
    file: 'trial.yaml',
    text: `ringproof: 1\nsheet: premises\nname: trial\nline: ${line}\nsockets:\n  box: {is: master, capacitance: 1.8 µF, resistance: 470 kΩ, gas tube: 250 V}\nsets:\n${places}`,
  }
}

describe('two sets off-hook together', () => {
  test('share the loop evenly where they are alike, and lose what a second load takes', () => {
    const one = askOne(TWO, { text: together('depot-exchange', 'fescue', 'fescue') }, 'place-1')
    expect(one.state).toBe('holds')
    const [mine, its] = one.consequences ?? []
    assertClose(mine?.figure.value, its?.figure.value ?? 0, { relative: 1e-9 }, 'by symmetry')
    // matched, a second equal load takes 20 lg (3/2) = 3.5 dB; with the change of feed a little more or less
    const falls = [...one.says.matchAll(/(\d+\.\d) dB less/g)].map(([, dB]) => Number(dB))
    expect(falls).toHaveLength(2)
    const [heard = 0, hears = 0] = falls
    expect(hears).toBeGreaterThan(2)
    expect(hears).toBeLessThan(5)
    // its transmitter is fed with half the current besides
    expect(heard).toBeGreaterThan(hears)
    expect(heard).toBeLessThan(hears + 6)
  })

  test('hold the least current of the line’s sheet against the worse fed of the two', () => {
    const one = askOne(TWO, { text: together('depot-exchange', 'melick', 'fescue') }, 'place-1')
    expect(one).toMatchObject({
      state: 'holds',
      figure: { id: 'loop.current', subject: 'place-2' },
      limit: { value: 0.02, side: 'at-least', grade: 'SHEET' },
    })
  })

  test('hold what is left of the speech against its own limit, where that is the nearer', () => {
    const text = together('depot-exchange', 'fescue', 'marram')
    const one = askOne(TWO, { text }, 'place-1')
    expect(one).toMatchObject({
      state: 'fails',
      figure: { id: 'speech.send', subject: 'place-1/transmitter' },
      limit: { unit: 'A', grade: 'COMMON PRACTICE' },
    })
    // 10 dB down, and a carbon transmitter whose resistance goes by I^−0.5 gives as √I of its feed
    const [context] = contexts({ text })
    if (context === undefined) throw new Error('a set stands there')
    const sender = context.net.branches.find(({ id }) => id === 'place-1/transmitter')
    const feed = (condition: Condition) =>
      context.figure(directCurrent('transmitter.current', sender!, condition)).value ?? 0
    const drive = Math.sqrt(feed(bothUp(context, 'place-2', 'speech')) / feed(when(context, 'off-hook')))
    const told = one.consequences?.find(({ figure }) => figure.id === 'speech.send')
    assertClose(one.limit?.value, (0.316 * (told?.mended?.value ?? 0)) / drive, { relative: 1e-6 }, 'A')
    // one number for both that less is passed and that less is fed
    const passed = 20 * Math.log10((told?.mended?.value ?? 0) / (told?.figure.value ?? 0))
    const fed = -20 * Math.log10(drive)
    expect(one.says).toContain(`place-1 is heard ${Math.round(passed + fed)} dB less`)
    expect(one.says.length).toBeLessThan(160)
  })

  test('are no question where the set gets too little by itself', () => {
    const one = askOne(TWO, { text: together('adapter-port', 'fescue-unit-left-out', 'fescue') }, 'place-1')
    expect(one).toMatchObject({ state: 'unknown', reason: 'undetermined' })
    expect(one.says).toContain('line.current')
  })

  test.each(['valley-exchange', 'adapter-port'])('fail on the %s, which feeds one', (line) => {
    const one = askOne(TWO, { text: together(line, 'fescue', 'fescue') }, 'place-1')
    expect(one).toMatchObject({ state: 'fails', figure: { id: 'loop.current' } })
    expect(mendOf(one)).toBe(
      'speak from one set at a time: hang up place-2 while place-1 is in use, or the other way round',
    )
  })

  test('are told with the set that takes most, of those that stand there', () => {
    const text = together('depot-exchange', 'fescue', 'darnel', 'sedge', 'marram')
    expect(askOne(TWO, { text }, 'place-1').says).toContain('place-4')
    expect(askOne(TWO, { text }, 'place-4').says).toContain('place-3')
    expect(askOne(TWO, { text }, 'place-2')).toMatchObject({ state: 'unknown', reason: 'undetermined' })
  })

  test.each([['alone'], ['beside a bell', 'darnel']])('are no question for a set %s', (_says, ...more) => {
    const one = askOne(TWO, { text: together('depot-exchange', 'fescue', ...more) }, 'place-1')
    expect(one).toMatchObject({ state: 'unknown', reason: 'undetermined', figure: null })
    expect(one.says).toBe('No second set with a handset stands on this line.')
  })

  test('are one condition for either of them', () => {
    const [first, second] = contexts({ text: together('depot-exchange', 'fescue', 'sedge') })
    if (first === undefined || second === undefined) throw new Error('two sets stand there')
    expect(othersWithHandset(first).map(({ place }) => place)).toEqual(['place-2'])
    expect(JSON.stringify(bothUp(first, 'place-2', 'idle'))).toBe(
      JSON.stringify(bothUp(second, 'place-1', 'idle')),
    )
  })
})
