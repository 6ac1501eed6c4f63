import { readOpen } from 'ringproof/web/views/bench/opening/read-open'
import { describe, expect, it } from 'vitest'

describe('readOpen', () => {
  it('reads what shall lie on the bench', () => {
    expect(readOpen('set/meadow')).toEqual({ sort: 'set', name: 'meadow' })
    expect(readOpen('premises/barn')).toEqual({ sort: 'premises', name: 'barn' })
  })
  it.each(['', 'meadow', 'set/', 'line/far'])('cannot read %j', (text) => {
    expect(readOpen(text)).toBeUndefined()
  })
})
