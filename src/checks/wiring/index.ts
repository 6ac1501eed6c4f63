/** The wiring group, in the order in which a restorer reads it. */
import type { Rule } from '../context.ts'
import { ringingLeadAlone, ringingLeadToBell } from './bell.ts'
import { bellReturn } from './bell-return.ts'
import { coresReachParts, coresSeparate } from './cores.ts'
import { earthFree, sparesFree, touchableFree } from './free.ts'
import { loopClosedOffHook, loopOpenOnHook, loopThroughSet } from './loop.ts'
import { noPartLeftOut, quenchPresent, unitAsNeeded } from './parts.ts'
import { oneRingingCapacitor } from './ringing-capacitor.ts'

export const WIRING: readonly Rule[] = [
  coresSeparate,
  coresReachParts,
  loopThroughSet,
  loopOpenOnHook,
  loopClosedOffHook,
  ringingLeadToBell,
  ringingLeadAlone,
  bellReturn,
  sparesFree,
  noPartLeftOut,
  unitAsNeeded,
  earthFree,
  touchableFree,
  oneRingingCapacitor,
  quenchPresent,
]
