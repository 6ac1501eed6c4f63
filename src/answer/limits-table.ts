/** The delivered table of limits, built in so that the page has it without a file. */
import { type Limits, readLimits } from '../checks/limits.ts'
import text from '../../netlists/limits.yaml?raw'

let read: Limits | undefined

/** All limits by id. */
export function deliveredLimits(): Limits {
  read ??= readLimits(text, 'limits.yaml')
  return read
}
