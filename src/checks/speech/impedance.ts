/** What the line sees of the set, shown beside what modern equipment must reach. */
import type { Figure } from '../../figures/figure.ts'
import {
  ownTermination,
  REFERENCE_NETWORKS,
  type ReferenceNetwork,
} from '../../figures/reference-networks.ts'
import { portOf, returnLoss, setImpedance } from '../../figures/set-impedance.ts'
import { SPEECH_FREQUENCY } from '../../figures/speech.ts'
import { formatQuantity } from '../../quantities/format.ts'
import { type Rule, when } from '../context.ts'
import { type Limit, limitOf } from '../limits.ts'
import type { Verdict } from '../rule.ts'
import { decibels, noLimit, notSaid, unasked } from './path.ts'

/** The network of the published limits. */
const PUBLISHED: ReferenceNetwork['name'] = 'australian'

/** A frequency in the lower band of the published limits, Hz; 1 kHz is in the upper. */
const LOWER = 500

/**
 * The impedance at 1 kHz about the direct-current point of this line, and what of the speech it throws back. No old
 * set was built to a return loss: the published limits are told, and fail none.
 */
export const impedance: Rule = {
  id: 'speech.impedance',
  asks: 'Is its impedance sensible for this line?',
  run(context): readonly Verdict[] {
    const lower = limitOf(context.limits, 'return-loss-lower')
    const upper = limitOf(context.limits, 'return-loss-upper')
    const early = unasked(context, impedance.id)
    if (early !== undefined) return [early]
    const { line } = context.net
    const port = portOf(context.net, context.place)
    const published = REFERENCE_NETWORKS.find(({ name }) => name === PUBLISHED)
    if (line === undefined || port === undefined || published === undefined)
      return [notSaid(context, impedance.id, 'No plug contact of the set meets the a wire of its socket.')]
    const condition = when(context, 'off-hook/speech')
    const figure = context.figure(setImpedance(port, line, condition, SPEECH_FREQUENCY))
    const loss = (network: ReferenceNetwork, frequency: number): Figure =>
      context.figure(returnLoss(port, line, network, condition, frequency))
    const own = loss(ownTermination(line.sheet.speech.impedance), SPEECH_FREQUENCY)
    const low = loss(published, LOWER)
    const high = loss(published, SPEECH_FREQUENCY)
    const says = `${sizeWords(figure)}; its return loss against the termination of this line is ${lossWords(own)}. Modern equipment must reach more than ${limitWords(lower)} below 600 Hz and ${limitWords(upper)} above against ${published.words} (${upper.source}, ${upper.clause}); this set reaches ${lossWords(low)} at ${LOWER} Hz and ${lossWords(high)} at 1 kHz. No limit is known for a set of its age.`
    return [noLimit(context, impedance.id, figure, says, [own, low, high])]
  },
}

function sizeWords({ value, phasor }: Figure): string {
  if (value === null || phasor === undefined) return 'The set is open to speech'
  const degrees = Math.round((Math.atan2(phasor.im, phasor.re) * 180) / Math.PI)
  return `The line sees ${formatQuantity(value, 'Ω', 3)} at ${degrees < 0 ? '−' : ''}${Math.abs(degrees)}°`
}

function lossWords({ value, state }: Figure): string {
  if (value === null) return state === 'beyond-range' ? 'beyond range' : 'undetermined'
  return `${value <= -0.05 ? '−' : ''}${decibels(value)}`
}

function limitWords({ value }: Limit): string {
  return `${value} dB`
}
