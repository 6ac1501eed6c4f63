/** The checks of the bell group. */
import type { Rule } from '../context.ts'
import { notModelled } from '../not-modelled.ts'
import { ringsAlone } from './rings-alone.ts'
import { ringsWithAll } from './rings-with-all.ts'

export const BELL: readonly Rule[] = [
  ringsAlone,
  ringsWithAll,
  notModelled('bell.silent-own-dial', 'Is the bell silent while its own dial turns?'),
  notModelled('bell.silent-other-dials', 'Is the bell silent while other dials turn?'),
]
