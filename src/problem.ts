/**
 * What went wrong, as data. Sentences are made in `report/`, tests match codes and places.
 * Everything may import this file; it imports nothing.
 */

/** Where in a sheet: lines and columns count from 1, columns and length in UTF-16 units as editors do. */
export interface Place {
  readonly file: string
  readonly line: number
  readonly column: number
  readonly length: number
}

/** The closed list of codes and what each one means; a row per code stands in docs/problems.md. */
export const PROBLEM_CODES = {
  'too-big': 'the sheet is longer than 1 MiB',
  'too-deep': 'the sheet is nested deeper than 32 levels',
  'alias-refused': 'the sheet uses an anchor, an alias or a merge key',
  syntax: 'the text is not YAML 1.2',
  'key-unknown': 'a key that this kind of sheet does not know',
  'key-missing': 'a key that must be there is not',
  'key-doubled': 'the same name or key stands twice',
  'key-forbidden': 'a key that no sheet may carry',
  'sheet-kind-unknown': 'the word behind `sheet:` is no kind of sheet',
  'version-unknown': 'the number behind `ringproof:` is no known version of the format',
  'part-kind-unknown': 'the word behind `kind:` is no kind of part',
  'unit-missing': 'a bare number where a unit is due',
  'unit-wrong': 'a unit of another quantity',
  'quantity-unreadable': 'a quantity that cannot be read',
  'quantity-out-of-range': 'a quantity that nothing on a telephone line can have',
  'name-malformed': 'a name that is not lower-case letters, digits and hyphens',
  'name-unknown': 'a name that nothing in reach carries',
  'terminal-unknown': 'a terminal that the strips do not have',
  'end-dangling': 'an end that no other part meets',
  'coupling-not-definite': 'couplings that no real coil can have',
  'base-missing': 'the sheet that this one is based on cannot be found',
  'base-circular': 'sheets that are based on each other in a circle',
  'file-missing': 'a file that is not there or cannot be read',
  'move-refused': 'a move that the wiring it meets does not allow',
  contradiction: 'ideal sources and links that contradict each other',
  'no-unique-solution': 'a network without one definite answer',
  'no-convergence': 'a network whose operating point was not found',
  'request-wrong': 'a request that cannot be understood',
  ours: 'a mistake of this program, please report it',
} as const

/** One code of the closed list. */
export type ProblemCode = keyof typeof PROBLEM_CODES

/** One thing that is wrong, or worth a warning. */
export interface Problem {
  readonly code: ProblemCode
  readonly severity: 'error' | 'warning'
  readonly place?: Place
  /** What stands there, quoted. */
  readonly found: string
  /** What would be right. */
  readonly expected: string
  /** What to do about it, ready to type where possible. */
  readonly mend?: string
  /** The line of the sheet that `place` points into. */
  readonly excerpt?: string
}

/** Thrown once, at the library's edge and by the floors above the sheets: carries every problem found. */
export class ProblemError extends Error {
  readonly problems: readonly Problem[]
  constructor(problems: readonly Problem[]) {
    super(problems.map((p) => `${p.code}: found ${p.found}, expected ${p.expected}`).join('\n'))
    this.name = 'ProblemError'
    this.problems = problems
  }
}

/** Throws one problem as an error; short for the floors that meet a single cause. */
export function refuse(problem: Omit<Problem, 'severity'>): never {
  throw new ProblemError([{ severity: 'error', ...problem }])
}
