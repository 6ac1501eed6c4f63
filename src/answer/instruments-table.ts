/** The delivered instruments, built in so that the page has them without a file. */

import text from '../../netlists/instruments.yaml?raw'
import type { HabitName, Instruments, Kit } from '../meter/instrument.ts'
import { readInstruments } from '../meter/instruments.ts'
import { refuse } from '../problem.ts'
import { nearest } from '../quantities/nearest.ts'
import type { SheetText } from '../sheet/shelf.ts'

let read: Instruments | undefined

/** All instruments by name, and what hand and ear add. */
export function deliveredInstruments(): Instruments {
  read ??= readInstruments({ file: 'instruments.yaml', text })
  return read
}

/**
 * The instrument that a request means: a delivered one by its name, or one of a person's own table, which may hold
 * several if the name says which. Habits that the own table does not state are the delivered ones.
 * @throws ProblemError for a name that the table does not hold, and for several instruments without a name
 */
export function kitOf(name: string | undefined, own: SheetText | undefined): Kit {
  const delivered = deliveredInstruments()
  const table = own === undefined ? delivered : readInstruments(own)
  const names = [...table.instruments.keys()]
  const wanted = name ?? (own === undefined || names.length === 1 ? names[0] : undefined)
  const instrument = wanted === undefined ? undefined : table.instruments.get(wanted)
  if (instrument === undefined) {
    if (own === undefined) refuseName(wanted ?? '', names)
    refuseOwn(own.file, wanted, names)
  }
  // the delivered table has them all, which a test holds
  const habits = { ...delivered.habits, ...table.habits } as Record<HabitName, Kit['habits'][HabitName]>
  return { instrument, habits }
}

function refuseName(wanted: string, names: readonly string[]): never {
  const near = nearest(wanted, names)
  refuse({
    code: 'name-unknown',
    found: `the instrument \`${wanted}\``,
    expected: `${names.join(' or ')}, or a file of the same shape`,
    ...(near === undefined ? {} : { mend: `perhaps \`${near}\`` }),
  })
}

function refuseOwn(file: string, wanted: string | undefined, names: readonly string[]): never {
  const chosen = (wanted === undefined ? undefined : nearest(wanted, names)) ?? names[0]
  refuse({
    code: 'request-wrong',
    found:
      wanted === undefined
        ? `${file}, which holds ${names.length === 0 ? 'no instrument' : `${names.length} instruments`}`
        : `the instrument \`${wanted}\` in ${file}`,
    expected: names.length === 0 ? 'an instrument' : `one of its instruments by name: ${names.join(', ')}`,
    ...(chosen === undefined ? {} : { mend: `write \`--instrument ${file}:${chosen}\`` }),
  })
}
