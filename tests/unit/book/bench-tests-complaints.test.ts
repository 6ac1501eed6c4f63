import { COMPLAINTS, complaintsFor, SYMPTOMS } from 'ringproof/book/bench-tests/index'
import type { Change } from 'ringproof/figures/variants'
import { describe, expect, test } from 'vitest'
import { type OnBench, onBench } from './_bench-tests.ts'

const house = onBench({ target: 'station-house', at: 'office' })
const sedge = onBench({ target: 'sedge' })

/** Ids of the complaints that somebody would have. */
function heldBy(on: OnBench, changes: readonly Change[] = []): readonly string[] {
  return complaintsFor(on.tests)
    .filter(({ answers }) =>
      answers.every(({ test: id, answers: those }) => those.includes(on.answer(id, changes))),
    )
    .map(({ id }) => id)
}

describe('complaints', () => {
  test('name tests and answers that there are', () => {
    for (const { answers } of COMPLAINTS) {
      for (const { test: id, answers: those } of answers) {
        expect(SYMPTOMS).toContain(id)
        const known = house.test(id).words!.answers.map((one) => one.id)
        expect(known).toEqual(expect.arrayContaining([...those]))
      }
    }
    expect(new Set(COMPLAINTS.map(({ id }) => id)).size).toBe(COMPLAINTS.length)
  })

  test('have a meaning only where what they speak of can be tried', () => {
    const alone = complaintsFor(sedge.tests).map(({ id }) => id)
    expect(alone).not.toContain('others-affected')
    expect(alone).not.toContain('rings-only-beside-another')
    expect(complaintsFor(house.tests).length).toBe(COMPLAINTS.length)
    expect(complaintsFor([])).toEqual([])
  })

  test('nobody complains of a sound set', () => {
    expect(heldBy(sedge)).toEqual([])
  })

  test.each<readonly [string, readonly string[]]>([
    ['shorted', ['rings-but-no-speech', 'cannot-be-heard']],
    ['packed', ['rings-but-no-speech', 'cannot-be-heard']],
    [
      'open',
      ['rings-but-no-speech', 'ringing-not-stopped', 'no-dial-tone', 'cannot-be-heard', 'hears-nothing'],
    ],
  ])('of a transmitter that is %s', (mode, complaints) => {
    expect(heldBy(sedge, sedge.mode('transmitter', mode))).toEqual(complaints)
  })

  test('of a bell that is stiff, open, or whose set shorts the line', () => {
    expect(heldBy(sedge, sedge.mode('bell', 'stiff'))).toEqual(['bell-weak'])
    expect(heldBy(sedge, sedge.mode('bell', 'open'))).toEqual(['bell-silent'])
    const short: Change = { bridge: { from: house.node('plug.a'), to: house.node('plug.b'), ohms: 10 } }
    expect(heldBy(house, [short])).toEqual(
      expect.arrayContaining(['bell-silent', 'drops-when-ringing', 'always-busy', 'others-affected']),
    )
  })
})
