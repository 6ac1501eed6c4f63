import { type Paint, PLAIN } from 'ringproof/report/paint'
import { answerText } from 'ringproof/report/text'
import { columns } from 'ringproof/report/wrap'
import { describe, expect, test } from 'vitest'
import { ANSWERS, CHECK, COMPARE, CORE_LOOSE, FOLLOW, LIST, SOLVE } from './answers.ts'

const page = (width = 80, paint: Paint = PLAIN) => ({ width, paint })
const mark = (sign: string) => (text: string) => `${sign}${text}${sign}`
const MARKS: Paint = { bold: mark('*'), dim: mark('~'), good: mark('+'), bad: mark('!'), warn: mark('?') }
const lastLine = (text: string) => text.trimEnd().split('\n').at(-1)
/** A text with its line breaks gone, so that a sentence is found however it is wrapped. */
const flowing = (text: string) => text.replace(/\s+/g, ' ')

describe('every answer as text', () => {
  const cases = Object.values(ANSWERS).flatMap((answer) =>
    [60, 80, 120].map((width) => [answer.ringproof, width, answer] as const),
  )
  test.each(cases)('of %s fits %d columns', (_name, width, answer) => {
    const lines = answerText(answer, page(width)).split('\n')
    expect(lines.filter((line) => columns(line) > width)).toEqual([])
    expect(lines.filter((line) => line !== line.trimEnd())).toEqual([])
    expect(lines.at(-1)).toBe('')
  })

  test.each(Object.values(ANSWERS))(
    'is laid out for 60 columns when fewer are asked for: $ringproof',
    (answer) => {
      expect(answerText(answer, page(10))).toBe(answerText(answer, page(60)))
    },
  )

  test.each(Object.values(ANSWERS))('says the same with colour and without: $ringproof', (answer) => {
    const painted = answerText(answer, page(80, MARKS))
    expect(painted).not.toBe(answerText(answer, page()))
    expect(painted.replace(/[*~+!?]/g, '')).toBe(answerText(answer, page()).replace(/[*~+!?]/g, ''))
  })

  test('of an unknown name is the mistake of a programmer', () => {
    expect(() => answerText({ ...LIST, ringproof: 'song/1' }, page())).toThrow(TypeError)
  })
})

describe('the text of a check', () => {
  const text = answerText(CHECK, page())

  test('puts fails before marginal before unknown before what holds', () => {
    const places = ['FAILS', 'MARGINAL', 'UNKNOWN', 'HOLDS'].map((word) => text.indexOf(word))
    expect(places).toEqual([...places].sort((a, b) => a - b))
    expect(places[0]).toBeGreaterThan(0)
  })

  test('shows a failing verdict with its path, figure, limit, consequences and mend', () => {
    expect(text).toContain('FAILS  wiring.cores-separate · handset.r2 · handset up')
    expect(text).toContain('handset.r2 – B3 – B4 – handset.t2')
    expect(text).toContain('resistance at 1 kHz (B3 B4): 20.0 mΩ')
    expect(flowing(text)).toContain(
      'at least 1 MΩ (an invented paper, clause 4.2; read in the source itself)',
    )
    expect(text).toMatch(/speech received for 1 V at 1 kHz +0 A +≈ 1\.23 mA/)
    expect(text).toMatch(/sidetone for 1 V at 1 kHz +open +–/)
    expect(text).toContain('mend      Land core handset.r2 on B2.')
    expect(text).toContain('≈ approximate: transmitter as a chord resistance')
  })

  test('names each stand-in once and marks no nothing as approximate', () => {
    const [first] = CHECK.figures
    const figures = [
      { ...first!, approximate: 'a as b; c as d' },
      { ...first!, value: 0, approximate: 'c as d; e as f' },
      { ...first!, value: 1e-20, approximate: 'c as d' },
    ]
    const { verdicts: _, ...rest } = CHECK
    const shown = answerText({ ...rest, verdicts: [], figures }, page())
    expect(shown).toContain('≈ approximate: a as b; c as d; e as f\n')
    expect(shown).toMatch(/speech {2,}0 A\n/)
    expect(shown).toMatch(/speech {2,}0 A\n/)
  })

  test('rounds a limit that was computed, and says common practice once', () => {
    const [joined] = CHECK.verdicts.filter(({ state }) => state === 'fails')
    const source = 'common practice, no source'
    const limit = {
      ...joined!.limit!,
      value: 0.000225394517,
      unit: 'A',
      source,
      clause: '-',
      grade: 'COMMON PRACTICE',
    } as const
    const shown = answerText({ ...CHECK, verdicts: [{ ...joined!, limit }] }, page(120))
    expect(shown).toContain('limit     at least 225 µA (common practice, no source)\n')
  })

  test('lists what is unknown once for each reason', () => {
    expect(text).toContain('UNKNOWN  8 checks')
    expect(flowing(text)).toContain('not modelled yet: dial.rate, dial.ratio, dial.make, dial.break')
    expect(text).toContain('needs a line: line.leakage (2)')
  })

  test('keeps a remark on what holds', () => {
    expect(flowing(text)).toContain('wiring.earth-free (kiosk): The key is never pressed here.')
  })

  test('leaves resistances between points to the verdicts that quote them', () => {
    expect(text).toMatch(/loop current at 1 kHz .*≈ 38\.4 mA/)
    expect(text).not.toContain('12.0 Ω')
  })

  test('ends with the counts, after one caution', () => {
    expect(lastLine(text)).toBe('1 fails, 1 marginal, 8 unknown, 2 hold')
    expect(text.match(/Caution:/g)).toHaveLength(1)
    expect(flowing(text)).toContain('Local codes and licensed practice come first')
  })

  test('needs no caution when nothing rings and no hand is led to a lead', () => {
    const calm = { ...CHECK, verdicts: CHECK.verdicts.filter(({ state }) => state === 'unknown') }
    expect(answerText(calm, page())).not.toContain('Caution')
  })

  test('names places where there are two', () => {
    const other = { ...CHECK.figures[0]!, condition: { line: 'idle', sets: { hall: {} } } as never }
    expect(answerText({ ...CHECK, figures: [other] }, page(120))).toContain('kiosk/handset.r2 – kiosk/B3')
  })
})

