import type { DiagnoseAnswer, NextQuestion, PossibleCause } from 'ringproof'
import { PLAIN } from 'ringproof'
import { diagnosisText } from 'ringproof/report/text-diagnosis'
import { questionText, refusedText, shareText, soFarText, whyText } from 'ringproof/report/text-question'
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
      /^ {6}60\.0 % {2}7 causes that look alike:\n +1 +a is open\n +look {2}look at a\n +mend {2}mend a\n +2 {5}b is open/m,
    )
    // the fifth shortly, those that the answer does not tell by their number
    expect(text).toMatch(/ 5 {5}e is open\n +or 2 more like these/)
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

  test('of a case that stays shut, alike from outside', () => {
    const shut = { ...answer, request: { ...answer.request, inside: false } }
    expect(diagnosisText(shut, page).join('\n')).toMatch(/7 causes that look alike from outside:/)
  })

  test('where it is rather none of them that leads, and what to do is said', () => {
    const none = diagnosisText({ ...answer, none: 0.7 }, page).join('\n')
    expect(none).toMatch(/^No cause that is known fits well:\n +70\.0 % {2}none of these\n/m)
    expect(none.replace(/\s+/g, ' ')).toMatch(/read again .* `--pairs`.* `ringproof identify`/)
    expect(none).not.toMatch(/It is not decided yet|look {2}/)
    const pairs = { ...answer, none: 0.7, request: { ...answer.request, pairs: true } }
    expect(diagnosisText(pairs, page).join('\n')).not.toMatch(/--pairs/)
  })

  test('where nothing was told, what one may begin with', () => {
    const bare = { ...answer, evidence: [], skipped: [] }
    const one = diagnosisText({ ...bare, complaints: [{ id: 'x-y', says: 'it is so' }] }, page).join('\n')
    expect(one).toMatch(/You have told nothing yet\..*`--symptom`[\s\S]*^ {2}x-y {2}it is so$/m)
    expect(diagnosisText({ ...bare, complaints: [] }, page).join('\n')).toMatch(/Tell readings/)
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

  test('how much it tells is said in plain words', () => {
    const says = [0.6, 0.2, 0.03].map((bits) => whyText({ ...next, bits }, 'set', page))
    expect(says[0]).toMatch(/tell much, in about 8 min/)
    expect(says[1]).toMatch(/tell something,/)
    expect(says[2]).toMatch(/tell a little,/)
  })

  test('has its number where it has one', () => {
    expect(questionText(next, 'set', page, 3)).toMatch(/^Question 3: What is read/)
    expect(questionText(next, 'set', page)).toMatch(/^What is read/)
  })

  test('a share is never quite nothing and never quite sure', () => {
    expect([0, 0.0009, 0.001, 0.5, 0.999, 1].map(shareText)).toEqual([
      ...['under 0.1 %', 'under 0.1 %', '0.1 %', '50.0 %', '99.9 %', 'over 99.9 %'],
    ])
  })
})

describe('how far it is', () => {
  const told = (written: string, over: Partial<DiagnoseAnswer> = {}) =>
    soFarText({ ...answer, ...over }, page, { test: 'tone', written })

  test('the leading cause with its share, and what the answer was taken for where that was not written', () => {
    expect(told('None')).toBe('so far: a is open or 6 like it, 60 %\n')
    expect(told('1')).toBe('noted: none\nso far: a is open or 6 like it, 60 %\n')
  })

  test('a share is never quite nothing and never quite sure', () => {
    const [first] = answer.groups
    const so = (probability: number) =>
      told('none', { none: 0, groups: first === undefined ? [] : [{ ...first, probability }] })
    expect(so(0.9999)).toMatch(/over 99 %/)
    expect(so(0.001)).toMatch(/under 1 %/)
  })

  test('none of them, and the sound set shortly', () => {
    expect(told('none', { none: 0.7 })).toBe('so far: no cause that is known fits well, 70 %\n')
    const sound = { ...cause('x', 0.8), faults: [], says: 'nothing is wrong, or nothing that shows' }
    const groups = [{ probability: 0.8, size: 1, causes: [sound] }]
    expect(told('none', { groups })).toBe('so far: nothing is wrong, 80 %\n')
  })

  test('what was not understood is told without codes', () => {
    const text = refusedText(
      [{ code: 'request-wrong', severity: 'error', found: 'x', expected: 'one of y', mend: 'perhaps `y`' }],
      page,
    )
    expect(text).toMatch(/^Not understood: x\. Expected: one of y\. Perhaps `y`\.\n`\?` explains/)
    expect(text).not.toMatch(/request-wrong/)
  })
})
