/** Every named fault, in the order of reports; what says the same more exactly comes first. */
import { bellCoilsTurned } from './bell-coils-turned.ts'
import { bellReturnedWrong } from './bell-returned-wrong.ts'
import { bellWithoutResistor } from './bell-without-resistor.ts'
import { coreOnDeadTerminal } from './core-on-dead-terminal.ts'
import { coreOnWrongTerminal, strapTooMany } from './core-on-wrong-terminal.ts'
import { coresJoined } from './cores-joined.ts'
import { earthRecallUnknown } from './earth-recall-unknown.ts'
import { extensionBellInSeries } from './extension-bell-in-series.ts'
import { receiverOut, transmitterOut } from './handset-part-out.ts'
import { lineEarthed } from './line-earthed.ts'
import { mirroredNumbering } from './mirrored-numbering.ts'
import type { FaultRule } from './named-fault.ts'
import { quenchLost } from './quench-lost.ts'
import { reversedAtCord } from './reversed-at-cord.ts'
import { ringingLeadMissing } from './ringing-lead-missing.ts'
import { ownCapacitorLeftIn, ringingLeadTouching } from './ringing-lead-stray.ts'
import { spareCoreJoined } from './spare-core-joined.ts'
import { strapMissingAtBell, strapMissingOnLoop } from './strap-missing.ts'
import { tooManyBells } from './too-many-bells.ts'
import { touchableLive } from './touchable-live.ts'
import { twoRingingCapacitors } from './two-ringing-capacitors.ts'
import { unitMissing } from './unit-missing.ts'

export const FAULT_RULES: readonly FaultRule[] = [
  touchableLive,
  lineEarthed,
  mirroredNumbering,
  extensionBellInSeries,
  coresJoined,
  coreOnDeadTerminal,
  unitMissing,
  strapMissingOnLoop,
  transmitterOut,
  receiverOut,
  reversedAtCord,
  bellReturnedWrong,
  ringingLeadTouching,
  ownCapacitorLeftIn,
  strapMissingAtBell,
  bellCoilsTurned,
  ringingLeadMissing,
  quenchLost,
  spareCoreJoined,
  coreOnWrongTerminal,
  strapTooMany,
  earthRecallUnknown,
  twoRingingCapacitors,
  bellWithoutResistor,
  tooManyBells,
]
