/** The checks of the dial group. */
import type { Rule } from '../context.ts'
import { notModelled } from '../not-modelled.ts'
import { understood } from './understood.ts'

export const DIAL: readonly Rule[] = [
  notModelled('dial.rate', 'Does the dial send as many pulses per second as the line reads?'),
  notModelled('dial.ratio', 'Is the ratio of break to make right?'),
  notModelled('dial.make', 'Is the make long enough?'),
  notModelled('dial.break', 'Is the break long enough?'),
  notModelled('dial.muting', 'Is the receiver muted while the dial turns?'),
  understood,
]
