/** What can be seen of a closed set: handset, dial, key, cords. */
import type { SetSheet } from '../../sheet/model.ts'
import type { KnownSet } from '../known.ts'
import { oneOfWords, type Sighting, yesNo } from './sighting.ts'

/** A number that no known set has is something else. */
export function readCount(words: string, answers: readonly string[]): number | undefined {
  return /^\d{1,3}$/.test(words) ? answers.length - 1 : undefined
}

const REPLACED = 'cords are replaced, and cut back'
const FADED = 'weak evidence: cords are replaced, and colours fade'

/** Sightings from outside, answers drawn from the known sets. */
export function outsideSightings(among: readonly KnownSet[]): readonly Sighting[] {
  return [
    yesNo('handset', 'handset', 'Has it a handset?', ({ sheet }) => coresTo(sheet, 'handset').length > 0),
    yesNo('dial', 'dial', 'Has it a dial?', ({ sheet }) =>
      wordsIn(sheet).some((word) => word === 'off-normal' || word === 'make' || word === 'break'),
    ),
    yesNo('key', 'key', 'Has it a key for recall?', ({ sheet }) => wordsIn(sheet).includes('key')),
    {
      id: 'plug',
      sort: 'plug',
      asks: 'Does its line cord end in a plug, or in bare ends?',
      answers: ['bare ends', 'plug'],
      answerOf: ({ sheet }) => Number(sheet.plug !== undefined),
      weak: REPLACED,
    },
    oneOfWords(
      'line-cores',
      'line-cores',
      'How many cores has its line cord?',
      among,
      ({ sheet }) => `${coresTo(sheet, 'plug').length}`,
      { weak: REPLACED, read: readCount },
    ),
    oneOfWords(
      'handset-cores',
      'handset-cores',
      'How many cores has its handset cord?',
      among,
      ({ sheet }) => `${coresTo(sheet, 'handset').length}`,
      { weak: REPLACED, read: readCount },
    ),
    oneOfWords(
      'colours',
      'colours',
      'Which colours have the cores of its line cord?',
      among,
      ({ sheet }) => coloursOf(coresTo(sheet, 'plug').map(({ colour }) => colour)),
      { weak: FADED, read: readColours },
    ),
  ]
}

type Core = SetSheet['cords'][string]['cores'][string]

function coresTo({ cords }: SetSheet, end: 'plug' | 'handset'): readonly Core[] {
  return Object.values(cords).flatMap(({ 'ends in': endsIn, cores }) =>
    endsIn === end ? Object.values(cores) : [],
  )
}

/** Colours in the order of the alphabet; undefined where one is not said. */
function coloursOf(colours: readonly (string | undefined)[]): string | undefined {
  const said = colours.filter((one) => one !== undefined)
  return said.length < colours.length || said.length === 0 ? undefined : said.sort().join(' ')
}

function readColours(words: string, answers: readonly string[]): number | undefined {
  const colours = words
    .toLowerCase()
    .split(/[\s,;]+/)
    .filter((one) => one !== '')
  if (colours.length === 0) return undefined
  const at = answers.indexOf(colours.sort().join(' '))
  return at < 0 ? answers.length - 1 : at
}

/** What the contacts of a set answer to. */
function wordsIn({ contacts }: SetSheet): readonly (string | undefined)[] {
  return Object.values(contacts).flatMap((one) => [one['closed when'], one['open when']])
}
