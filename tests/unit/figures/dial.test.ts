import { leakageOpen, resistanceMade } from 'ringproof/figures/dial'
import { conditionOf, readCondition } from 'ringproof/netlist/condition'
import { describe, expect, test } from 'vitest'
import { assertClose } from '../../support/close.ts'
import { house, lineText, plainSet, standing } from './_stand.ts'

const said = (written: string) => {
  const read = readCondition(written)
  if (read === undefined) throw new Error(written)
  return conditionOf('desk', read)
}
const MADE = said('off-hook/make')
const BROKEN = said('off-hook/break')

/** AS/CA S002:2010, 5.5.1.8, grade SEEN-P: 48 V behind 1900 Ω. */
const LINE = lineText({ feed: '{voltage: 48 V, resistance: 1900 Ω, negative: b wire}' })
const SOCKET = ['front: {is: master, capacitance: 1.8 µF, resistance: 1e15 Ω}']

describe('a dial held still', () => {
  const one = standing(
    house(LINE, SOCKET, ['desk: {set: plain, in: front}'], plainSet(2099.9, { broken: 13_142.857 })),
  )

  test('closes the loop through so many ohms, contacts of the plug included', () => {
    const plan = resistanceMade(one.net, one.place, MADE)
    const figure = plan && one.context.figure(plan)
    expect(figure).toMatchObject({ id: 'dial.resistance-made', unit: 'Ω', subject: 'desk' })
    assertClose(figure?.value, 2100, { relative: 1e-9 }, 'made')
  })

  test('leaves so much current while it is open: 15 242.857 Ω is 2.8 mA', () => {
    const figure = one.context.figure(leakageOpen(one.net, one.place, one.line, BROKEN))
    expect(figure).toMatchObject({ id: 'dial.leakage-open', unit: 'A', subject: 'desk' })
    assertClose(figure.value, 0.0028, { relative: 1e-7 }, 'broken')
  })

  test('counts what others on the line draw meanwhile', () => {
    const parts = 'drain: {kind: resistor, from: A1, to: A2, resistance: 20 kΩ}'
    const two = standing(
      house(
        LINE,
        [...SOCKET, 'back: {is: secondary, fed from: front}'],
        ['desk: {set: plain, in: front}', 'wall: {set: leaky, in: back}'],
        plainSet(600),
        { file: 'leaky.yaml', text: plainSet(600, { parts }).text.replace('name: plain', 'name: leaky') },
      ),
    )
    const figure = two.context.figure(leakageOpen(two.net, two.place, two.line, BROKEN))
    assertClose(figure.value, 48 / (1900 + 20_000.1), { relative: 1e-6 }, 'of the other set')
  })

  test('has no resistance where the set stands in no socket', () => {
    expect(resistanceMade(one.net, { ...one.place, socket: undefined }, MADE)).toBeUndefined()
  })
})