describe('the text of a comparison', () => {
  const text = answerText(COMPARE, page(120))

  test('numbers the moves, with a caution', () => {
    expect(text).toContain('  1 land core handset.r2 onto B3\n  2 fit strap A1-A2')
    expect(text).toContain('Caution:')
  })

  test('shows checks and figures that change side by side', () => {
    expect(text).toMatch(/wiring\.cores-separate +holds +fails/)
    expect(text).not.toMatch(/wiring\.earth-free +holds +holds/)
    expect(text).toMatch(/speech received for 1 V at 1 kHz .* 1\.23 mA +0 A/)
    expect(text).toMatch(/speech sent for 1 V at 1 kHz .* – +0\.500/)
  })

  test('shows in full what fails as proposed, and counts it last', () => {
    expect(text).toContain('handset.r2 – B3 – B4 – handset.t2')
    expect(lastLine(text)).toBe('1 fails, 0 marginal, 0 unknown, 1 holds')
  })

  test('says why each check changes: its words on both sides and the move that does it', () => {
    expect(text).toContain('wiring.cores-separate: Move 1 does it: without it the check would hold.')
    expect(text).toMatch(/^ {4}as found {2}As it should be\.$/m)
    expect(flowing(text)).toContain(`proposed ${COMPARE.proposed.verdicts[0]?.says}`)
  })

  test('names faults that go and faults that come', () => {
    const come = { ...COMPARE, proposed: { ...COMPARE.proposed, faults: [CORE_LOOSE] } }
    expect(flowing(answerText(come, page()))).toContain(
      'Faults by name new: core on a dead terminal (attic/line.ringing)',
    )
    const gone = { ...COMPARE, found: { ...COMPARE.found, faults: [CORE_LOOSE] } }
    expect(flowing(answerText(gone, page()))).toContain('Faults by name no more: core on a dead terminal')
    expect(text).not.toContain('Faults by name')
  })

  test('says so when nothing changes', () => {
    const { found } = COMPARE
    const same = answerText(
      { ...COMPARE, moves: [], proposed: found, changed: { checks: [], figures: [], because: [] } },
      page(),
    )
    for (const says of ['No rewire leads', 'No check changes its state.', 'No figure changes.'])
      expect(same).toContain(says)
  })
})

