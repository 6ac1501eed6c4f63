/** Speech from 200 Hz to 4 kHz, of a set alone and beside a second one off-hook: more than a check has the time for. */
import { type CheckContext, when } from '../checks/context.ts'
import { speaking } from '../checks/speech/path.ts'
import { bothUp, othersWithHandset } from '../checks/speech/together.ts'
import type { FigurePlan } from '../figures/figure.ts'
import { ownTermination, REFERENCE_NETWORKS } from '../figures/reference-networks.ts'
import { portOf, returnLoss, setImpedance } from '../figures/set-impedance.ts'
import { speechPlans } from '../figures/speech.ts'
import { SPEECH_THIRDS } from '../figures/speech-band.ts'
import type { Condition } from '../netlist/condition.ts'

/**
 * Send, receive, sidetone, impedance and return loss against each reference network at each third of an octave, about
 * the direct-current point of this line; then send, receive, sidetone and impedance with the first other set of the
 * premises off-hook too. Empty without a handset or a line.
 */
export function speechCurves(context: CheckContext): readonly FigurePlan[] {
  const alone = curves(context, when(context, 'off-hook/speech'), true)
  const [other] = othersWithHandset(context)
  if (alone.length === 0 || other === undefined) return alone
  return [...alone, ...curves(context, bothUp(context, other.place, 'speech'), false)]
}

function curves(context: CheckContext, condition: Condition, withLoss: boolean): readonly FigurePlan[] {
  const path = speaking(context)
  if (path === undefined) return []
  const { line } = path
  const port = portOf(context.net, context.place)
  const networks = withLoss ? [...REFERENCE_NETWORKS, ownTermination(line.sheet.speech.impedance)] : []
  return SPEECH_THIRDS.flatMap((frequency) => [
    ...speechPlans(path, condition, {}, frequency),
    ...(port === undefined
      ? []
      : [
          setImpedance(port, line, condition, frequency),
          ...networks.map((network) => returnLoss(port, line, network, condition, frequency)),
        ]),
  ])
}
