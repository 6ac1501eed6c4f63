/** The delivered table of ageing, built in so that the page has it without a file. */

import text from '../../netlists/ageing.yaml?raw'
import { type Ageing, readAgeing } from '../spread/ageing.ts'

let read: Ageing | undefined

/** How parts change with the years. */
export function deliveredAgeing(): Ageing {
  read ??= readAgeing(text, 'ageing.yaml')
  return read
}
