/** The delivered table of odds, built in so that the page has it without a file. */

import text from '../../netlists/odds.yaml?raw'
import { type Odds, readOdds } from '../book/odds.ts'

let read: Odds | undefined

/** How likely faults are, what finding out costs, and how often people are mistaken. */
export function deliveredOdds(): Odds {
  read ??= readOdds(text, 'odds.yaml')
  return read
}
