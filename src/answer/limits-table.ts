/** The delivered table of limits, built in so that the page has it without a file. */

import text from '../../netlists/limits.yaml?raw'
import { type Limits, readLimits } from '../checks/limits.ts'

let read: Limits | undefined

/** All limits by id. */
export function deliveredLimits(): Limits {
  read ??= readLimits(text, 'limits.yaml')
  return read
}
