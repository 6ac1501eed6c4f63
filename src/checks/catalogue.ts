/** All checks in the order of reports. */
import { BELL } from './bell/index.ts'
import type { Rule } from './context.ts'
import { DIAL } from './dial/index.ts'
import { LINE } from './line/index.ts'
import { SPEECH } from './speech/index.ts'
import { WIRING } from './wiring/index.ts'

export const CHECKS: readonly Rule[] = [...WIRING, ...LINE, ...BELL, ...DIAL, ...SPEECH]
