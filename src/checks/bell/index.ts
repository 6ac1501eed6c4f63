/** The checks of the bell group. */
import type { Rule } from '../context.ts'
import { notModelled } from '../not-modelled.ts'

export const BELL: readonly Rule[] = [
  notModelled('bell.rings-alone', 'Does the bell ring when the set is the only one?'),
  notModelled('bell.rings-with-all', 'Does the bell ring with everything plugged in?'),
  notModelled('bell.silent-own-dial', 'Is the bell silent while its own dial turns?'),
  notModelled('bell.silent-other-dials', 'Is the bell silent while other dials turn?'),
]
