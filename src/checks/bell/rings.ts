/** What the checks of ringing have in common: the bells, and what the sheet of the set says rings them. */
import type { Changes, Figure } from '../../figures/figure.ts'
import { ringingCurrent } from '../../figures/ringing.ts'
import type { Branch } from '../../netlist/netlist.ts'
import { type CheckContext, roleBranches, when } from '../context.ts'
import type { Verdict } from '../rule.ts'
import { unanswered } from '../unanswered.ts'

/** A bell that a check can judge. */
export interface Judgeable {
  readonly bell: Branch
  /** Least current that rings it, A. */
  readonly least: number
  /** A word on the frequency, where its sheet speaks of another than the line's. */
  readonly remark: string | undefined
}

/** Share by which two ringing frequencies may differ and still be called the same. */
const SAME_FREQUENCY = 0.1

/** Judges every bell of the set, or says why there is nothing to judge. */
export function eachBell(
  context: CheckContext,
  check: string,
  judgeOne: (one: Judgeable) => Verdict,
): readonly Verdict[] {
  const { line } = context.net
  if (line === undefined || context.place.socket === undefined)
    return [unanswered(context, check, 'no-line', 'The set stands on no line.')]
  const bells = roleBranches(context, 'sounder')
  if (bells.length === 0) return [unanswered(context, check, 'undetermined', 'The set has no bell.')]
  const frequency = line.ringingFrequency
  if (frequency === undefined)
    return [unanswered(context, check, 'undetermined', 'Nothing rings on this line.')]
  return bells.map((bell) => {
    const sounds = bell.part.law.sounds?.(bell.part.spec)
    const figure = bellCurrent(context, bell)
    if (sounds === undefined) {
      const says = 'The sheet of the set does not say what rings it.'
      return unanswered(context, check, 'no-limit', says, figure, bell.id)
    }
    if (sounds.never !== undefined) return neverRings(check, bell, figure, sounds.never)
    const away = Math.abs(sounds.frequency - frequency) > SAME_FREQUENCY * frequency
    const remark = away
      ? `Its sheet tells the current at ${sounds.frequency} Hz; this line rings at ${frequency} Hz.`
      : undefined
    return judgeOne({ bell, least: sounds.current, remark })
  })
}

/** Current of a bell while the line rings, everybody on-hook, with what is changed for the question. */
export function bellCurrent(context: CheckContext, bell: Branch, changes: Changes = {}): Figure {
  const { line } = context.net
  const condition = when(context, 'on-hook/ringing')
  const frequency = line?.ringingFrequency ?? 0
  return context.figure(ringingCurrent(bell, condition, frequency, line?.ringingHarmonics, changes))
}

function neverRings(
  check: string,
  bell: Branch,
  figure: Figure,
  { because, mend }: { readonly because: string; readonly mend: string },
): Verdict {
  return {
    check,
    subject: bell.id,
    condition: figure.condition,
    state: 'fails',
    says: `No current rings this bell: ${because}.`,
    figure,
    limit: null,
    margin: null,
    path: [],
    mend,
  }
}
