import { readingFrom } from 'ringproof/answer/identify-reading'
import { isSkipped, sightingFrom } from 'ringproof/answer/identify-words'
import { ProblemError } from 'ringproof/problem'
import { describe, expect, test } from 'vitest'
import { KNOWN, knownSet, SIGHTINGS } from './_bench.ts'

const seen = (text: string) => {
  const found = sightingFrom(text, SIGHTINGS, KNOWN)
  return found?.found === 'sighting' ? [found.sighting.id, found.sighting.answers[found.answer]] : undefined
}

function problemOf(work: () => unknown) {
  try {
    work()
  } catch (error) {
    if (error instanceof ProblemError) return error.problems[0]
    throw error
  }
  return undefined
}

describe('a reading in words', () => {
  test.each([
    ['A3 A4 on-hook 0.2 Ω', { pair: { red: 'A3', black: 'A4', condition: 'on-hook' }, ohms: 0.2 }],
    ['A3  A4 off-hook/make 3.3 kΩ', { pair: { condition: 'off-hook/make' }, ohms: 3300 }],
    ['A3 A4 3k3', { pair: { condition: 'on-hook' }, ohms: 3300 }],
    ['A3 A4 open', { found: 'reading', ohms: Number.POSITIVE_INFINITY }],
    ['A3 A4 off-hook/rest OL', { pair: { condition: 'off-hook' }, ohms: Number.POSITIVE_INFINITY }],
    ['A3 A4 on-hook no such terminal', { found: 'absent' }],
  ])('%s', (text, expected) => {
    expect(readingFrom(text)).toMatchObject(expected)
  })

  test.each([
    'A3',
    'a3 A4 2 Ω',
    'A3 A3 2 Ω',
    'A3 A4 on-hook',
    'A3 A4 on-hook/ringing 2 Ω',
    'A3 A4 on-hook 2',
    'A3 A4 on-hook -2 Ω',
    'A3 A4 off-hook/nonsense 2 Ω',
  ])('%s is refused with a mend', (text) => {
    const problem = problemOf(() => readingFrom(text))
    expect(problem?.code).toBe('request-wrong')
    expect(problem?.found).toContain(text)
  })
})

describe('a wrong word of a reading is named, with the right one', () => {
  test.each([
    ['A3 A4 upside 0.2 Ω', 'the condition `upside`', 'on-hook'],
    ['A3 A4 offhook 0.2 Ω', 'the condition `offhook`', 'perhaps `off-hook`'],
    ['A3 A4 offhook/make open', 'the condition `offhook/make`', 'perhaps `off-hook/make`'],
    ['A3 A4 off-hook/mak 2 Ω', 'the condition `off-hook/mak`', 'perhaps `off-hook/make`'],
    ['A3 A4 opne', '`opne`', 'perhaps `open`'],
    ['A3 A4 0,2', '`0,2`', 'write `0.2 Ω`, with a point'],
    ['A3 A4 2', '`2`', 'write `2 Ω`'],
    ['A3 A4 on-hook', 'nothing', 'such as `0.2 Ω`'],
    ['a3 A4 2 Ω', '`a3`, which is no terminal', 'perhaps `A3`'],
    ['A3', 'one terminal only', '`A3 A4 on-hook 0.2 Ω`'],
  ])('%s', (text, found, mend) => {
    const problem = problemOf(() => readingFrom(text))
    expect(problem?.found).toContain(found)
    expect(problem?.mend).toContain(mend)
  })
})

