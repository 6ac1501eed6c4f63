/** Why a reading is not what it seems: what a real instrument would do that a number does not tell. */
import { formatExactly } from '../quantities/format.ts'
import type { Bench } from './bench.ts'
import type { Chosen } from './choose.ts'
import type { Kick } from './kick.ts'
import type { Wanted } from './reading.ts'

/** A pure capacitor's phase is −90°; within this much of it the figure is a capacitance. */
const PURE = (15 * Math.PI) / 180

/** Remarks on a reading, each a sentence. */
export function remarksOn(
  { net, kit }: Bench,
  chosen: Chosen,
  { frequency }: Wanted,
  kick: Kick | undefined,
): readonly string[] {
  const { range, shown } = chosen
  const remarks: string[] = []
  if (range.method === 'capacitance') remarks.push(...aboutPhase(shown.phase))
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

function aboutPhase(phase: number | undefined): readonly string[] {
  if (phase === undefined || Math.abs(phase + Math.PI / 2) <= PURE) return []
  const degrees = Math.round((phase * 180) / Math.PI)
  const head = `The phase between voltage and current is ${degrees}°, not −90°:`
  const lift = 'lift one end of the capacitor to read it'
  if (phase > Math.PI / 4) return [`${head} what is shown is a coil’s doing and no capacitance; ${lift}.`]
  if (phase > -Math.PI / 4) return [`${head} what is shown is mostly resistance and no capacitance; ${lift}.`]
  return [`${head} resistance in the way is shown as if it were capacitance; ${lift}.`]
}
