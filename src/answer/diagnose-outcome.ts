/** What a person writes as the outcome of a test. */
import type { BenchTest } from '../book/bench-test.ts'
import type { Outcome } from '../diagnosis/state.ts'
import { refuse } from '../problem.ts'
import { nearest } from '../quantities/nearest.ts'
import { type Dimension, type Quantity, readQuantity } from '../quantities/quantity.ts'

/** What meters show, and people write, where nothing flows. */
const OPEN = /^(open|ol|o\.l\.|∞|infinite)$/i
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

/**
 * The outcome that a text means: the number of an answer, its id or its first letters; a value with its unit, or `open`.
 * @throws ProblemError `request-wrong` saying what would be understood
 */
export function writtenOutcome(test: BenchTest, text: string): Outcome {
  return test.words === undefined ? writtenReading(test, text) : wordedOutcome(test, text)
}

/** An answer by its number from 1, its id, its words, or letters that only it begins with. @throws ProblemError */
export function wordedOutcome({ id, words }: BenchTest, text: string): Outcome {
  const answers = words?.answers ?? []
  const said = text.trim().toLowerCase()
  const byNumber = /^\d+$/.test(said) ? answers[Number(said) - 1] : undefined
  const exact = answers.find((one) => one.id === said || one.says.toLowerCase() === said)
  const begun = said === '' ? [] : answers.filter((one) => one.id.startsWith(said))
  const found = byNumber ?? exact ?? (begun.length === 1 ? begun[0] : undefined)
  if (found !== undefined) return { answer: found.id }
  const known = answers.map((one) => one.id)
  const near = nearest(said, known)
  refuse({
    code: 'request-wrong',
    found: `the answer \`${text.trim()}\` to \`${id}\``,
    expected: `one of ${known.join(', ')}`,
    ...(near === undefined ? {} : { mend: `perhaps \`${near}\`` }),
  })
}

/** A value with its unit, or `open`. @throws ProblemError */
export function writtenReading({ id, unit }: BenchTest, text: string): Outcome {
  const said = text.trim()
  if (OPEN.test(said)) return { open: true }
  const { value, problem } = quantityOf(said, unit)
  if (value !== undefined) return { x: value.value }
  refuse({
    code: 'request-wrong',
    found: said === '' ? `no value behind \`${id}\`` : (problem ?? `\`${said}\``),
    expected: `what the meter shows, such as ${EXAMPLES[unit]}`,
  })
}

/** Whether a text is what such a test shows. */
export function readsAs({ unit }: BenchTest, text: string): boolean {
  return OPEN.test(text.trim()) || quantityOf(text.trim(), unit).value !== undefined
}

function quantityOf(
  said: string,
  unit: BenchTest['unit'],
): { readonly value?: Quantity; readonly problem?: string } {
  const read = readQuantity(said, DIMENSIONS[unit])
  if (read.ok) return { value: read.quantity }
  return { problem: read.fault.found }
}
