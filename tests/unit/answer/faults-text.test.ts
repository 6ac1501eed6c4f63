import { answerText, type BookStore, type FaultsAnswer, faults, PLAIN } from 'ringproof'
import type { Notice, Telling } from 'ringproof/answer/faults-answer'
import { ON_HOOK } from 'ringproof/netlist/condition'
import { namesText } from 'ringproof/report/fault-book-names'
import { leading, leadingText, symptomOf } from 'ringproof/report/fault-book-notices'
import { readingText, shownText } from 'ringproof/report/fault-book-readings'
import { describe, expect, test } from 'vitest'
import { DEMO } from '../../support/bench.ts'

const held = new Map<string, Uint8Array>()
const store: BookStore = {
  read: (key) => held.get(key),
  write: (key, bytes) => {
    held.set(key, bytes)
  },
  remove: () => {},
}

const ask = (more: object = {}): Promise<FaultsAnswer> =>
  faults({ target: 'sedge', ...more }, DEMO, { store })
const text = (answer: FaultsAnswer, width = 80): string => answerText(answer, { width, paint: PLAIN })
const flat = (lines: string): string => lines.replace(/\s+/g, ' ')

const notice = (symptom: string): Notice => {
  const [id = '', answer = ''] = symptom.split('=')
  return { test: id, asks: `${id}?`, answer, says: answer }
}

describe('the text of a fault book', () => {
  test('is short, and begins with how many faults show what', async () => {
    const answer = await ask()
    const shown = text(answer)
    expect(shown.split('\n').length).toBeLessThanOrEqual(250)
    const count = (symptom: string): number =>
      answer.faults.filter(({ notices }) => notices.some((one) => symptomOf(one) === symptom)).length
    expect(count('rings=silent')).toBeGreaterThan(5)
    expect(shown).toMatch(new RegExp(`^ +${count('rings=silent')}  Does the bell ring\\? it is silent$`, 'm'))
    expect(shown).toMatch(
      new RegExp(`^ +${count('heard=no')}  Does the far end hear you\\? not at all$`, 'm'),
    )
    const quiet = answer.faults.filter(({ notices }) => notices.length === 0).length
    expect(shown).toMatch(new RegExp(`^ +${quiet}  nothing; readings alone tell$`, 'm'))
    const [, groups = ''] = shown.split('nothing; readings alone tell')
    // every fault stands under one heading
    const counted = [...groups.matchAll(/\((\d+) faults?\)/g)].map(([, found]) => Number(found))
    expect(counted.reduce((sum, found) => sum + found, 0)).toBe(answer.counts.faults)
  })

  test('repeats nothing that follows, tells three things at most, and names no state by its id', async () => {
    const shown = flat(text(await ask()))
    expect(shown).not.toContain('Can you talk')
    expect(shown).not.toMatch(/none; Do you hear the far end\?/)
    expect(shown).not.toMatch(/off-hook|on-hook|cord-off|\/make|\/break| -0? ?V|[^.\d]0 F/)
    expect(shown).toContain('handset cord off its terminals')
    for (const [, title = ''] of text(await ask()).matchAll(/^(\S[^\n]*\?(?:\n\S[^\n]*)*)\(\d+ faults?\)/gm))
      expect(title.split('?').length - 1, title).toBeLessThanOrEqual(3)
  })

  test('tells the twins of one reading together', async () => {
    expect(flat(text(await ask()))).toMatch(
      /ohms plug\.a – plug\.b, handset up, not 449 Ω but open: one of strap [^;]*core handset\.t1[^;]* is broken or loose; /,
    )
  })

  test('as a whole has each fault in its line, its second reading, and the signs of what nothing tells', async () => {
    const answer = await ask({ whole: true })
    expect(answer.request).toMatchObject({ whole: true })
    expect((await ask()).request).not.toHaveProperty('whole')
    const shown = text(answer)
    expect(shown).toContain('told by')
    expect(flat(shown)).toContain('Can you talk with the far end')
    expect(flat(shown)).toContain(`: ${answer['moving nothing'][0]?.sign ?? 'none'}`)
    for (const width of [60, 80])
      expect(
        text(answer, width)
          .split('\n')
          .filter((line) => line.length > width),
      ).toEqual([])
  })

  test('of a set alone gives the readings, as there is nothing to notice', async () => {
    const shown = flat(text(await ask({ on: 'none' })))
    expect(shown).not.toContain('--whole says which')
    expect(shown).not.toContain('with which is noticed')
    expect(shown).toContain('ohms plug.a – plug.b, handset up, not 449 Ω but open: ')
  })
})

