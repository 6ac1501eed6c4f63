import { silentBells } from 'ringproof/report/amounts'
import { PLAIN } from 'ringproof/report/paint'
import { answerText } from 'ringproof/report/text'
import { approximations } from 'ringproof/report/text-verdicts'
import { describe, expect, test } from 'vitest'
import { at, FOLLOW, figure, PREMISES } from './answers.ts'

const page = { width: 100, paint: PLAIN }
const both = {
  line: 'ringing',
  sets: { ...at('on-hook', 'hall').sets, ...at('on-hook', 'yard').sets },
} as const
const ringing = (place: string, current: number, share: number) => [
  figure({
    id: 'ringing.current',
    subject: `${place}/bell`,
    condition: both,
    frequency: 25,
    value: current,
    approximate: 'a stand-in',
  }),
  figure({
    id: 'ringing.share',
    subject: `${place}/bell`,
    condition: both,
    frequency: 25,
    value: share,
    unit: '1',
  }),
  figure({ id: 'ringing.load.type-a', subject: place, condition: both, value: 1.25, unit: '1' }),
]
const line = figure({
  id: 'ringing.line-current',
  subject: 'hill',
  condition: both,
  frequency: 25,
  value: 0.02,
})
const figuresText = (figures: readonly ReturnType<typeof figure>[]) =>
  answerText(
    {
      ringproof: 'figures/1',
      'made by': '0',
      request: { figures: 'house' },
      problems: [],
      outcome: 'answered',
      figures,
    },
    page,
  )

describe('the figures of several sets', () => {
  const text = figuresText([...ringing('hall', 0.0051, 1), ...ringing('yard', 2e-9, 0), line])

  test('of the ringing are one row a place, marked once where all are approximate', () => {
    expect(text).toMatch(/place +≈ bell +share\n +hall +5\.10 mA +100 %\n +yard +2\.00 nA +–\n/)
    expect(text).toContain('bell: ringing current in the bell; share: of the ringing current of all bells\n')
  })

  test('of the ringing loads have their own table, by definition', () => {
    expect(text).toMatch(/place +A\n +hall +1\.25\n +yard +1\.25\n/)
  })

  test('of the line as a whole stay where they were', () => {
    expect(text).toMatch(/ringing current of the line at 25 Hz +hill /)
  })

  test('of one place are no table of places', () => {
    expect(figuresText(ringing('hall', 0.0051, 1))).not.toContain('by place')
  })
})

test('a bell that gets less than a microampere has no share worth showing', () => {
  expect([...silentBells([...ringing('hall', 9e-7, 1), ...ringing('yard', 2e-6, 1)])]).toEqual(['hall/bell'])
})

test('a count of capacitors is not approximate', () => {
  const one = figure({ id: 'ringing.capacitors', value: 2, unit: '1', approximate: 'a stand-in' })
  expect(figuresText([one])).toMatch(/capacitors in the ringing path at 1 kHz .* 2\n/)
  expect(figuresText([one])).not.toContain('≈ 2')
})

describe('why figures are approximate', () => {
  const swung = (id: string) => `${id} by its slope, although the alternating voltage swings it far`
  test('is said in one line, parts that are swung far by their names alone', () => {
    const all = ['hall/click', 'yard/click', 'hall/regulator.clamp'].map(swung)
    expect(approximations(['bell with its clapper held still', ...all], page)).toEqual([
      '≈ approximate: bell with its clapper held still; click, regulator.clamp by their slope at rest',
      '  (docs/trust.md)',
      '',
    ])
    expect(approximations([swung('click')], page)[0]).toBe(
      '≈ approximate: click by its slope at rest (docs/trust.md)',
    )
  })

  test('names no more than three of them', () => {
    const [only] = approximations(['a', 'b', 'c', 'd'].map(swung), page)
    expect(only).toBe('≈ approximate: 4 parts by their slope at rest (docs/trust.md)')
  })
})

describe('a current that is followed', () => {
  const [first, second, last] = FOLLOW.steps
  const steps = [
    first!,
    { ...second!, current: 0.0284, rest: [{ branch: 'yard/line.a', current: 0.01 }] },
    last!,
  ]

  test('says where the rest goes', () => {
    expect(answerText({ ...FOLLOW, steps }, page)).toContain(
      'at kiosk/plug.a: 28.4 mA in place of 38.4 mA, less: the rest goes to yard/line.a (10.0 mA)\n',
    )
  })

  test('says which set it runs through where several are up', () => {
    const condition = {
      line: 'idle',
      sets: { ...at('off-hook', 'kiosk').sets, ...at('off-hook', 'yard').sets },
    } as const
    const text = answerText({ ...FOLLOW, condition, steps }, page)
    expect(text).toContain('followed through kiosk, which takes most; yard is up too')
    expect(answerText(FOLLOW, page)).not.toContain('followed through')
  })
})

test('the long form ends with the notes of the sheets, the short form has none', () => {
  const stands = {
    ...PREMISES.stands!,
    notes: [{ sheet: 'set', name: 'kiosk', says: ['Mind the cord.'] }],
  } as const
  const whole = answerText({ ...PREMISES, stands, request: { ...PREMISES.request, whole: true } }, page)
  expect(whole).toContain('Notes of the sheets\n  set kiosk: Mind the cord.\n')
  expect(answerText({ ...PREMISES, stands }, page)).not.toContain('Mind the cord')
})
