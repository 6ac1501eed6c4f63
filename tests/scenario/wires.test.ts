/** Two wires and three: a set converted either way, each before and after. */
import { check, compare, type Figure, figures, solve } from 'ringproof'
import { describe, expect, test } from 'vitest'
import { DEMO, verdictsOf } from '../support/bench.ts'
import { assertClose } from '../support/close.ts'
import { add, complex, modulus } from '../support/complex.ts'
import { bellOf, bellsOf, FESCUE, IDEAL, shares } from './_ringing.ts'

const NEAR = { relative: 2e-3 }
const of = (found: readonly Figure[], id: string): number =>
  found.find((one) => one.id === id)?.value ?? Number.NaN

/** mA at the contacts of the plug while it rings: a wire, b wire, ringing lead. */
function plug(target: string, place: string, onText = IDEAL) {
  const { currents } = solve({ target, onText, condition: 'on-hook/ringing', frequency: 25 }, DEMO)
  const at = (contact: number): number => 1e3 * modulus(complex(currents[`${place}/plug.${contact}`] ?? 0))
  const three = `${place}/plug.3` in currents
  return {
    a: at(5),
    b: at(2),
    ringing: three ? at(3) : 0,
    bell: 1e3 * modulus(complex(currents[`${place}/bell`] ?? 0)),
  }
}

describe('a melick', () => {
  // two coils of 500 Ω and 3 H in series with a coupling of 0.9: 1 kΩ and 2·3·(1 + 0.9) H
  const bell = bellOf(1000, 0, 2 * 3 * 1.9)
  const capacitor = { re: 0, im: -1 / (2 * Math.PI * 25 * 1e-6) }

  test('before: rings from the pair through its own capacitor, and leaves its ringing lead alone', () => {
    const found = plug('melick-new-cord', 'melick-new-cord')
    // the socket's own 1.8 µF and 470 kΩ lie beside it, and take a little
    const alone = 75e3 / modulus(add({ re: 400, im: 0 }, add(bell, capacitor)))
    assertClose(found.bell, alone, { relative: 5e-3 }, 'bell')
    assertClose(found.a, found.bell, { relative: 1e-3 }, 'a wire')
    assertClose(found.b, found.bell, { relative: 1e-3 }, 'b wire')
    expect(found.ringing).toBeLessThan(1e-6)
  })

  test('after: rings from the ringing lead behind its new resistor, and leaves the b wire alone', () => {
    const found = plug('melick-to-three-wires', 'melick-new-cord')
    assertClose(found.bell, shares([bellOf(1000, 3300, 11.4)])[0] ?? 0, NEAR, 'bell')
    assertClose(found.ringing, found.bell, { relative: 1e-3 }, 'ringing lead')
    assertClose(found.a, found.bell, { relative: 1e-3 }, 'a wire')
    expect(found.b).toBeLessThan(1e-3 * found.bell)
  })

  test('its loop and its speech are what they were, and nothing fails that did not before', () => {
    const { found, proposed } = compare({ found: 'melick-new-cord', proposed: 'melick-to-three-wires' }, DEMO)
    for (const id of [
      'loop.current',
      'loop.resistance',
      'transmitter.current',
      'speech.send',
      'speech.receive',
    ])
      assertClose(of(proposed.figures, id), of(found.figures, id), { relative: 0.02 }, id)
    const failing = (all: typeof found.verdicts) =>
      all.filter(({ state }) => state === 'fails').map(({ check: id }) => id)
    // its bell rings from the pair before: the ringing core parked on purpose is a remark, no failure
    expect(failing(found.verdicts)).toEqual([])
    const lead = found.verdicts.find(({ check: id }) => id === 'wiring.ringing-lead-to-bell')
    expect(lead).toMatchObject({ state: 'holds', remark: expect.stringContaining('from the pair') })
    expect(failing(proposed.verdicts)).toEqual([])
  })

  test('is one of the four in the museum annexe, and gets what its neighbours get', () => {
    const currents = Object.values(bellsOf('museum-annexe'))
    expect(Math.max(...currents) / Math.min(...currents)).toBeLessThan(1.02)
  })
})

describe('a three-wire set on a line of two wires', () => {
  test('before: in the gatehouse the bell gets nothing, though the set speaks', () => {
    const { 'stair-foot': silent = 0, 'stair-head': ringing = 0 } = bellsOf('gatehouse')
    expect(silent).toBeLessThan(1e-6 * ringing)
    const loops = figures({ target: 'gatehouse', only: 'loop.current' }, DEMO).figures
    for (const { value } of loops) expect(value).toBeGreaterThan(0.02)
  })

  test('after: with a capacitor of its own it gets what a set on a ringing lead gets', () => {
    // 1.8 µF here and 1.8 µF there, without the 470 kΩ beside the bell; three other sets share the source
    const { hall = 0, 'stair-head': head = 0 } = bellsOf('gatehouse')
    assertClose(head, hall, { relative: 0.01 }, 'beside a right one')
    const alone = plug('fescue-to-two-wires', 'fescue')
    assertClose(alone.bell, shares([FESCUE])[0] ?? 0, { relative: 0.01 }, 'alone')
    assertClose(alone.a, alone.b, { relative: 1e-3 }, 'a wire and b wire')
    expect(alone.ringing).toBeLessThan(1e-6)
  })

  test('the check says which of the gatehouse is silent, and that it is silent alone too', () => {
    const answer = check({ target: 'gatehouse' }, DEMO)
    for (const id of ['bell.rings-alone', 'bell.rings-with-all']) {
      const failing = verdictsOf(answer, id).filter(({ state }) => state === 'fails')
      expect(failing.map(({ subject }) => subject.split('/')[0])).toEqual(['stair-foot'])
    }
  })

  test('an adapter lead with its own capacitor does for a set what a capacitor in the set would', () => {
    expect(bellsOf('cottage-bare').parlour).toBeLessThan(1e-6)
    // behind 40 Ω of a converter, with 100 kΩ beside
    assertClose(bellsOf('cottage').parlour, shares([FESCUE])[0] ?? 0, { relative: 0.03 }, 'parlour')
    const state = (target: string) => verdictsOf(check({ target }, DEMO), 'bell.rings-alone')[0]?.state
    expect(state('cottage-bare')).toBe('fails')
    expect(state('cottage')).toMatch(/^(holds|marginal)$/)
  })
})