describe('the text of a solved network', () => {
  const text = answerText(SOLVE, page())

  test('shows size and angle to four digits, and nothing as nothing', () => {
    expect(text).toMatch(/n1 +5\.000 V +53\.13°/)
    expect(text).toMatch(/r1 +1\.235 mA +-90°/)
    expect(text).toMatch(/s1 +0 A\n/)
    expect(text).toMatch(/n2 +undetermined/)
  })

  test('shows islands, shared currents, source, grade and stand-ins', () => {
    expect(text).toContain('Islands: 1 part that nothing joins to earth\n  n2\n')
    expect(flowing(text)).toContain('one of many ways to share them: s1')
    expect(text).toContain('Source: an invented book, example 7\nGrade: HIGH')
    expect(text).toContain('≈ approximate: bell as resistance')
    expect(lastLine(text)).toBe('scaled residual 1.5e-16 (healthy up to about 1)')
  })

  test('warns where an exchange is part of the network, since a line can ring at any moment', () => {
    expect(text).not.toContain('Caution:')
    const voltages = { ...SOLVE.voltages, 'exchange/a': 0 }
    expect(answerText({ ...SOLVE, voltages }, page())).toContain('Caution:')
  })

  test('shows plain values for direct current', () => {
    const direct = {
      ...SOLVE,
      analysis: 'direct',
      frequency: null,
      voltages: { n: -1.5 },
      currents: {},
      states: {},
    } as const
    expect(answerText(direct, page())).toMatch(/Direct current[\s\S]*n +-1\.500 V\n/)
  })
})

test('the text of a followed current has one step a line with sort, current and place in the sheet', () => {
  const text = answerText(FOLLOW, page(120))
  expect(text).toMatch(/exchange\/a +exchange\/feed\.a +exchange +38\.4 mA +netlists\/lines\/hill\.yaml:12\n/)
  expect(text).toMatch(/kiosk\/A1 +\(end\)\n/)
  expect(text).toContain('handset up; direct current')
})

test('plug contacts are shown by both numbers wherever a path or a step passes one', () => {
  const plug = [{ node: 'kiosk/plug.a', wiring: 5, contact: 2 }]
  const sets = [{ place: 'kiosk', set: 'kiosk', socket: 'hut', reversed: false, rests: 'on-hook', plug }]
  const stands = { line: 'hill', premises: 'hut', sockets: [], sets }
  expect(flowing(answerText({ ...FOLLOW, stands }, page(120)))).toContain(
    'kiosk/plug.a (wiring 5, contact 2)',
  )
  const [joined] = CHECK.verdicts.filter(({ state }) => state === 'fails')
  const verdicts = [{ ...joined!, path: ['kiosk/plug.a', 'kiosk/B3'] }]
  expect(answerText({ ...CHECK, stands, verdicts }, page(120))).toContain('plug.a (wiring 5, contact 2) – B3')
})

test('the text of a list stands in lines of its own where its page is too narrow for the columns', () => {
  const long = 'a sentence that no column of eighty can hold beside so many others'
  const row = {
    limit: 'leak',
    side: 'at-least',
    value: 1e6,
    unit: 'Ω',
    says: long,
    source: 'x',
    grade: 'MEMORY',
  }
  const list = { ...LIST, what: 'limits', rows: [row, { ...row, limit: 'loop' }] }
  const text = answerText(list, page())
  expect(text).toContain(`leak: at least 1 MΩ x from memory\n  ${long}\n\nloop: at least`)
  expect(answerText(list, page(160))).toMatch(/^limit +side +value/)
})

test('the text of a list aligns its columns and counts its rows', () => {
  const lines = answerText(LIST, page()).split('\n')
  expect(lines[0]).toMatch(/^name +title +strips$/)
  expect(lines.find((line) => line.startsWith('hut'))).toMatch(/ 12$/)
  expect(lastLine(lines.join('\n'))).toBe('2 sets')
  expect(answerText({ ...LIST, rows: [] }, page())).toBe('no sets in reach\n')
})

test('the text of a list writes a value with its unit, and a grade in words', () => {
  const limit = { limit: 'leak', side: 'at-least', value: 1e6, unit: 'Ω', grade: 'MEMORY' }
  const text = answerText(
    { ...LIST, what: 'limits', rows: [limit, { ...limit, value: 3, unit: '1', grade: 'NEW' }] },
    page(),
  )
  expect(text).toMatch(/^limit +side +value +grade\n/)
  expect(text).toMatch(/leak +at least +1 MΩ +from memory\n/)
  expect(text).toMatch(/leak +at least +3 +NEW\n/)
})
