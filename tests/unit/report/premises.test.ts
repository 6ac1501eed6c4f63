import type { Verdict } from 'ringproof/checks/rule'
import type { NamedFault } from 'ringproof/faults/named-fault'
import { PLAIN } from 'ringproof/report/paint'
import { answerText } from 'ringproof/report/text'
import { describe, expect, test } from 'vitest'
import { at, CORE_LOOSE, figure, PREMISES } from './answers.ts'

const page = (answer: typeof PREMISES = PREMISES, width = 80) => answerText(answer, { width, paint: PLAIN })
const flowing = (text: string) => text.replace(/\s+/g, ' ')

describe('the page of premises', () => {
  const text = page()

  test('has a row for each set: place, set or rewire, socket, handset, what its bell gets and needs', () => {
    expect(text).toMatch(/parlour +kiosk +front +2\.10 mA +3 mA +no/)
    expect(text).toMatch(/pantry +kiosk- +back +up +2\.40 mA +3 mA +no/)
    expect(text).toMatch(/attic +kiosk +back, reversed +4\.10 mA +3 mA +yes/)
  })

  test('says which sockets are made up by the mirrored numbering', () => {
    expect(text).toContain('Made up by the mirrored numbering: back')
  })

  test('puts the named fault before the line, the mends and what fails', () => {
    const places = ['What is wrong', 'The line', 'What to do', 'What fails'].map((one) => text.indexOf(one))
    expect(places).toEqual([...places].sort((a, b) => a - b))
    expect(places[0]).toBeGreaterThan(0)
  })

  test('shows a fault with its place, path by both numbers, and figures now and mended', () => {
    expect(text).toContain('attic: core on a dead terminal')
    expect(flowing(text)).toContain('path plug.ringing (wiring 3, contact 4) – C4')
    expect(text).toMatch(/ringing current in the bell at 1 kHz +attic +0 A +4\.10 mA/)
  })

  test('says in one line what the fault explains', () => {
    expect(flowing(text)).toContain(
      'FAILS wiring.ringing-lead-to-bell (attic); as said above: core on a dead terminal',
    )
    expect(text).not.toContain('The ringing lead does not reach the bell.')
  })

  test('takes equal failures of several sets together, from the least figure to the most', () => {
    expect(text).toContain('FAILS  bell.rings-with-all · parlour, pantry\n')
    expect(flowing(text)).toContain('ringing current in the bell at 1 kHz: 2.10 mA to 2.40 mA')
    expect(text.match(/FAILS {2}bell\.rings-with-all/g)).toHaveLength(1)
  })

  test('judges the line as a whole against its limit', () => {
    expect(text).toMatch(/line\.ringing-load +fails +2\.80 +at most 2 +ringing load, units of +/)
  })

  test('says what mends the fault, and of what may follow from it only that it is to be checked again', () => {
    expect(text).toContain('  1 attic: land core line.ringing on C1\n')
    expect(flowing(text)).toContain(
      'mend this first, then check again: 3 more failures may follow from it: bell.rings-with-all (parlour, pantry), line.ringing-load',
    )
    expect(text).not.toContain('unplug a set')
    expect(text).not.toContain('to another line')
    expect(text.match(/land core/g)).toHaveLength(1)
  })

  test('shows a socket by both numberings and says that one number alone is ambiguous', () => {
    expect(text).toMatch(/wiring terminal +2 +3 +4 +5 +1, 6\n +contact +5 +4 +3 +2 +6, 1\n/)
    expect(flowing(text)).toContain('One number alone is ambiguous')
  })

  test('ends with the counts, after one caution', () => {
    expect(text.trimEnd().split('\n').at(-1)).toBe('1 fault by name, 4 fail, 0 marginal, 0 unknown, 1 holds')
    expect(text.match(/Caution:/g)).toHaveLength(1)
  })

  test('takes the table in two where it is narrow', () => {
    const narrow = page(PREMISES, 60)
    expect(narrow.match(/^ {2}place /gm)).toHaveLength(2)
    expect(narrow).toMatch(/parlour +2\.10 mA/)
  })
})

describe('what to do', () => {
  const [lead, load] = [CORE_LOOSE, PREMISES.verdicts.at(-1)]
  const toDo = (answer: Partial<typeof PREMISES>) => {
    const text = page({ ...PREMISES, ...answer })
    return flowing(text.slice(text.indexOf('What to do'), text.indexOf('What fails, by check')))
  }

  test('is each mend once, with the sets that it is for, where no fault has a name', () => {
    const verdicts = PREMISES.verdicts.filter(({ check }) => !check.startsWith('wiring.'))
    const says = toDo({ faults: [], verdicts })
    expect(says).toContain('1 parlour, pantry: unplug a set 2 line.ringing-load: move any one of them')
    expect(says).not.toContain('check again')
  })

  test('keeps the mend of what no fault can reach', () => {
    const recall: NamedFault = {
      ...lead,
      fault: 'touchable-live',
      title: 'metal on a wire',
      explains: ['wiring.touchable-free'],
      consequences: [],
    }
    const says = toDo({ faults: [recall] })
    expect(says).not.toContain('check again')
    expect(says).toContain('2 parlour, pantry: unplug a set')
    expect(load?.check).toBe('line.ringing-load')
  })

  test('is said in order where several faults are to be mended', () => {
    const other: NamedFault = { ...lead, subject: 'pantry/line.a', mend: 'land core pantry/line.a on A1' }
    expect(toDo({ faults: [lead, other] })).toContain(
      'What to do: 1 and 2, in this order 1 attic: land core line.ringing on C1 2 pantry: land core line.a on A1 mend these first',
    )
  })

  test('is one job where the moves of one fault are among those of another', () => {
    const longer: NamedFault = {
      ...lead,
      mend: 'with the set unplugged, land core attic/line.ringing on C1, then fit strap C1-C2',
    }
    const says = toDo({ faults: [lead, longer] })
    expect(says).toContain('1 attic: with the set unplugged, land core line.ringing on C1, then fit')
    expect(says.match(/land core/g)).toHaveLength(1)
  })
})

