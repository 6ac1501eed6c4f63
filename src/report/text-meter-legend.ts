/** What the words and signs of a meter's table mean; those that occur in it. */
import type { MeterAnswer } from '../answer/meter-answer.ts'
import type { MeterReading } from '../meter/reading.ts'
import { formatQuantity } from '../quantities/format.ts'
import type { Page } from './paint.ts'
import { shortId } from './place-names.ts'
import { hanging } from './wrap.ts'

interface Word {
  readonly word: string
  readonly says: string
  readonly occurs: (reading: MeterReading) => boolean
}

const hears = (sound: 'click' | 'scrape') => (reading: MeterReading) =>
  reading.heard.some(({ says }) => says === sound)

const WORDS: readonly Word[] = [
  {
    word: 'misread',
    says: 'what is shown is not the capacitance of that part: something lies before or beside it; `--between` says what',
    occurs: ({ id, remarks }) => id === 'meter.capacitance' && remarks.length > 0,
  },
  {
    word: 'scrape',
    says: 'the reading wavers while the transmitter is blown into or tapped',
    occurs: hears('scrape'),
  },
  { word: 'click', says: 'the receiver clicks as the leads touch and leave', occurs: hears('click') },
  {
    word: 'not at the ear',
    says: 'the range sends so much through the receiver that it cracks loudly',
    occurs: ({ heard }) => heard.some(({ loud }) => loud === true),
  },
  {
    word: 'kick',
    says: 'the needle is thrown so far as a capacitor takes its charge, and falls back',
    occurs: ({ kick }) => kick !== undefined,
  },
  {
    word: 'floating',
    says: 'nothing joins one of the two points to the line; the figure wanders and means nothing',
    occurs: ({ floating }) => floating === true,
  },
  {
    word: 'diode range',
    says: 'volts across what conducts one way round, at the current of that range',
    occurs: ({ id }) => id === 'meter.diode',
  },
  {
    word: 'top',
    says: 'how high the voltage climbs while it rings, ringing and battery together; no meter shows it',
    occurs: ({ peak }) => peak !== undefined,
  },
]

/** The legend of these readings, a line for each word that occurs in them. */
export function legendLines(all: readonly MeterReading[], page: Page): string[] {
  const lines = WORDS.filter(({ occurs }) => all.some(occurs)).flatMap(({ word, says }) =>
    hanging(`  ${word}: `, says, page.width),
  )
  return lines.length === 0 ? [] : [page.paint.bold('Words'), ...lines, '']
}

/** What no reading shows, each part once, with the current at which it was read where that counts. */
export function blindLines(answer: MeterAnswer, page: Page): string[] {
  const { readings, cords, place } = answer
  const all = [...readings, ...cords.flatMap((cord) => cord.readings)].flatMap(({ blind }) => blind)
  const bySays = new Map<string, { readonly names: Set<string>; readonly currents: number[] }>()
  for (const { branch, says, current } of all) {
    const known = bySays.get(says) ?? { names: new Set<string>(), currents: [] }
    known.names.add(shortId(branch, place))
    if (current !== undefined) known.currents.push(current)
    bySays.set(says, known)
  }
  const untold = answer['not told'].map((id) => shortId(id, place))
  if (bySays.size === 0 && untold.length === 0) return []
  return [
    'What these readings do not show',
    ...[...bySays].flatMap(([says, { names, currents }]) =>
      hanging('  ', `${[...names].join(', ')}: ${says}${currentsText(currents)}`, page.width),
    ),
    ...(untold.length === 0
      ? []
      : hanging('  not told by any pair of points: ', untold.join(', '), page.width)),
    '',
  ]
}

/** ` (here 20.0 µA to 0.50 mA)`: with what this instrument reads it. */
export function currentsText(currents: readonly number[]): string {
  if (currents.length === 0) return ''
  const [least, most] = [Math.min(...currents), Math.max(...currents)].map((one) =>
    formatQuantity(one, 'A', 2),
  )
  return least === most ? ` (here ${least})` : ` (here ${least} to ${most})`
}
