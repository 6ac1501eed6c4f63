/** What a person writes as the outcome of a test. */
import type { BenchTest } from '../book/bench-test.ts'
import type { Outcome } from '../diagnosis/state.ts'
import { refuse } from '../problem.ts'
import { nearest } from '../quantities/nearest.ts'
import { type Dimension, readQuantity } from '../quantities/quantity.ts'

/** What meters show, and people write, where nothing flows. */
const OPEN = /^(open|ol|o\.l\.|∞|infinite)$/i
/** Short for the words that people answer with. */
const PLAIN: ReadonlyMap<string, string> = new Map([
  ['y', 'yes'],
  ['n', 'no'],
])
const DIMENSIONS: Readonly<Record<BenchTest['unit'], Dimension>> = {
  Ω: 'resistance',
  F: 'capacitance',
  V: 'voltage',
  '1': 'ratio',
}
const EXAMPLES: Readonly<Record<BenchTest['unit'], string>> = {
  Ω: '`210 Ω`, `3k3` or `open`',
  F: '`1.8 µF` or `open`',
  V: '`48 V`',
  '1': '`0.5`',
}

/** Ranges whose unit goes without saying once the question has named the range. */
const BARE = new Set<BenchTest['unit']>(['Ω', 'V'])

/**
 * The outcome that a text means where its question has just been asked: the number of an answer, its id, its first
 * letters, or `yes` and `no` where they plainly mean one; a value, or `open`. Ohms and volts may be bare numbers then.
 * @throws ProblemError `request-wrong` saying what would be understood
 */
export function writtenOutcome(test: BenchTest, text: string): Outcome {
  if (test.words !== undefined) return wordedOutcome(test, text, false)
  const said = text.trim()
  return writtenReading(test, BARE.has(test.unit) && isBare(said) ? `${said} ${test.unit}` : said)
}

/** Nothing but a number. */
const isBare = (text: string): boolean => /^[-+−]?(\d+\.?\d*|\.\d+)$/.test(text)

/**
 * An answer by its number from 1, its id, its words, letters that only it begins with, or another word that plainly
 * means it; one of several where that word means any of them. Whoever was just asked needs no name of the question.
 * @throws ProblemError `request-wrong` with the answers that there are
 */
export function wordedOutcome({ id, words }: BenchTest, text: string, isNamed = true): Outcome {
  const answers = words?.answers ?? []
  const said = text.trim().toLowerCase()
  const byNumber = /^\d+$/.test(said) ? answers[Number(said) - 1] : undefined
  const exact = answers.find((one) => one.id === said || one.says.toLowerCase() === said)
  const begun = said === '' ? [] : answers.filter((one) => one.id.startsWith(said))
  const found = byNumber ?? exact ?? (begun.length === 1 ? begun[0] : undefined)
  if (found !== undefined) return { answer: found.id }
  const plain = PLAIN.get(said) ?? said
  const meant = answers.filter(({ also }) => also?.includes(plain))
  if (meant.length > 0) return oneOf(meant.map((one) => one.id))
  const known = answers.map((one) => one.id)
  const near = nearest(said, known)
  refuse({
    code: 'request-wrong',
    found: `the answer \`${text.trim()}\`${isNamed ? ` to \`${id}\`` : ''}`,
    expected: `one of ${known.join(', ')}`,
    ...(near === undefined ? {} : { mend: `perhaps \`${near}\`` }),
  })
}

/** An outcome of one answer, or of one of several. */
export function oneOf(answers: readonly string[]): Outcome {
  const [only, ...others] = answers
  return only !== undefined && others.length === 0 ? { answer: only } : { answers }
}

/** A value with its unit, or `open`. @throws ProblemError `request-wrong` saying what is missing or wrong */
export function writtenReading({ id, unit }: BenchTest, text: string): Outcome {
  const said = text.trim()
  if (OPEN.test(said)) return { open: true }
  const read = readQuantity(said, DIMENSIONS[unit])
  if (read.ok) return { x: read.quantity.value }
  const expected = `what the meter shows, such as ${EXAMPLES[unit]}`
  if (said === '') refuse({ code: 'request-wrong', found: `no value behind \`${id}\``, expected })
  const mend = mendOf(said, unit) ?? read.fault.mend
  refuse({
    code: 'request-wrong',
    found: isBare(said) ? `\`${said}\` without a unit` : read.fault.found,
    expected,
    ...(mend === undefined ? {} : { mend }),
  })
}

/** The usual slips: a comma where a point is due, and no unit. */
function mendOf(said: string, unit: BenchTest['unit']): string | undefined {
  const pointed = said.replace(/^([-+−]?\d+),(\d+)/, '$1.$2')
  const comma = pointed === said ? '' : ', with a point, not a comma'
  if (!isBare(pointed)) return comma === '' ? undefined : `write \`${pointed}\`${comma}`
  return unit === '1'
    ? undefined
    : `write \`${pointed} ${unit === 'F' ? 'µF' : unit}\`${comma}, if that is meant`
}

/** Whether a text is what such a test shows. */
export function readsAs({ unit }: BenchTest, text: string): boolean {
  return OPEN.test(text.trim()) || readQuantity(text.trim(), DIMENSIONS[unit]).ok
}
