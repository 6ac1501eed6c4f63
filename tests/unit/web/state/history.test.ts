import fc from 'fast-check'
import { amended, begun, changed, redone, stepsBack, stepsForward, undone } from 'ringproof/web/state/history'
import { describe, expect, test } from 'vitest'
import { SEED } from '../../../support/seed.ts'

type Step = { readonly does: 'undo' | 'redo' } | { readonly does: 'change'; readonly to: number }

const steps = fc.array(
  fc.oneof(
    fc.constant<Step>({ does: 'undo' }),
    fc.constant<Step>({ does: 'redo' }),
    fc.integer().map((to): Step => ({ does: 'change', to })),
  ),
  { maxLength: 60 },
)

describe('a history', () => {
  test('does what two stacks do, step by step', () => {
    fc.assert(
      fc.property(steps, (all) => {
        let history = begun(0)
        let past: number[] = []
        let present = 0
        let future: number[] = []
        for (const step of all) {
          if (step.does === 'change') {
            past = [...past, present]
            present = step.to
            future = []
            history = changed(history, step.to)
          } else if (step.does === 'undo') {
            history = undone(history)
            if (past.length > 0) {
              future = [present, ...future]
              present = past.at(-1) ?? 0
              past = past.slice(0, -1)
            }
          } else {
            history = redone(history)
            if (future.length > 0) {
              past = [...past, present]
              present = future[0] ?? 0
              future = future.slice(1)
            }
          }
          expect(history.present).toBe(present)
          expect(stepsBack(history)).toBe(past.length)
          expect(stepsForward(history)).toBe(future.length)
        }
      }),
      { seed: SEED },
    )
  })

  test('is the same where there is no step', () => {
    const history = begun('a')
    expect(undone(history)).toBe(history)
    expect(redone(history)).toBe(history)
  })

  test('shares its links: a change makes one and copies none', () => {
    const before = changed(changed(begun(1), 2), 3)
    const after = changed(before, 4)
    expect(after.past?.next).toBe(before.past)
  })

  test('is amended without a step', () => {
    const history = amended(changed(begun('a'), 'b'), 'B')
    expect(history.present).toBe('B')
    expect(stepsBack(history)).toBe(1)
    expect(undone(history).present).toBe('a')
    expect(redone(undone(history)).present).toBe('B')
  })

  test('goes a hundred thousand steps and back', () => {
    let history = begun(0)
    for (let at = 1; at <= 100_000; at += 1) history = changed(history, at)
    for (let at = 0; at < 100_000; at += 1) history = undone(history)
    expect(history.present).toBe(0)
    expect(stepsForward(history)).toBe(100_000)
  })
})
