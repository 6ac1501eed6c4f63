/** A mend is judged by all that it changes: what fails then is said, and what follows from a fault is told by its trial. */
import { type CheckAnswer, check } from 'ringproof'
import { describe, expect, test } from 'vitest'
import { besides, checkMoved, DEMO } from '../../support/bench.ts'

type Fault = CheckAnswer['faults'][number]

const faultOf = (answer: CheckAnswer, fault: string): Fault => {
  const found = answer.faults.find((one) => one.fault === fault)
  if (found === undefined) throw new Error(`${fault} is not named`)
  return found
}

describe('a mend that makes something else fail', () => {
  test('brings the bell resistor without which the ringing load would fail', () => {
    const { mend } = faultOf(
      check({ target: 'marram-own-capacitor-in-series' }, DEMO),
      'own-capacitor-left-in',
    )
    expect(mend).toMatch(/lift part own-capacitor, then fit part bell-resistor: resistor from P1 to P2/)
    expect(mend).toMatch(/without the bell resistor `line\.ringing-load` \(4\.98 against 4\.00\) would fail$/)
    const after = checkMoved(
      'marram',
      'lift strap: P1-P2',
      'fit part: bell-resistor, with: {kind: resistor, from: P1, to: P2, resistance: 3.3 kΩ}',
    )
    expect(after.verdicts.filter(({ state }) => state === 'fails')).toEqual([])
  })

  test('says what fails then where no resistor helps', () => {
    // a line that drives a quarter of a set: the mend gives the bell its current, and the load its excess
    const line = (DEMO.find('line', 'depot-exchange')?.text ?? '')
      .replace('name: depot-exchange', 'name: weak-drive')
      .replace(/ringing load: \d+/, 'ringing load: 0.5')
    const answer = check({ target: 'fescue-without-ringing-lead', on: 'weak-drive' }, besides(line))
    expect(faultOf(answer, 'ringing-lead-missing').mend).toMatch(
      /land core line\.ringing on C1; then `line\.ringing-load` \(0\.852 against 0\.500\) fails: move /,
    )
  })

  test('adds nothing where nothing else fails', () => {
    const { mend } = faultOf(check({ target: 'fescue-without-ringing-lead' }, DEMO), 'ringing-lead-missing')
    expect(mend).toMatch(/land core line\.ringing on C1$/)
  })
})

describe('a core that earths the line', () => {
  const answer = check({ target: 'crossing-box-astray' }, DEMO)
  const [fault, second] = answer.faults

  test('comes before all else that it may have its part in', () => {
    expect([fault?.fault, second?.fault]).toEqual(['line-earthed', 'mirrored-numbering'])
    expect(fault?.subject).toBe('line.earth')
  })

  test('explains what its trial brings right in all sets, with a figure of each', () => {
    expect(fault?.explains).toEqual(
      expect.arrayContaining([
        'wiring.earth-free',
        'line.current',
        'line.leakage',
        'bell.rings-alone',
        'dial.understood',
        'speech.sends',
      ]),
    )
    const subjects = fault?.consequences.map(({ figure }) => figure.subject) ?? []
    for (const of of ['signalman', 'crossing-box-astray', 'relief']) expect(subjects).toContain(of)
    const relief = fault?.consequences.find(({ figure }) => figure.subject === 'relief')
    expect(relief?.figure.value).toBeLessThan(1e-3)
    expect(relief?.mended?.value).toBeGreaterThan(0.02)
    expect(fault?.says).toContain('relief suffers too')
  })

  test('leaves nothing of line, bell, dial and speech unexplained', () => {
    const explained = new Set(answer.faults.flatMap(({ explains }) => explains))
    const open = answer.verdicts.filter(({ check: id, state }) => state === 'fails' && !explained.has(id))
    expect(open.map(({ check: id, subject }) => `${id} ${subject}`)).toEqual([])
  })

  test('is no fault of the earth where the socket has none', () => {
    expect(check({ target: 'brome-earth-core-astray' }, DEMO).faults.map(({ fault: id }) => id)).toEqual([
      'spare-core-joined',
    ])
  })
})

describe('the mirrored numbering', () => {
  test('of a plug is told core by core, by both numberings', () => {
    const { mend } = faultOf(check({ target: 'fescue-mirrored-plug' }, DEMO), 'mirrored-numbering')
    expect(mend).toContain('core a from contact 5 (wiring 2) to contact 2 (wiring 5)')
    expect(mend).toContain('core ringing from contact 3 (wiring 4) to contact 4 (wiring 3)')
    expect(mend).toContain('core b from contact 2 (wiring 5) to contact 5 (wiring 2)')
  })

  test('of a socket is told wire by wire, and covers all that the silent bell brings', () => {
    const answer = check({ target: 'parcels-office' }, DEMO)
    const fault = faultOf(answer, 'mirrored-numbering')
    expect(fault.mend).toContain('the ringing lead from contact 3 (wiring 4) to contact 4 (wiring 3)')
    const open = answer.verdicts.filter(
      ({ check: id, state }) => state === 'fails' && !fault.explains.includes(id),
    )
    expect(open.map(({ check: id }) => id).filter((id) => !id.startsWith('speech.'))).toEqual([])
  })

  test('does not cover that the line understands no pulses', () => {
    const answer = check({ target: 'parcels-office', on: 'adapter-port' }, DEMO)
    expect(faultOf(answer, 'mirrored-numbering').explains).not.toContain('dial.understood')
  })
})

describe('a socket without ringing lead', () => {
  test.each([
    ['gatehouse', 'front', 'stairs', 'stair-foot'],
    ['cottage-bare', 'box', 'wall', 'parlour'],
  ])(
    'of %s is mended by a third wire, tried, and shows the contact that meets nothing',
    (target, from, to, place) => {
      const answer = check({ target }, DEMO)
      const fault = faultOf(answer, 'ringing-lead-missing')
      expect(fault.path).toEqual([`${place}/plug.ringing`])
      expect(fault.mend).toContain(
        `run a third wire for the ringing lead from socket ${from}, which has it, to socket ${to}`,
      )
      expect(fault.mend).toContain('licensed practice')
      expect(fault.consequences[0]?.mended?.value).toBeGreaterThan(3e-3)
      for (const id of ['bell.rings-alone', 'wiring.ringing-lead-to-bell']) {
        const one = answer.verdicts.find(
          ({ check: what, subject }) => what === id && subject === `${place}/bell`,
        )
        expect(one).toMatchObject({ state: 'fails', path: [`${place}/plug.ringing`] })
        expect(one).toHaveProperty('mend', expect.stringContaining(`from socket ${from}`))
        expect(one?.consequences?.[0]?.mended?.value).toBeGreaterThan(3e-3)
      }
    },
  )
})
