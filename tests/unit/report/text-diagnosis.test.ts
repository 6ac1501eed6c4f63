import type { DiagnoseAnswer, NextQuestion, PossibleCause } from 'ringproof'
import { PLAIN } from 'ringproof'
import { diagnosisText } from 'ringproof/report/text-diagnosis'
import { questionText, shareText, whyText } from 'ringproof/report/text-question'
import { describe, expect, test } from 'vitest'

const page = { width: 78, paint: PLAIN }

const cause = (says: string, probability: number): PossibleCause => ({
  faults: [says],
  says: `set/${says} is open`,
  sign: `look at set/${says}`,
  mend: `mend set/${says}`,
  probability,
})

const next: NextQuestion = {
  test: 'volts',
  asks: 'What is read on volts between set/plug.a and set/plug.b?',
  how: 'Hold the leads to set/plug.a and set/plug.b.',
  site: 'outside',
  live: true,
  condition: { line: 'idle', sets: { set: { hook: 'off-hook', dial: 'rest', key: 'up' } } },
  unit: 'V',
  effort: 8,
  bits: 0.4,
  cautions: ['Mind the line.'],
  outcomes: [
    { least: -1, most: 5, probability: 0.25, points: [{ says: 'set/a is open', size: 3, probability: 0.9 }] },
    { state: 'open', probability: 0.75, points: [] },
  ],
}

const answer: DiagnoseAnswer = {
  ringproof: 'diagnose/1',
  'made by': '0.1.0',
  request: {
    diagnose: 'set',
    on: 'house',
    symptoms: ['tone', 'heard'],
    observed: ['tone=none'],
    live: false,
  },
  problems: [],
  outcome: 'answered',
  place: 'set',
  instrument: 'digital',
  counts: { faults: 9, pairs: 2, tests: 1 },
  decided: 'asking',
  groups: [
    {
      probability: 0.6,
      size: 7,
      causes: ['a', 'b', 'c', 'd', 'e'].map((id) => cause(id, 0.1)),
      apart: { test: 'ohms', asks: 'What is read on ohms between set/A1 and set/A2?' },
    },
    { probability: 0.1, size: 3, causes: [cause('f', 0.05), cause('g', 0.05)] },
    ...['h', 'i', 'j', 'k', 'l'].map((id) => ({ probability: 0.05, size: 1, causes: [cause(id, 0.05)] })),
  ],
  none: 0.05,
  evidence: [
    {
      ...{ test: 'tone', asks: 'Is there tone?', observed: { answers: ['none'], says: 'none', unit: '1' } },
      ...{ leading: null, sound: { answers: ['clear'], says: 'clear', unit: '1' }, speaks: 'against' },
      ratio: 1 / 250,
    },
    {
      ...{ test: 'ohms', asks: 'How many ohms?', observed: { value: 210, unit: 'Ω' } },
      ...{ leading: { value: null, state: 'open', unit: 'Ω' }, sound: { value: null, unit: 'Ω' } },
      ...{ speaks: 'for', ratio: 12.4 },
    },
    {
      ...{ test: 'hears', asks: 'Heard?', observed: { answers: ['no'], says: 'no', unit: '1' } },
      ...{ leading: null, sound: null, speaks: 'neither', ratio: 1 },
    },
  ],
  skipped: [{ test: 'heard', asks: 'Does the far end hear you?' }],
  next,
  cautions: ['Unplug.'],
}

describe('the text of a diagnosis', () => {
  const text = diagnosisText(answer, page).join('\n')

  test('says how far it is, what leads with look and mend, and what else it may be', () => {
    expect(text).toMatch(/^diagnose set on house symptom tone, heard$/m)
    expect(text).toMatch(/^It is not decided yet/m)
    expect(text).toMatch(
      /^ {6}60\.0 % {2}a is open\n +look {2}look at a\n +mend {2}mend a\n +or {4}b is open/m,
    )
    expect(text).toMatch(/or 3 more like these/)
    expect(text).toMatch(
      /told apart by what was not allowed:\s+What\s+is\s+read\s+on\s+ohms\s+between\s+A1\s+and\s+A2\?/,
    )
    expect(text).toMatch(/10\.0 % {2}f is open\n +or {4}g is open\n +or 1 more like it/)
    expect(text).toMatch(/10\.0 % {2}2 other causes or groups/)
    expect(text).toMatch(/5\.0 % {2}none of these/)
  })

  test('sets evidence beside what was to be expected, and says how strongly it speaks', () => {
    expect(text).toMatch(/against it, over\s/)
    expect(text).toMatch(/210 Ω +open +not known +for it, 12 : 1/)
    expect(text).toMatch(/neither way/)
    expect(text).toMatch(/passed over: Does the far end hear you\?/)
  })

  test('ends with the question that is left and what was compared', () => {
    expect(text).toMatch(/Find out next: What is read on volts between plug.a and plug.b\?/)
    expect(text).toMatch(/9 faults and 2 pairs of them compared, by 1 test with the instrument digital$/)
  })

  test('without evidence and question is short, and fits its page', () => {
    const { next: _, ...rest } = answer
    const short = diagnosisText(
      { ...rest, decided: 'nothing-tells', evidence: [], skipped: [], groups: answer.groups.slice(2, 3) },
      page,
    )
    expect(short.join('\n')).toMatch(/Nothing that may be asked tells more/)
    expect(short.join('\n')).not.toMatch(/Find out next|found out/)
    for (const line of text.split('\n')) expect(line.length).toBeLessThanOrEqual(page.width)
  })
})

describe('the text of a question', () => {
  test('a reading: its caution, where the leads go, what to write', () => {
    const text = questionText(next, 'set', page)
    expect(text).toMatch(/Caution: Mind the line\./)
    expect(text).toMatch(/Hold the leads to plug.a and plug.b\./)
    expect(text).toMatch(/such as 48 V/)
  })

  test('why: each outcome, how probable it is, and where it points', () => {
    const text = whyText(next, 'set', page)
    expect(text).toMatch(/-1\.0 V to 5\.0 V +25\.0 % +a is open or 2 like it \(90\.0 %\)/)
    expect(text).toMatch(/open +75\.0 %/)
    expect(whyText({ ...next, unit: 'F', how: '' }, 'set', page)).toMatch(/0 F to 5\.0 F/)
  })

  test('a share is never quite nothing and never quite sure', () => {
    expect([0, 0.0009, 0.001, 0.5, 0.999, 1].map(shareText)).toEqual([
      ...['under 0.1 %', 'under 0.1 %', '0.1 %', '50.0 %', '99.9 %', 'over 99.9 %'],
    ])
  })
})
