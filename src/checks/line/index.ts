/** The checks of the line group. */
import type { Rule } from '../context.ts'
import { answersWhileRinging } from './answers-while-ringing.ts'
import { current } from './current.ts'
import { eitherPolarity } from './either-polarity.ts'
import { leakage } from './leakage.ts'
import { noFalseTrip } from './no-false-trip.ts'
import { ringingLoadOfLine } from './ringing-load.ts'

export const LINE: readonly Rule[] = [
  current,
  leakage,
  ringingLoadOfLine,
  noFalseTrip,
  answersWhileRinging,
  eitherPolarity,
]
