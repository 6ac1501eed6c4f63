/** The steps, in their order. */
import { BROKEN } from './1-broken.ts'
import { PATH } from './2-path.ts'
import { REVERSED } from './3-reversed.ts'
import { SHARED } from './4-shared.ts'
import { STARVE } from './5-starve.ts'
import { UNEQUAL } from './6-unequal.ts'
import { TWO_CAPACITORS } from './7-two-capacitors.ts'
import { TOUCHES } from './8-touches.ts'
import type { Step } from './step.ts'

export const STEPS: readonly Step[] = [
  BROKEN,
  PATH,
  REVERSED,
  SHARED,
  STARVE,
  UNEQUAL,
  TWO_CAPACITORS,
  TOUCHES,
]
