/** Why a reading is not what it seems: what a real instrument would do that a number does not tell. */
import { formatExactly, formatQuantity } from '../quantities/format.ts'
import type { Bench } from './bench.ts'
import type { BesideIt } from './beside.ts'
import type { Chosen } from './choose.ts'
import type { Heard } from './ear.ts'
import type { Kick } from './kick.ts'
import type { Wanted } from './reading.ts'

/** A pure capacitor's phase is −90°; within this much of it the figure is a capacitance. */
const PURE = (15 * Math.PI) / 180

/** What else has been found of a reading. */
export interface Observed {
  readonly kick: Kick | undefined
  readonly besides: BesideIt
  readonly sounds: readonly Heard[]
}

/** Remarks on a reading, each a sentence. */
export function remarksOn(
  { net, kit }: Bench,
  chosen: Chosen,
  { frequency }: Wanted,
  { kick, besides, sounds }: Observed,
): readonly string[] {
  const { range, shown } = chosen
  const remarks: string[] = []
  if (range.method === 'capacitance') remarks.push(...aboutPhase(shown.phase), ...aboutBeside(besides))
  if (shown.adrift === true)
    remarks.push('Floating: nothing joins one of the two points to the line, so that what is shown wanders.')
  for (const { branch, current, loud } of sounds)
    if (loud === true)
      remarks.push(
        `Not at the ear: ${formatQuantity(current, 'A', 2)} go through ${bare(branch)} on this range, a loud crack as the leads touch and leave.`,
      )
  if ((range.method === 'volts' || range.method === 'alternating-volts') && net.line === undefined)
    remarks.push('Nothing drives a set that is off its line: there is no voltage to read.')
  if (range.method === 'volts' && kit.instrument['shows by'] === 'needle' && Number(shown.value) < 0)
    remarks.push('The needle goes the wrong way: change the leads over.')
  if (range.method === 'alternating-volts') {
    const sure = range['sure from'].value
    if (frequency !== undefined && frequency < sure)
      remarks.push(
        `This range is sure from ${formatExactly(sure, 'Hz')}; at ${formatExactly(frequency, 'Hz')} it may read low or waver.`,
      )
    if (range['responds to'] === 'average')
      remarks.push('It averages and is calibrated for sines: another wave reads wrong by its form factor.')
    if (!range['blocks direct'])
      remarks.push('It does not keep direct voltage out: a battery behind the ringing raises what it shows.')
  }
  if (kick !== undefined)
    remarks.push('To see the kick again, short the two points first, or change the leads over.')
  return remarks
}

/** A part's name without its place. */
function bare(id: string): string {
  return id.slice(id.indexOf('/') + 1)
}

function aboutBeside({ branches, without }: BesideIt): readonly string[] {
  if (branches.length === 0) return []
  const names = branches.map(({ id }) => bare(id)).join(', ')
  const alone =
    without === undefined ? 'nothing would be shown' : `${formatQuantity(without, 'F')} would be shown`
  return [`With ${names} in the way as well: without ${branches.length === 1 ? 'it' : 'them'} ${alone}.`]
}

/** Whether a phase is that of a resistance or a coil rather than of a capacitor. */
export function isNoCapacitor(phase: number): boolean {
  return phase > -Math.PI / 4
}

function aboutPhase(phase: number | undefined): readonly string[] {
  if (phase === undefined || Math.abs(phase + Math.PI / 2) <= PURE) return []
  const degrees = Math.round((phase * 180) / Math.PI)
  const head = `The phase between voltage and current is ${degrees}°, not −90°:`
  const lift = 'lift one end of the capacitor to read it'
  if (phase > Math.PI / 4) return [`${head} what is shown is a coil’s doing and no capacitance; ${lift}.`]
  if (phase > -Math.PI / 4) return [`${head} what is shown is mostly resistance and no capacitance; ${lift}.`]
  return [`${head} resistance in the way is shown as if it were capacitance; ${lift}.`]
}
