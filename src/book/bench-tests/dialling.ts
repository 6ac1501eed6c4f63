/** Dialling while everything stands still: whether a break is a break, and whether the ear is spared. */
import { leakageOpen } from '../../figures/dial.ts'
import type { FigurePlan } from '../../figures/figure.ts'
import { onHookLeakage } from '../../figures/loop.ts'
import type { BenchTest } from '../bench-test.ts'
import { amiss, ask, fine, whenSet } from './ask.ts'
import { hasContact, type OnLine } from './bench-set.ts'
import { loopMade } from './loop.ts'
import { loudnessOf } from './loudness.ts'
import { inverse, least, share } from './measure.ts'

/** Symptoms of the dial; whether other bells tinkle waits for the engine of time. */
export function diallingTests(bench: OnLine): readonly BenchTest[] {
  return [...breaksTone(bench), ...mutes(bench)]
}

/** Whether anything on the line makes use of dial pulses. */
function takesPulses({ line, socket }: OnLine): boolean {
  return socket.pulsesEnd || line.sheet.limits.pulses?.understood !== false
}

function breaksTone(bench: OnLine): readonly BenchTest[] {
  if (!hasContact(bench, 'make', 'break') || !takesPulses(bench)) return []
  const made = loopMade(bench, 'off-hook/make')
  const open = share(openPlan(bench), bench.limit('break-current'))
  return [
    ask(bench, {
      id: 'dial-breaks',
      asks: 'Does the dial tone go away when you dial a digit?',
      how: 'Lift, listen for the tone, dial a 1 and listen again. Where there is no tone, listen whether dialling clicks in another telephone on this line.',
      when: 'off-hook/break',
      measure: least(made, inverse(open)),
      answers: [
        amiss('stays', 'it stays, or there is nothing that could go'),
        fine('goes', 'it goes with the first digit'),
      ],
      cuts: [1],
    }),
  ]
}

/** What the line still carries with the pulse contact open; a converter hears what its set carries. */
function openPlan(bench: OnLine): FigurePlan {
  const { net, place, line, socket } = bench
  const condition = whenSet(bench, 'off-hook/break')
  return socket.pulsesEnd ? onHookLeakage(net, place, condition) : leakageOpen(net, place, line, condition)
}

function mutes(bench: OnLine): readonly BenchTest[] {
  const { dialling } = loudnessOf(bench)
  if (dialling === undefined || !hasContact(bench, 'off-normal')) return []
  return [
    ask(bench, {
      id: 'dial-mutes',
      asks: 'Is the receiver quiet while the dial turns?',
      how: 'Lift, dial a 0 and listen while the dial runs back.',
      when: 'off-hook/make/speech',
      measure: dialling,
      answers: [fine('quiet', 'quiet, or a faint ticking'), amiss('clicks', 'loud clicks')],
      cuts: [bench.limit('muted')],
    }),
  ]
}
