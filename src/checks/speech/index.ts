/** The checks of the speech group. */
import type { Rule } from '../context.ts'
import { notModelled } from '../not-modelled.ts'

export const SPEECH: readonly Rule[] = [
  notModelled('speech.sends', 'Is the set heard?'),
  notModelled('speech.receives', 'Does the set hear?'),
  notModelled('speech.sidetone', 'Is its own voice in the receiver tolerable?'),
  notModelled('speech.impedance', 'Is its impedance sensible for this line?'),
  notModelled('speech.two-sets', 'Can two sets be off-hook together?'),
]
