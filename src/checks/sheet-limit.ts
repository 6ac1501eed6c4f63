/** Limits that a sheet of this job sets, as verdicts carry them. */
import type { VerdictLimit } from './rule.ts'

/** A limit by the key of the line's sheet that sets it. */
export function ofLine(
  value: number,
  side: VerdictLimit['side'],
  unit: VerdictLimit['unit'],
  clause: string,
): VerdictLimit {
  return { value, side, unit, source: 'sheet of this line', clause, grade: 'SHEET' }
}

/** The least current that rings a bell, by the sheet of its set. */
export function ringsFrom(value: number): VerdictLimit {
  return {
    value,
    side: 'at-least',
    unit: 'A',
    source: 'sheet of this set',
    clause: 'rings from',
    grade: 'SHEET',
  }
}
