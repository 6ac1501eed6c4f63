/** Readings and probabilities of `identify` in words. */
import type { IdentifyFinding, IdentifyNext, IdentifyOutcome } from '../answer/identify-answer.ts'
import { readCondition } from '../netlist/condition.ts'
import { formatPercent, formatQuantity } from '../quantities/format.ts'
import { writtenWords } from './words.ts'

/** Below this a meter's last digit is all there is, ohms. */
const FINE = 10
const LEAST_SHARE = 0.001
const MOST_SHARE = 0.999

/** `0.1 Ω`, `25.2 Ω`, `4.33 kΩ`. */
export function ohmsText(ohms: number): string {
  return ohms < FINE ? `${ohms.toFixed(1)} Ω` : formatQuantity(ohms, 'Ω')
}

/** `95.8 %`; what is within a thousandth of nothing or all is said so. */
export function shareText(probability: number): string {
  if (probability > MOST_SHARE) return 'over 99.9 %'
  return probability < LEAST_SHARE ? 'under 0.1 %' : formatPercent(probability)
}

/** What was seen or read, or what a set lets expect. */
export function saidText({ says, ohms }: Pick<IdentifyFinding, 'says' | 'ohms'>): string {
  return says ?? (ohms === undefined ? 'not said' : ohmsText(ohms))
}

/** `between 0.1 Ω and 1.0 Ω`, `about 25.2 Ω`, `open`. */
export function outcomeText({ says, least, most }: IdentifyOutcome): string {
  if (says !== undefined || least === undefined || most === undefined) return says ?? ''
  const [low, high] = [ohmsText(least), ohmsText(most)]
  return low === high ? `about ${low}` : `${low} to ${high}`
}

/** Where the leads go, in which state. */
export function whereText({ pair }: IdentifyNext): string {
  if (pair === undefined) return ''
  const read = readCondition(pair.condition)
  const state = read === undefined ? pair.condition : writtenWords(read)
  return `Cords off, set unplugged, ${state}: red lead on ${pair.red}, black lead on ${pair.black}, range of ohms.`
}

/** What to do for it, and what to write when it is done. */
export function howText(next: IdentifyNext): string {
  if (next.ask === 'sighting') return `Look, and add \`--seen "${next.id}=${next.answers.join('|')}"\`.`
  return `${whereText(next)} Add \`--reading "${next.id} …"\` with what it shows, \`open\` or \`no such terminal\`.`
}
