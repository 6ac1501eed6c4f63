import { PLAIN } from 'ringproof/report/paint'
import { answerText } from 'ringproof/report/text'
import { describe, expect, test } from 'vitest'
import { CORE_LOOSE, PREMISES } from './answers.ts'

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
    expect(text.match(/bell\.rings-with-all/g)).toHaveLength(1)
  })

  test('judges the line as a whole against its limit', () => {
    expect(text).toMatch(/line\.ringing-load +fails +2\.80 +at most 2 +ringing load, units of +/)
  })

  test('numbers what to do: each mend once, with whom it is for, none that a fault has said already', () => {
    expect(text).toContain('  1 attic: land core line.ringing on C1\n')
    expect(text).toContain('  2 parlour, pantry: unplug a set\n')
    expect(text).toContain('  3 move any one of them to another line\n')
    expect(text.match(/land core/g)).toHaveLength(1)
  })

  test('shows a socket by both numberings and says that one number alone is ambiguous', () => {
    expect(text).toMatch(/wiring terminal +2 +3 +4 +5 +1, 6\n +contact +5 +4 +3 +2 +6, 1\n/)
    expect(flowing(text)).toContain('One number alone is ambiguous')
  })

  test('ends with the counts, after one caution', () => {
    expect(text.trimEnd().split('\n').at(-1)).toBe('4 fail, 0 marginal, 0 unknown, 1 holds')
    expect(text.match(/Caution:/g)).toHaveLength(1)
  })

  test('takes the table in two where it is narrow', () => {
    const narrow = page(PREMISES, 60)
    expect(narrow.match(/^ {2}place /gm)).toHaveLength(2)
    expect(narrow).toMatch(/parlour +2\.10 mA/)
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
