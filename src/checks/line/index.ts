/** The checks of the line group. */
import type { Rule } from '../context.ts'
import { notModelled } from '../not-modelled.ts'

export const LINE: readonly Rule[] = [
  notModelled('line.current', 'Is the loop current within what this line allows?'),
  notModelled('line.leakage', 'Is the direct current on-hook small enough for this line?'),
  notModelled('line.ringing-load', 'Do the bells together stay within the ringing load of this line?'),
  notModelled('line.no-false-trip', 'Does ringing go on until someone answers?'),
  notModelled('line.answers-while-ringing', 'Does lifting the handset stop the ringing?'),
  notModelled('line.either-polarity', 'Does the set work with the pair either way round?'),
]