describe('two handsets up at once', () => {
  const both = (place: string, current: number, send: number): Verdict => ({
    check: 'speech.two-sets',
    subject: place,
    state: 'fails',
    condition: at('off-hook/speech', place),
    says: `With attic off-hook too, ${place} gets little.`,
    figure: figure({ id: 'speech.send', subject: `${place}/transmitter`, value: send }),
    limit: {
      value: 4e-4,
      side: 'at-least',
      unit: 'A',
      source: 'common practice, no source',
      clause: '-',
      grade: 'COMMON PRACTICE',
    },
    margin: send / 4e-4 - 1,
    path: [],
    consequences: [
      { figure: figure({ id: 'loop.current', subject: place, value: current }) },
      { figure: figure({ id: 'loop.current', subject: 'attic', value: 0.0539 }) },
      {
        figure: figure({ id: 'speech.send', subject: `${place}/transmitter`, value: send }),
        mended: figure({ id: 'speech.send', subject: `${place}/transmitter`, value: 10 ** 0.5 * send }),
      },
    ],
    mend: 'hang one of the two up',
  })
  const verdicts = [both('parlour', 0.0229, 2.6e-4), both('pantry', 0.0231, 2.61e-4)]

  test('are one row for pairs that are alike: currents, decibels lost, how far short', () => {
    const text = page({ ...PREMISES, faults: [], verdicts }, 110)
    expect(text).toMatch(/parlour, pantry +22\.9 mA +attic +53\.9 mA +10 dB +– +35 %\n/)
    expect(text).not.toContain('gets little')
  })

  test('are told apart where their currents differ', () => {
    const text = page({
      ...PREMISES,
      faults: [],
      verdicts: [both('parlour', 0.0229, 2.6e-4), both('pantry', 0.031, 2.6e-4)],
    })
    expect(text).toMatch(/parlour +22\.9 mA +attic/)
    expect(text).toMatch(/pantry +31\.0 mA +attic/)
  })

  test('are in words in the long form', () => {
    const text = page({ ...PREMISES, request: { ...PREMISES.request, whole: true }, faults: [], verdicts })
    expect(text).toContain('With attic off-hook too, parlour gets little.')
  })
})

describe('bells that are equal', () => {
  const equal = {
    bells: 3,
    least: 0.0042,
    most: 0.0043,
    resistor: 3300,
    'in all': 0.0039,
    'in one': { itself: 0.0028, others: 0.0047 },
  }
  test('are said to share, with what a resistor in all of them and in one alone would change', () => {
    const text = flowing(page({ ...PREMISES, 'equal bells': equal }))
    expect(text).toContain(
      '3 equal bells share what passes the ringing capacitor: each gets about 1/3 of 12.8 mA, 4.25 mA.',
    )
    expect(text).toContain('A further 3.3 kΩ in all of them would change that little (3.90 mA, −9.3 %)')
    expect(text).toContain('that one would get 2.80 mA (−35 %) and each of the others 4.70 mA')
  })

  test('are not said to change little where they do not', () => {
    const text = flowing(page({ ...PREMISES, 'equal bells': { ...equal, 'in all': 0.002 } }))
    expect(text).toContain('would only take from each (2.00 mA, −53 %)')
    expect(text).not.toContain('change that little')
  })
})

describe('the long form of premises', () => {
  const text = page({ ...PREMISES, request: { ...PREMISES.request, whole: true } })

  test('keeps the table and shows every failing verdict in full', () => {
    expect(text).toMatch(/parlour +kiosk +front/)
    expect(text).toContain('The ringing lead does not reach the bell.')
    expect(text.match(/^FAILS {2}bell\.rings-with-all/gm)).toHaveLength(2)
    expect(text).toContain('Figures')
  })
})

describe('named faults of one set', () => {
  const { stands: _, ...alone } = PREMISES
  const one = {
    ...alone,
    request: { check: 'kiosk' },
    verdicts: PREMISES.verdicts.filter(({ subject }) => subject.startsWith('attic/')),
    figures: [],
  }

  test('stand before the verdicts, with what they explain', () => {
    const text = page(one)
    expect(text.indexOf('Core on a dead terminal · line.ringing')).toBeGreaterThan(0)
    expect(text.indexOf('Core on a dead terminal')).toBeLessThan(text.indexOf('FAILS'))
    expect(text).toContain('  mend      land core attic/line.ringing on C1\n')
    expect(text).toContain('  explains  wiring.ringing-lead-to-bell\n')
    expect(text).toContain('  as said above: core on a dead terminal\n')
  })

  test('of another place explain nothing here', () => {
    const elsewhere = {
      ...CORE_LOOSE,
      subject: 'pantry/line.ringing',
      path: ['pantry/C4'],
      consequences: [],
    }
    const text = page({ ...PREMISES, faults: [elsewhere] })
    expect(text).toContain('The ringing lead does not reach the bell.')
  })
})