describe('a sighting in words', () => {
  test.each([
    ['slot=yes', ['slot', 'yes']],
    ['board=Loom', ['board', 'loom']],
    ['strap=B2-B3', ['strap.B2-B3', 'yes']],
    ['no-strap=B2-B3', ['strap.B2-B3', 'no']],
    ['strap.B3-B2=not there', ['strap.B3-B2', 'no']],
    ['strap=A1-Z9', ['strap.A1-Z9', 'yes']],
    ['no-part=bell-resistor', ['part.bell-resistor', 'no']],
    ['strip=A:6', ['strip.A', '6']],
    ['strip=A:17', ['strip.A', 'something else']],
    ['strip=Z:3', ['strip.Z', 'something else']],
    ['marking=bell-resistor:3k3', ['marking.bell-resistor', '3.3 kΩ']],
    ['marking=bell-resistor:orange orange red gold', ['marking.bell-resistor', '3.3 kΩ']],
    ['marking=bell-resistor:4.7 kΩ', ['marking.bell-resistor', 'something else']],
    ['colours=orange, brown,grey violet', ['colours', 'brown grey orange violet']],
    ['colours=red', ['colours', 'something else']],
    ['line-cores=9', ['line-cores', 'something else']],
    ['unit=none', ['unit', 'none']],
    ['unit=clo', ['unit', 'clover']],
    ['strip=A:not looked', undefined],
    ['slot=not looked', undefined],
  ])('%s', (text, expected) => {
    expect(seen(text)).toEqual(expected)
  })

  test.each([
    ['slt=yes', 'perhaps `slot`'],
    ['slot=maybe', undefined],
    ['part=nothing-such', undefined],
    ['slot', 'for example `slot=yes`'],
    ['strap=B2', undefined],
    ['strip=A', 'for example `strip=A:6`'],
    ['marking=bell-resistor', 'for example `marking=bell-resistor:none`'],
    ['slot=', 'for example `slot=yes`'],
  ])('%s is refused', (text, mend) => {
    const problem = problemOf(() => sightingFrom(text, SIGHTINGS, KNOWN))
    expect(problem?.code).toBe('request-wrong')
    if (mend !== undefined) expect(problem?.mend).toBe(mend)
  })

  test('of a strap is the same whichever way round it is named; of what a board joins nothing is known', () => {
    const answer = (id: string, set: string) => {
      const found = sightingFrom(`${id}=yes`, SIGHTINGS, KNOWN)
      return found?.found === 'sighting' ? found.sighting.answerOf(knownSet(set)) : undefined
    }
    expect(answer('strap.B3-B2', 'fescue')).toBe(1)
    expect(answer('strap.B3-B2', 'sedge')).toBe(0)
    expect(answer('strap.A3-A4', 'sedge')).toBeNaN()
    expect(answer('strap.A3-A4', 'fescue')).toBe(0)
  })

  test('may be left out', () => {
    for (const word of ['?', 'skip', 'Not looked']) expect(isSkipped(word)).toBe(true)
    expect(isSkipped('no')).toBe(false)
  })
})

describe('what the sheets say to sightings', () => {
  const says = (id: string, set: string) => {
    const sighting = SIGHTINGS.find((one) => one.id === id)
    return sighting?.answers[sighting.answerOf(knownSet(set))]
  }
  test.each([
    ['board', 'fescue', 'board'],
    ['board', 'fescue-late', 'loom'],
    ['board', 'sedge', 'board'],
    ['slot', 'sedge', 'no'],
    ['slot', 'fescue without a unit', 'yes'],
    ['unit', 'fescue without a unit', 'none'],
    ['unit', 'fescue with clover', 'clover'],
    ['sounder', 'foxtail', 'tone-ringer'],
    ['sounder', 'sedge-with-series-bell', undefined],
    ['handset', 'darnel', 'no'],
    ['key', 'brome', 'yes'],
    ['dial', 'darnel', 'no'],
    ['plug', 'sedge', 'plug'],
    ['line-cores', 'melick', '2'],
    ['strip.S', 'fescue-late', '6'],
    ['strip.S', 'fescue', '0'],
    ['part.own-capacitor', 'fescue-as-found', 'yes'],
    ['marking.balance-r2', 'fescue', '1.5 kΩ'],
    ['marking.bell-resistor', 'sedge-as-found', 'none'],
  ])('%s of %s', (id, set, expected) => {
    expect(says(id, set)).toBe(expected)
  })
})
