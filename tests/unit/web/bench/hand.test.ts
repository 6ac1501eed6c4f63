import { moveTo } from 'ringproof/web/views/bench/state/hand'
import { expect, test } from 'vitest'

test('what is in the hand lands by a move, a lead of the meter by none', () => {
  expect(moveTo({ what: 'core', core: 'handset.r2' }, 'B3')).toEqual({
    do: 'land core',
    what: 'handset.r2',
    onto: 'B3',
  })
  expect(moveTo({ what: 'strap', from: 'A1' }, 'A2')).toEqual({ do: 'fit strap', what: 'A1-A2' })
  expect(moveTo({ what: 'lead', lead: 'red' }, 'A1')).toBeUndefined()
})
