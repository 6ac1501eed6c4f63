/** A set on the bench that answers what it is asked, as a person with a meter would. */

import { seededRandom } from 'ringproof/algebra/random'
import { type Identifier, identifier } from 'ringproof/answer/identify'
import type { IdentifyAnswer, IdentifyNext } from 'ringproof/answer/identify-answer'
import { sheetsInReach, unitsInReach } from 'ringproof/answer/identify-sheets'
import { kitOf } from 'ringproof/answer/instruments-table'
import { deliveredSightings } from 'ringproof/answer/sightings-table'
import { hasTerminal } from 'ringproof/identify/columns'
import { type Reader, readerOf } from 'ringproof/identify/expected'
import { type KnownSet, knownSets } from 'ringproof/identify/known'
import { insideSightings } from 'ringproof/identify/seen/inside'
import { outsideSightings } from 'ringproof/identify/seen/outside'
import { readSheet } from 'ringproof/sheet/read'
import type { Shelf } from 'ringproof/sheet/shelf'
import { DEMO } from '../../support/bench.ts'

export const ODDS = deliveredSightings()
export const KNOWN: readonly KnownSet[] = knownSets(sheetsInReach(DEMO, false).sheets, unitsInReach(DEMO))
export const READER: Reader = readerOf(kitOf(undefined, undefined), ODDS)
export const SIGHTINGS = [...outsideSightings(KNOWN), ...insideSightings(KNOWN)]
export const EVERY_SIGHTING: readonly string[] = SIGHTINGS.map(({ id }) => id)

/** The known set of this name. */
export function knownSet(name: string): KnownSet {
  const found = KNOWN.find((one) => one.name === name)
  if (found === undefined) throw new Error(`no known set is called ${name}`)
  return found
}

/** A set that is in no sheet, from the text of one that is based on a demo set. */
export function strangeSet(base: string, ...lines: readonly string[]): KnownSet {
  const text = `ringproof: 1\nsheet: set\nname: strange\nbased on: ${base}\n${lines.join('\n')}\n`
  const { sheet, problems } = readSheet({ file: 'strange.yaml', text }, DEMO, 'set')
  if (sheet === undefined) throw new Error(JSON.stringify(problems))
  const [made] = knownSets([{ sheet }], [])
  if (made === undefined) throw new Error('no set')
  return made
}

/** The demo's shelf without one of its sets. */
export function withoutSet(name: string): Shelf {
  return {
    ...DEMO,
    names: (kind, from) => DEMO.names(kind, from).filter((one) => kind !== 'set' || one !== name),
  }
}

/** What a meter shows of a set, read with an error of its own: one standard deviation 1 % and a count of 0.1 Ω. */
export function shown(truth: KnownSet, { pair }: IdentifyNext, random?: () => number): string {
  if (pair === undefined) throw new Error('no reading')
  if (!hasTerminal(truth, pair.red) || !hasTerminal(truth, pair.black)) return 'no such terminal'
  const ohms = READER.read(truth, pair)?.ohms ?? Number.NaN
  if (!Number.isFinite(ohms)) return 'open'
  const noise = random === undefined ? [0, 0] : [normal(random), normal(random)]
  // 0.2 Ω of leads are read with the rest
  const read = Math.max(0, ohms * (1 + 0.01 * (noise[0] ?? 0)) + 0.2 + 0.1 * (noise[1] ?? 0))
  return `${Math.round(10 * read) / 10} Ω`
}

/** @source Box and Muller, A note on the generation of random normal deviates (1958); from memory */
function normal(random: () => number): number {
  return Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random())
}

/** What a dialogue went through. */
export interface Talk {
  readonly answer: IdentifyAnswer
  readonly readings: readonly string[]
  readonly seen: readonly string[]
}

/** Asks until nothing more is asked, or so many readings are made. */
export function talk(
  by: Identifier,
  truth: KnownSet,
  how: { readonly most?: number; readonly seed?: number; readonly looks?: boolean } = {},
): Talk {
  const random = how.seed === undefined ? undefined : seededRandom(how.seed)
  const readings: string[] = []
  const seen: string[] = []
  const skipped: string[] = how.looks === true ? [] : [...EVERY_SIGHTING]
  let answer = by({ readings, seen, skipped })
  while (answer.next !== undefined && readings.length < (how.most ?? 15)) {
    const { next } = answer
    if (next.ask === 'reading') readings.push(`${next.id} ${shown(truth, next, random)}`)
    else {
      const at = SIGHTINGS.find(({ id }) => id === next.id)?.answerOf(truth) ?? Number.NaN
      const says = next.answers[at]
      if (says === undefined) skipped.push(next.id)
      else seen.push(`${next.id}=${says}`)
    }
    answer = by({ readings, seen, skipped })
  }
  return { answer, readings, seen }
}

/** Probability of each known set by its name, groups shared out to all their members. */
export function probabilityOf({ groups }: IdentifyAnswer, name: string): number {
  return groups.find(({ sets }) => sets.some((one) => one.name === name))?.probability ?? 0
}

export const identifierOf = (shelf: Shelf = DEMO): Identifier => identifier({}, shelf)
