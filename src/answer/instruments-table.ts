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
 */
export function kitOf(name: string | undefined, own: SheetText | undefined): Kit {
  const delivered = deliveredInstruments()
  const table = own === undefined ? delivered : readInstruments(own)
  const names = [...table.instruments.keys()]
  const wanted = own === undefined ? (name ?? names[0]) : names.length === 1 ? names[0] : name
  const instrument = wanted === undefined ? undefined : table.instruments.get(wanted)
  if (instrument === undefined) {
    const near = wanted === undefined ? undefined : nearest(wanted, names)
    refuse({
      code: own === undefined ? 'name-unknown' : 'request-wrong',
      found:
        own === undefined
          ? `the instrument \`${wanted}\``
          : `${own.file}, which holds ${names.length} instruments`,
      expected:
        own === undefined ? `${names.join(' or ')}, or a file of the same shape` : 'one instrument in a file',
      ...(near === undefined ? {} : { mend: `perhaps \`${near}\`` }),
    })
  }
  // the delivered table has them all, which a test holds
  const habits = { ...delivered.habits, ...table.habits } as Record<HabitName, Kit['habits'][HabitName]>
  return { instrument, habits }
}
