/** Every check: the wiring group, and those that exist by name and are not modelled in this version. */
import { type CheckContext, type Rule, when } from './context.ts'
import type { Verdict } from './rule.ts'
import { WIRING } from './wiring/index.ts'

const LATER: Readonly<Record<string, string>> = {
  'line.current': 'Is the loop current within what this line allows?',
  'line.leakage': 'Is the direct current on-hook small enough for this line?',
  'line.ringing-load': 'Do the bells together stay within the ringing load of this line?',
  'line.no-false-trip': 'Does ringing go on until someone answers?',
  'line.answers-while-ringing': 'Does lifting the handset stop the ringing?',
  'line.either-polarity': 'Does the set work with the pair either way round?',
  'bell.rings-alone': 'Does the bell ring when the set is the only one?',
  'bell.rings-with-all': 'Does the bell ring with everything plugged in?',
  'bell.silent-own-dial': 'Is the bell silent while its own dial turns?',
  'bell.silent-other-dials': 'Is the bell silent while other dials turn?',
  'dial.rate': 'Does the dial send as many pulses per second as the line reads?',
  'dial.ratio': 'Is the ratio of break to make right?',
  'dial.make': 'Is the make long enough?',
  'dial.break': 'Is the break long enough?',
  'dial.muting': 'Is the receiver muted while the dial turns?',
  'dial.understood': 'Does this line understand dial pulses?',
  'speech.sends': 'Is the set heard?',
  'speech.receives': 'Does the set hear?',
  'speech.sidetone': 'Is its own voice in the receiver tolerable?',
  'speech.impedance': 'Is its impedance sensible for this line?',
  'speech.two-sets': 'Can two sets be off-hook together?',
}

function notModelled(id: string, asks: string): Rule {
  return {
    id,
    asks,
    run: (context: CheckContext): readonly Verdict[] => [
      {
        check: id,
        subject: context.place.place,
        condition: when(context, 'on-hook'),
        state: 'unknown',
        reason: 'not-modelled',
        says: 'This version does not compute it.',
        figure: null,
        limit: null,
        margin: null,
        path: [],
      },
    ],
  }
}

/** All checks in the order of reports. */
export const CHECKS: readonly Rule[] = [
  ...WIRING,
  ...Object.entries(LATER).map(([id, asks]) => notModelled(id, asks)),
]
