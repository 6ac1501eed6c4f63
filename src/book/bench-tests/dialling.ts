/** Dialling while everything stands still: whether a break is a break, and whether the ear is spared. */
import { leakageOpen } from '../../figures/dial.ts'
import type { FigurePlan } from '../../figures/figure.ts'
import { onHookLeakage } from '../../figures/loop.ts'
import type { BenchTest } from '../bench-test.ts'
import { amiss, ask, fine, whenSet } from './ask.ts'
import { hasContact, type OnLine } from './bench-set.ts'
import { loopMade } from './loop.ts'
import { loudnessOf } from './loudness.ts'
import { after, inverse, least, type Measure, share } from './measure.ts'
import { speechCuts, toneAt } from './speech.ts'

/** Symptoms of the dial; whether other bells tinkle waits for the engine of time. */
export function diallingTests(bench: OnLine): readonly BenchTest[] {
  return [...breaksTone(bench), ...mutes(bench)]
}

/** Whether anything on the line makes use of dial pulses. */
function takesPulses({ line, socket }: OnLine): boolean {
  return socket.pulsesEnd || line.sheet.limits.pulses?.understood !== false
}

/** Where no tone is heard before, none can go: what is asked is then answered by that, whatever the dial does. */
function breaksTone(bench: OnLine): readonly BenchTest[] {
  if (!hasContact(bench, 'make', 'break') || !takesPulses(bench)) return []
  const made = loopMade(bench, 'off-hook/make')
  const open = share(openPlan(bench), bench.limit('break-current'))
  return [
    ask(bench, {
      id: 'dial-breaks',
      asks: 'Does the dial tone go away when you dial a digit?',
      how: 'Lift, listen for the tone, dial a 1 and listen again. Where there is no tone before, none can go.',
      when: 'off-hook/break',
      measure: least(...toneBefore(bench), made, inverse(open)),
      answers: [
        amiss('stays', 'it stays, or there is none that could go', 'no'),
        fine('goes', 'it goes with the first digit', 'yes'),
      ],
      cuts: [1],
    }),
  ]
}

/** The tone before anything is dialled, over what is heard at all; nothing where no ear could hear one. */
function toneBefore(bench: OnLine): readonly Measure[] {
  const tone = toneAt(bench, loudnessOf(bench))
  const [heard = 1] = speechCuts(bench)
  return tone === undefined ? [] : [after(tone, (score) => score / heard)]
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
      answers: [fine('quiet', 'quiet, or a faint ticking', 'yes'), amiss('clicks', 'loud clicks', 'no')],
      cuts: [bench.limit('muted')],
    }),
  ]
}
