/** Every named fault, in the order of reports. */
import type { FaultRule } from './named-fault.ts'

export const FAULT_RULES: readonly FaultRule[] = []
