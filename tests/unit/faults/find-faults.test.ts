import { type CheckAnswer, check } from 'ringproof'
import { contextsOf } from 'ringproof/answer/check-answer'
import { stand } from 'ringproof/answer/standing'
import { CHECKS } from 'ringproof/checks/catalogue'
import type { CheckContext } from 'ringproof/checks/context'
import { findFaults } from 'ringproof/faults/find-faults'
import { describe, expect, test } from 'vitest'
import { checkMoved, checkText, DEMO, setText } from '../../support/bench.ts'

const ids = ({ faults }: CheckAnswer): readonly string[] => faults.map(({ fault }) => fault)

/** Faults of a subject, and how many other installations were compiled to find them. */
function counted(target: string): { readonly faults: number; readonly trials: number } {
  let trials = 0
  const count = (context: CheckContext): CheckContext => ({
    ...context,
    trial: (installation, place) => {
      trials += 1
      return count(context.trial(installation, place))
    },
  })
  const contexts = contextsOf(stand({ target }, DEMO)).map(count)
  const judged = contexts.map((context) =>
    CHECKS.flatMap((rule) => (rule.once === true ? [] : rule.run(context))),
  )
  trials = 0
  return { faults: findFaults(contexts, judged).length, trials }
}

describe('the search for faults', () => {
  test.each(['fescue', 'melick', 'foxtail', 'crossing-box', 'station-house'])(
    'compiles nothing where %s is right',
    (target) => {
      expect(counted(target)).toEqual({ faults: 0, trials: 0 })
    },
  )

  test('tries its mend where something is wrong', () => {
    const { faults, trials } = counted('fescue-strap-missing')
    expect(faults).toBe(1)
    expect(trials).toBeGreaterThan(0)
  })

  test('names one fault once: a core that joins another is not also out of its loop', () => {
    expect(ids(checkMoved('fescue', 'land core: handset.r2, onto: B4'))).toEqual(['cores-joined'])
  })

  test('names two where two are true', () => {
    const answer = checkMoved('fescue', 'land core: handset.t2, onto: A5', 'park core: handset.r1')
    expect(ids(answer)).toEqual(['cores-joined', 'receiver-out'])
  })

  test('names what the netlist tells of a set that stands on no line', () => {
    const answer = check({ target: 'fescue-unit-left-out', on: 'none' }, DEMO)
    expect(ids(answer)).toEqual(['unit-missing'])
  })

  test('a joining that costs nothing is no fault', () => {
    expect(ids(check({ target: 'sedge-cores-joined-harmless' }, DEMO))).toEqual([])
  })
})

describe('what no nearer name fits', () => {
  test('is a core on the wrong terminal, which goes home', () => {
    const [fault, other] = checkMoved('fescue', 'land core: handset.t1, onto: A3').faults
    expect(other).toBeUndefined()
    expect(fault).toMatchObject({
      fault: 'core-on-wrong-terminal',
      subject: 'handset.t1',
      mend: 'with the set unplugged, land core handset.t1 on A5',
    })
    const receive = fault?.consequences.find(({ figure }) => figure.id === 'speech.receive')
    expect(receive?.mended?.value).toBeGreaterThan(2 * (receive?.figure.value ?? Number.NaN))
  })

  test('or a strap too many, which comes off', () => {
    const [fault, other] = checkMoved('fescue', 'fit strap: A2-A4').faults
    expect(other).toBeUndefined()
    expect(fault).toMatchObject({ fault: 'strap-too-many', subject: 'A2-A4' })
    expect(fault?.mend).toMatch(/lift strap A2-A4$/)
  })
})

describe('where the pair crosses', () => {
  test('is told of a plug whose two cores are exchanged', () => {
    const [fault, other] = checkText(setText('fescue', 'plug: {contacts: {5: b, 2: a}}')).faults
    expect(other).toBeUndefined()
    expect(fault).toMatchObject({ fault: 'reversed-at-cord', subject: 'trial' })
    expect(fault?.mend).toMatch(/exchange the two cores of the pair in the plug/)
  })

  test('is another thing than a strap that leads the bell to the b wire', () => {
    const answer = checkMoved('marram', 'lift strap: P3-N1', 'fit strap: P3-N6')
    expect(ids(answer)).toEqual(['bell-returned-wrong'])
    expect(answer.faults[0]?.mend).toMatch(/lift strap P3-N6, then fit strap N1-P3$/)
  })
})

describe('a ringing core that was cut back, while the bell rings from the pair', () => {
  test('is no fault', () => {
    for (const target of ['melick-new-cord', 'fescue-to-two-wires', 'marram-as-found'])
      expect(ids(check({ target }, DEMO)), target).toEqual([])
  })

  test('that is landed after all, with all that must go and come, holds in every check of the wiring', () => {
    const answer = checkMoved(
      'melick-new-cord',
      'lift part: own-capacitor',
      'land core: line.ringing, onto: E2',
      'lift part: quench-r',
      'fit part: new-quench, with: {kind: quench, from: D7, to: E4, resistance: 100 Ω, capacitance: 0.1 µF}',
    )
    const failed = answer.verdicts.filter(
      ({ check: id, state }) => id.startsWith('wiring.') && state === 'fails',
    )
    expect(failed).toEqual([])
  })
})