describe('what is noticed', () => {
  test.each([
    ['tone=none hears=no talk=no own-voice=none dial-breaks=stays', 'tone=none'],
    ['tone=none heard=no hears=no talk=no', 'tone=none heard=no'],
    ['heard=faint talk=no', 'heard=faint'],
    ['hears=no talk=no own-voice=none', 'hears=no'],
    ['own-voice=none', 'own-voice=none'],
    ['tone=none own-voice=loud', 'tone=none own-voice=loud'],
    ['others=affected others-ring=weak', 'others-ring=weak'],
    ['rings=silent rings-alone=silent', 'rings=silent'],
    ['rings=weak rings-alone=silent', 'rings=weak rings-alone=silent'],
    ['', ''],
  ])('of %s leads %s', (all, lead) => {
    const split = (list: string): string[] => list.split(' ').filter((one) => one !== '')
    expect(leading(split(all).map(notice)).map(symptomOf)).toEqual(split(lead))
  })

  test('is three things at most', () => {
    const all = ['rings=silent', 'stops-ringing=no', 'tone=none', 'hears=no', 'heard=no'].map(notice)
    expect(leadingText(all)).toBe('rings? silent; stops-ringing? no; tone? none; and 1 more')
    expect(leadingText(all.slice(0, 4))).toBe('rings? silent; stops-ringing? no; tone? none')
  })
})

test.each([
  [['the strap A1-A2 is open'], 'the strap A1-A2 is open'],
  [
    ['the strap A1-A2 is open', 'the bell is shorted', 'the core line.b is open', 'the bell-r is open'],
    'one of strap A1-A2, core line.b or bell-r is open; the bell is shorted',
  ],
  [
    ['it is damp between A1 and A2', 'it is damp between A2 and A3'],
    'it is damp between A1 and A2 or A2 and A3',
  ],
  [
    ['the cores a and b are crossed', 'the cores a and c are crossed'],
    'the cores a and b are crossed; the cores a and c are crossed',
  ],
  [
    ['winding a of the coil is open', 'winding b of the coil is open'],
    'winding a of the coil is open; winding b of the coil is open',
  ],
  [[], ''],
])('faults %j are told as "%s"', (says, told) => {
  expect(namesText(says)).toBe(told)
})

describe('a reading of a fault book', () => {
  const reading: Telling = {
    ...{ test: 'ohms plug.a plug.b off-hook/break', asks: '', how: '', site: 'outside', live: false },
    condition: { line: 'idle', sets: { hall: { hook: 'off-hook', dial: 'break', key: 'up' }, den: ON_HOOK } },
    ...{ unit: 'Ω', resolution: 0.1, sound: { value: 100 }, faulty: { value: 10 }, clearness: 10 },
  }

  test('says how its own set is held, in words', () => {
    expect(readingText(reading, 'hall')).toBe(
      'ohms plug.a – plug.b, handset up, dial running, pulse contact open',
    )
    expect(readingText({ ...reading, test: 'ohms handset.r1 handset.r2 cord-off' }, 'hall')).toBe(
      'ohms handset.r1 – handset.r2, handset cord off its terminals',
    )
    const asks = 'What is read on capacitance across the c by itself, one of its leads off?'
    expect(readingText({ ...reading, test: 'capacitance A1 A2 c-off', asks }, 'hall')).toBe(
      'capacitance across the c by itself, one of its leads off',
    )
    const live: Telling = {
      ...reading,
      test: 'alternating-volts plug.a plug.b on-hook/ringing',
      live: true,
      condition: { line: 'ringing', sets: { den: ON_HOOK, hall: ON_HOOK } },
    }
    expect(readingText(live, 'den')).toBe(
      'alternating volts plug.a – plug.b, handset down, ringing arrives (live)',
    )
  })

  test('shows next to nothing as nothing', () => {
    const volts: Telling = { ...reading, unit: 'V', resolution: 0.001, sound: { value: 50 } }
    expect(shownText({ value: -0.00868 }, volts)).toBe('0 V')
    expect(shownText({ value: 0.0868 }, volts)).toBe('86.8 mV')
    expect(shownText({ value: -50 }, volts)).toBe('-50.0 V')
    expect(shownText({ value: 0 }, { ...reading, unit: 'F', resolution: 1e-11 })).toBe('none')
    expect(shownText({ value: 0.01 }, reading)).toBe('0 Ω')
    expect(shownText({ value: null, state: 'open' }, reading)).toBe('open')
    expect(shownText({ value: null }, reading)).toBe('–')
  })
})
