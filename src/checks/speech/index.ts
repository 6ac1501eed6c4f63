/** The checks of the speech group. */
import type { Rule } from '../context.ts'
import { receives, sends } from './heard.ts'
import { impedance } from './impedance.ts'
import { sidetone } from './sidetone.ts'
import { twoSets } from './two-sets.ts'

export const SPEECH: readonly Rule[] = [sends, receives, sidetone, impedance, twoSets]