test('a spare terminal that a strap makes live loses the strap, not the core that waits there', () => {
  const [fault] = checkMoved('fescue', 'fit strap: C2-C4').faults
  expect(fault).toMatchObject({ fault: 'spare-core-joined', subject: 'line.spare' })
  expect(fault?.mend).toMatch(/lift strap C2-C4$/)
})

test('a unit in reach is plugged in by its name', () => {
  const text = [
    'ringproof: 1\nsheet: premises\nname: pair\nline: depot-exchange\nreversed: no',
    'sockets:\n  box: {is: master, capacitance: 1.8 µF, resistance: 470 kΩ}',
    '  two: {is: secondary, fed from: box}',
    'sets:\n  one: {set: fescue, in: box}',
    '  other: {set: fescue, in: two, rewire: fescue-unit-left-out}\n',
  ].join('\n')
  const [fault, second] = check({ target: '', text: { file: 'pair.yaml', text } }, DEMO).faults
  expect(second).toBeUndefined()
  expect(fault).toMatchObject({ fault: 'unit-missing', subject: 'regulator' })
  expect(fault?.mend).toMatch(/plug unit vetch into slot regulator$/)
})

test('a bellset’s b core, parked by its sheet, is parked again where it met the ringing lead', () => {
  const [fault, second] = checkMoved('darnel', 'land core: line.b, onto: G1').faults
  expect(second).toBeUndefined()
  expect(fault).toMatchObject({ fault: 'ringing-lead-touching' })
  expect(fault?.mend).toMatch(/park core line\.b, insulated, on nothing$/)
})

test('a transmitter that another core leaves out is not sought a strap', () => {
  expect(ids(checkMoved('marram', 'park core: line.b'))).toEqual(['core-on-dead-terminal'])
})

test('two bells side by side in one set are no bells in series', () => {
  const spec = '{kind: bell, from: C2, to: C3, resistance: 1 kΩ, inductance: 12 H, rings from: 3 mA at 25 Hz}'
  expect(ids(checkText(setText('fescue', `parts: {second-bell: ${spec}}`)))).toEqual([])
})

/** Premises of one master socket and a secondary for every further set. */
function house(line: string, socket: string, ...sets: readonly string[]): CheckAnswer {
  const sockets = sets.slice(1).map((_, k) => `  s${k + 1}: {is: secondary, fed from: s0${socket}}`)
  const text = [
    `ringproof: 1\nsheet: premises\nname: house\nline: ${line}\nreversed: no`,
    'sockets:\n  s0: {is: master, capacitance: 1.8 µF, resistance: 470 kΩ}',
    ...sockets,
    'sets:',
    ...sets.map((set, k) => `  p${k}: {set: ${set}, in: s${k}}`),
    '',
  ].join('\n')
  return check({ target: '', text: { file: 'house.yaml', text } }, DEMO)
}

test('a mirrored plug in a mirrored socket is right', () => {
  expect(ids(house('depot-exchange', ', mirrored: yes', 'fescue', 'fescue-mirrored-plug'))).toEqual([])
})

describe('bells on one capacitor', () => {
  test('that are equal gain nothing by a resistor, so that none is named', () => {
    const five = Array.from({ length: 5 }, () => 'marram')
    expect(ids(house('adapter-port', '', ...five))).toEqual(['too-many-bells'])
  })

  test('of which one is hungry, though all ring, show no fault', () => {
    expect(ids(house('depot-exchange', '', 'marram', 'fescue'))).toEqual([])
  })

  test('are not too many because of one that is silent by itself', () => {
    expect(ids(house('depot-exchange', '', 'fescue', 'fescue-coil-turned'))).toEqual(['bell-coils-turned'])
  })
})

test('a fault explains those checks only that fail where it stands, and those of the whole line', () => {
  const found = house('depot-exchange', '', 'fescue, reversed: yes', 'fescue')
  const [fault, second] = found.faults
  expect(second).toBeUndefined()
  expect(fault?.fault).toBe('reversed-at-cord')
  expect(fault?.explains).toContain('wiring.bell-return')
  const failed = new Set(found.verdicts.filter(({ state }) => state === 'fails').map(({ check: id }) => id))
  expect(fault?.explains.filter((id) => !failed.has(id))).toEqual([])
  expect(checkMoved('fescue', 'fit strap: A2-A4').faults[0]?.explains).toContain('wiring.quench-present')
})

test('two master sockets on one lead are told from two with a lead each', () => {
  const says = (target: string): string => check({ target }, DEMO).faults[0]?.says ?? ''
  expect(says('schoolroom')).toMatch(/every bell on the lead gets more/)
  expect(says('lodge')).toMatch(/no hush of one set reaches the bells on the other’s lead/)
})
