/** What is said of one's own voice where a part of the handset is out. */
import { describe, expect, test } from 'vitest'
import { askOne } from './_ask.ts'

describe('one’s own voice', () => {
  test.each([
    ['fescue', /^Its own voice is \d+(\.\d+)? dB below a far voice/],
    ['fescue-receiver-strap-missing', /^Nothing at all is heard in the receiver\.$/],
    ['fescue-transmitter-parked', /^No direct current to speak of feeds its transmitter/],
  ])('of a %s', (target, says) => {
    const one = askOne('speech.sidetone', { target })
    expect(one).toMatchObject({ state: 'unknown', reason: 'no-limit' })
    expect(one.says).toMatch(says)
  })
})
