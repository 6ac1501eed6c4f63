import { describe, expect, test } from 'vitest'
import { assertClose } from '../support/close.ts'
import { divide, modulus } from '../support/complex.ts'
import { house } from './_house.ts'

/** A bell of 1000 Ω + 3300 Ω between ringing lead and a wire, less the 50 mΩ of each of its two plug contacts. */
const BELL = '{kind: resistor, from: A3, to: A1, resistance: 4299.9 Ω}'
const LAST = (places: number) => ({ relative: 0, absolute: 0.5 * 10 ** -places })

/**
 * 1 to 4 bells at 25 Hz and 75 V: modulus and impedance in Ω without and with 470 kΩ, current and that of each bell
 * in mA. Derived from the parts of the master socket in a national interface note, secondary copy; grade DERIVED.
 * A hand-made table had 20.2894 and 5.0724 for four bells; 75 V by its own 3696.5407 Ω is what stands here.
 */
const TABLE = [
  [1, 5567.6555, 4261.0162, 13.4707, 13.4707],
  [2, 4138.996, 2140.2097, 18.1203, 9.0602],
  [3, 3816.1804, 1428.9755, 19.6532, 6.5511],
  [4, 3696.5407, 1072.5468, 20.2892, 5.0723],
] as const

describe.each(TABLE)('%d bells in sockets fed from a master socket', (sets, size, real, together, each) => {
  test('without its resistor draw through its capacitor what the table says', () => {
    const net = house({ part: BELL, sets }, true)
    const current = net.current('front/capacitor')
    assertClose(modulus(divide({ re: 75, im: 0 }, current)), size, LAST(4), 'modulus')
    assertClose(1000 * modulus(current), together, LAST(4), 'current')
    for (let at = 1; at <= sets; at += 1) {
      assertClose(1000 * modulus(net.current(`set${at}/bell`)), each, LAST(4), `bell ${at}`)
    }
  })

  test('with 470 kΩ have the impedance that the table says', () => {
    const net = house({ part: BELL, sets, socketResistance: '470 kΩ' }, true)
    const z = divide({ re: 75, im: 0 }, net.current('front/capacitor'))
    assertClose(z.re, real, LAST(4), 'resistance')
    assertClose(z.im, -3536.7765, LAST(4), 'reactance')
  })
})

// plug numbering: BS 6312 and its mirror image k → 7 − k, national interface note, secondary copy; grade SEEN-S
describe('a plug', () => {
  const bell = (plug: string) => house({ part: BELL, plug }, true).current('set1/bell')
  const current = 75 / 5567.6555

  test('has the ringing lead on terminal 3 of the wiring, which is contact 4', () => {
    const wiring = bell('{numbered by: wiring, contacts: {5: a, 2: b, 3: ringing}}')
    const contact = bell('{numbered by: contact, contacts: {2: a, 5: b, 4: ringing}}')
    assertClose(modulus(wiring), current, { relative: 1e-8 }, 'by wiring')
    assertClose(contact, wiring, { relative: 1e-14 }, 'by contact')
  })

  test('read in the wrong numbering rings nothing: the pair maps to itself, the ringing lead does not', () => {
    const slipped = bell('{numbered by: contact, contacts: {5: a, 2: b, 3: ringing}}')
    expect(modulus(slipped)).toBeLessThan(1e-9)
  })
})
