import { wiringNumber } from 'ringproof/netlist/compile-set'
import { bothNumbers, NUMBERED_WIRES, numbersText } from 'ringproof/netlist/plug-numbers'
import { describe, expect, test } from 'vitest'

// BS 6312 plugs and sockets, both numberings and their mirror at second hand (SEEN-S)
describe('the two numberings of a plug', () => {
  test.each([
    ['b wire', 2, 5],
    ['ringing lead', 3, 4],
    ['earth', 4, 3],
    ['a wire', 5, 2],
  ] as const)('have the %s at wiring terminal %d and contact %d', (wire, wiring, contact) => {
    expect(NUMBERED_WIRES.filter((one) => one.wire === wire)).toEqual([{ wire, wiring, contact }])
  })

  test('leave the outer contacts spare', () => {
    const spare = NUMBERED_WIRES.filter(({ wire }) => wire === 'spare')
    expect(spare.map(({ wiring, contact }) => [wiring, contact])).toEqual([
      [1, 6],
      [6, 1],
    ])
  })

  test.each([1, 2, 3, 4, 5, 6])('mirror each other, there and back: %d', (number) => {
    const { wiring, contact } = bothNumbers(number)
    expect(wiring + contact).toBe(7)
    expect(bothNumbers(contact).contact).toBe(wiring)
    expect(wiringNumber('contact', contact)).toBe(wiring)
  })

  test('are always said together', () => {
    expect(numbersText(bothNumbers(3))).toBe('wiring 3, contact 4')
  })
})
