/** A reading as people write it before the first question: range, two points, condition and what the meter showed. */
import type { BenchTest } from '../book/bench-test.ts'
import type { Step } from '../diagnosis/state.ts'
import { type Problem, refuse } from '../problem.ts'
import { nearest } from '../quantities/nearest.ts'
import { readsAs, writtenReading } from './diagnose-outcome.ts'

/**
 * Ids of readings begin with the range: `ohms plug.a plug.b off-hook`. People leave it out: then it is the first range
 * that shows what was read.
 * @throws ProblemError `request-wrong` naming the word that is wrong, or saying that the book has no such pair
 */
export function readingStep(text: string, tests: readonly BenchTest[]): Step {
  const words = text.trim().split(/\s+/)
  const readings = tests.filter((one) => one.words === undefined)
  const found = readings
    .flatMap((test) => {
      const names = test.id.split(' ')
      return [names, names.slice(1)]
        .filter((one) => one.length > 0 && begins(words, one))
        .map((one) => ({ test, one }))
    })
    .map(({ test, one }) => ({ test, length: one.length, value: words.slice(one.length).join(' ') }))
    .sort((a, b) => b.length - a.length)
  const alike = found.filter(({ length }) => length === found[0]?.length)
  const meant = alike.find(({ test, value }) => readsAs(test, value)) ?? alike[0]
  if (meant !== undefined) return { test: meant.test.id, outcome: writtenReading(meant.test, meant.value) }
  refuse({ code: 'request-wrong', ...amissIn(text.trim(), words, readings) })
}

/** Readings that were told more than once, and not with the same value: the later one counts. */
export function toldAgain(steps: readonly Step[]): readonly Problem[] {
  const before = new Map<string, string>()
  return steps.flatMap(({ test, outcome }): readonly Problem[] => {
    const shown = JSON.stringify(outcome)
    const isOther = before.has(test) && before.get(test) !== shown
    before.set(test, shown)
    if (!isOther) return []
    return [
      {
        code: 'request-wrong',
        severity: 'warning',
        found: `the reading \`${test}\` with two values`,
        expected: 'one value each; the later one counts',
      },
    ]
  })
}

/** Whether a text's words begin with those of a reading; capitals count, since terminals have them. */
function begins(words: readonly string[], names: readonly string[]): boolean {
  return names.every((name, k) => name === words[k])
}

/** The words of a reading's id. */
interface Parted {
  readonly id: string
  readonly range: string
  readonly red: string
  readonly black: string
  readonly when: string
}

function parted({ id }: BenchTest): Parted {
  const [range = '', red = '', black = '', ...when] = id.split(' ')
  return { id, range, red, black, when: when.join(' ') }
}

type Amiss = Pick<Problem, 'found' | 'expected' | 'mend'>

/** The first word that no reading has in its place; else that these readings are not in the book together. */
function amissIn(text: string, words: readonly string[], readings: readonly BenchTest[]): Amiss {
  const all = readings.map(parted)
  if (all.length === 0)
    return { found: `the reading \`${text}\``, expected: 'no reading, since this book holds none' }
  const begun = all.some(({ range }) => range === words[0]) ? 1 : 0
  const [red = '', black = '', when = ''] = words.slice(begun)
  const points = [...new Set(all.flatMap((one) => [one.red, one.black]))]
  const whens = [...new Set(all.map((one) => one.when))]
  const wrong =
    wordAmiss('point', red, points) ??
    wordAmiss('point', black, points) ??
    wordAmiss('condition', when, whens)
  if (wrong !== undefined) return { ...wrong, found: `${wrong.found} in the reading \`${text}\`` }
  const turned = all.find((one) => one.red === black && one.black === red && one.when === when)
  if (turned !== undefined)
    return {
      found: `the reading \`${text}\``,
      expected: 'a reading with the leads as this book holds them',
      mend: `this book holds the leads the other way: \`${turned.id}\``,
    }
  return pairAmiss(text, { red, black }, all)
}

function wordAmiss(what: 'point' | 'condition', word: string, known: readonly string[]): Amiss | undefined {
  if (known.includes(word)) return undefined
  const near = nearest(word, known)
  return {
    found: word === '' ? `no ${what}` : `the ${what} \`${word}\``,
    expected: `a ${what} that this book reads: ${known.join(', ')}`,
    ...(near === undefined ? {} : { mend: `perhaps \`${near}\`` }),
  }
}

/** All words are known, yet no reading has them together: what the book does read there. */
function pairAmiss(
  text: string,
  { red, black }: Pick<Parted, 'red' | 'black'>,
  all: readonly Parted[],
): Amiss {
  const both = [red, black]
  const same = all.filter((one) => both.includes(one.red) && both.includes(one.black))
  const near =
    same.length > 0 ? same : all.filter((one) => both.includes(one.red) || both.includes(one.black))
  return {
    found: `the reading \`${text}\``,
    expected: 'a reading of this book, which does not read that pair so; nothing is wrong with your words',
    mend: `read instead one of ${near.map(({ id }) => `\`${id}\``).join(', ')}`,
  }
}
