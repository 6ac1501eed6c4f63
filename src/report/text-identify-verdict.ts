/** What `identify` says, in a sentence or two. */
import type { IdentifiedGroup, IdentifyAnswer } from '../answer/identify-answer.ts'
import { shareText } from './identify-words.ts'

/** `fescue`, `melick or melick-coil-turned`. */
function namesOf({ sets }: IdentifiedGroup): string {
  const names = sets.map(({ name }) => name)
  const last = names.at(-1) ?? ''
  return names.length < 2 ? last : `${names.slice(0, -1).join(', ')} or ${last}`
}

/** What it is, in a sentence or two. */
export function identifyVerdict(answer: IdentifyAnswer): string {
  return `${whatText(answer)}${strayText(answer)}`
}

function whatText({ finds, groups, sure, unknown, findings, next }: IdentifyAnswer): string {
  const [lead] = groups
  if (finds === 'unknown') {
    const like = unknown.like === undefined ? '' : ` It is most like ${unknown.like}.`
    return `UNKNOWN SET: it is in none of the sheets, ${sure} (${shareText(unknown.probability)}).${unknown.changed > unknown.foreign ? like : ''}`
  }
  if (lead === undefined || findings.length === 0) return 'Nothing is found yet.'
  const names = namesOf(lead)
  const alike = alikeText(lead, next !== undefined)
  if (finds === 'one') return `${names}: ${sure} (${shareText(lead.probability)}).${alike}`
  if (finds === 'like-one') {
    const changed = `that somebody changed it in a place that was not read is still possible (${shareText(unknown.probability)})`
    return `Of the known sets it is ${names}; ${changed}.${alike}`
  }
  const told =
    next === undefined ? 'Not told, and nothing that may still be asked tells more.' : 'Not told yet.'
  return `${told} First ${names}, ${sure} (${shareText(lead.probability)}).${alike}`
}

/** That a group stays one, whatever is asked; a question that follows is about all others. */
function alikeText({ sets }: IdentifiedGroup, isAsking: boolean): string {
  if (sets.length < 2) return ''
  return isAsking
    ? ' What is asked next tells these from others, not from each other.'
    : ' Nothing that may be asked tells these apart.'
}

/** A terminal that no known set has is rather a slip than a new set. */
function strayText({ stray }: IdentifyAnswer): string {
  if (stray.length === 0) return ''
  return ` No known set has a terminal ${stray.join(' or ')}: perhaps a slip? Look at its letter and number once more.`
}
