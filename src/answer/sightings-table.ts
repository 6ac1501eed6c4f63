/** The delivered table of sightings, built in so that the page has it without a file. */

import text from '../../netlists/sightings.yaml?raw'
import { readSightingOdds, type SightingOdds } from '../identify/odds.ts'

let read: SightingOdds | undefined

/** How reliable sightings are, what they and readings cost, and how likely a set is that no sheet holds. */
export function deliveredSightings(): SightingOdds {
  read ??= readSightingOdds({ file: 'sightings.yaml', text })
  return read
}
