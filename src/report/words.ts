/** Ids in plain words. What is not in a table is shown by its id. */
import type { Grade } from '../checks/limits.ts'
import type { Reason, VerdictState } from '../checks/rule.ts'
import type { FigureId, State } from '../figures/figure.ts'
import { type Condition, ON_HOOK, type SetCondition, type WrittenCondition } from '../netlist/condition.ts'

/** What each figure is, without an article. */
export const FIGURE_WORDS: Readonly<Record<FigureId, string>> = {
  'resistance.between': 'resistance',
  'impedance.between': 'impedance',
  'loop.resistance': 'loop resistance',
  'loop.current': 'loop current',
  'loop.voltage': 'voltage across the set',
  'transmitter.current': 'transmitter current',
  'receiver.direct-current': 'direct current in the receiver',
  'bell.direct-current': 'direct current in the bell',
  'leakage.on-hook': 'leakage with the handset down',
  'leakage.earth': 'leakage to earth',
  'ringing.current': 'ringing current in the bell',
  'ringing.voltage': 'ringing voltage at the bell',
  'ringing.capacitors': 'capacitors in the ringing path',
  'speech.send': 'speech sent for 1 V',
  'speech.receive': 'speech received for 1 V',
  'speech.sidetone': 'sidetone for 1 V',
  'leakage.ringing': 'direct current while ringing',
  'ringing.power': 'apparent power of the bell',
  'ringing.share': 'share of the current of all bells',
  'ringing.line-current': 'ringing current of the line',
  'ringing.socket-voltage': 'ringing voltage at the socket',
  'ringing.load.four-kilohm-unit': 'ringing load, units of 4 kΩ',
  'ringing.load.unit-ringer': 'ringing load, unit ringers',
  'ringing.load.type-a': 'ringing load, type A',
  'ringing.load.type-b': 'ringing load, type B',
  'ringing.load.older-european': 'ringing load, older unit',
  'ringing.load.sixteen-kilohm': 'ringing load, units of 16 kΩ',
  'ringing.trip-margin': 'margin to the ring trip',
  'dial.resistance-made': 'resistance with the pulse contact closed',
  'dial.leakage-open': 'current with the pulse contact open',
  'speech.impedance': 'impedance',
  'speech.return-loss': 'return loss',
  'balance.conversion-loss': 'balance about earth',
}

/** Why a figure has no number. */
export const STATE_WORDS: Readonly<Record<State, string>> = {
  open: 'open',
  undetermined: 'undetermined',
  'beyond-range': 'beyond range',
  'no-convergence': 'no operating point found',
}

/** The state of a verdict as its heading says it. */
export const VERDICT_WORDS: Readonly<Record<VerdictState, string>> = {
  fails: 'FAILS',
  marginal: 'MARGINAL',
  unknown: 'UNKNOWN',
  holds: 'HOLDS',
}

/** Why a check could not be answered. */
export const REASON_WORDS: Readonly<Record<Reason, string>> = {
  'not-modelled': 'not modelled yet',
  'no-limit': 'no limit to compare with',
  'no-line': 'needs a line',
  'no-convergence': 'no operating point found',
  undetermined: 'undetermined',
}

/** How well a limit's source is known. */
export const GRADE_WORDS: Readonly<Record<Grade, string>> = {
  'SEEN-P': 'read in the source itself',
  'SEEN-S': 'read at second hand',
  DERIVED: 'derived',
  MEMORY: 'from memory',
  'COMMON PRACTICE': 'common practice, no source',
  SHEET: 'from its sheet',
}

const HOOK = { 'on-hook': 'handset down', 'off-hook': 'handset up' } as const
const DIAL = {
  rest: '',
  make: 'dial running, pulse contact closed',
  break: 'dial running, pulse contact open',
}
const LINE = { idle: '', ringing: 'ringing arrives', speech: 'speech' } as const

function setWords({ hook, dial, key }: SetCondition): string {
  return [HOOK[hook], DIAL[dial], key === 'down' ? 'key pressed' : '']
    .filter((word) => word !== '')
    .join(', ')
}

/** One set's condition: `handset up, speech`. */
export function writtenWords(one: WrittenCondition): string {
  return [setWords(one), LINE[one.line]].filter((word) => word !== '').join(', ')
}

/** A condition: `handset down, ringing arrives`; beside other sets by place: `hall handset up; kitchen handset down`. */
export function conditionWords({ line, sets }: Condition): string {
  const places = Object.entries(sets)
  const [only] = places
  if (only === undefined) return writtenWords({ hook: 'on-hook', dial: 'rest', key: 'up', line })
  if (places.length === 1) return writtenWords({ ...only[1], line })
  const doing = places.length <= FEW ? places : places.filter(([, one]) => !isResting(one))
  const each = doing.map(([place, one]) => `${place} ${setWords(one)}`)
  if (doing.length === 0) each.push(setWords(places[0]?.[1] ?? ON_HOOK))
  else if (doing.length < places.length) each.push('the others handset down')
  return [...each, LINE[line]].filter((word) => word !== '').join('; ')
}

/** So many places are all named in a condition; of more, those that do something. */
const FEW = 2

const isResting = ({ hook, dial, key }: SetCondition): boolean =>
  hook === ON_HOOK.hook && dial === ON_HOOK.dial && key === ON_HOOK.key

/** `1 check`, `2 checks`. */
export function counted(count: number, noun: string): string {
  return `${count} ${noun}${count === 1 ? '' : 's'}`
}
