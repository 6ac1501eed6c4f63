import type { LawPoint, Working } from './kind.ts'

const REST: Working = { voltage: 0, current: 0 }

/** What one of the part's branches carries in direct current; 0 V and 0 A where nobody says. */
export function workingOf(at: LawPoint, branch: number = 0): Working {
  return at.direct?.(branch) ?? REST
}
