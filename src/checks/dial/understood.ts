/** Does this line understand the pulses of this dial? The steady half: whether at all, and the currents made and broken. */

import { leakageOpen, resistanceMade } from '../../figures/dial.ts'
import type { Figure } from '../../figures/figure.ts'
import { amountOf } from '../../figures/figure.ts'
import { directCurrent, loopCurrent, onHookLeakage } from '../../figures/loop.ts'
import { soundersOf } from '../../figures/ringing-share.ts'
import type { NetLine } from '../../netlist/netlist.ts'
import { type CheckContext, hasDial, liftedOthers, type Rule, when, whenHungUp } from '../context.ts'
import { graver } from '../judge.ts'
import { type Limit, limitOf } from '../limits.ts'
import { culpritMend } from '../line/culprit.ts'
import { judgeAndMend, type Mended, namesOf, SERIES_RESISTANCE, withConverter } from '../mends.ts'
import type { Consequence, Fails, Verdict } from '../rule.ts'
import { unanswered } from '../unanswered.ts'

export const understood: Rule = {
  id: 'dial.understood',
  asks: 'Does this line understand dial pulses?',
  run(context) {
    const { net, place } = context
    const id = understood.id
    if (net.line === undefined || place.socket === undefined)
      return [unanswered(context, id, 'no-line', 'The set stands on no line.')]
    if (!hasDial(context)) return [unanswered(context, id, 'undetermined', 'The set has no dial.')]
    const { pulses } = net.line.sheet.limits
    if (place.socket.pulsesEnd) {
      return [pulsesJudged(context, net.line, 'A converter in line hears the pulses and sends tones')]
    }
    if (pulses === undefined) {
      const says = 'The sheet of this line does not say whether it understands dial pulses.'
      return [unanswered(context, id, 'no-limit', says, made(context))]
    }
    if (!pulses.understood) return [notUnderstood(context)]
    return [pulsesJudged(context, net.line, 'This line understands dial pulses')]
  },
}

function made(context: CheckContext): Figure {
  return context.figure(loopCurrent(context.net, context.place, when(context, 'off-hook/make')))
}

function broken(context: CheckContext, line: NetLine): Figure {
  const { net, place } = context
  // a converter hears what its set carries, not what it draws itself
  if (place.socket?.pulsesEnd === true) {
    const heard = onHookLeakage(net, place, when(context, 'off-hook/break'))
    return context.figure({ ...heard, id: 'dial.leakage-open' })
  }
  return context.figure(leakageOpen(context.net, context.place, line, when(context, 'off-hook/break')))
}

/** A line that takes no pulses: a converter is tried before it is named. */
function notUnderstood(context: CheckContext): Fails {
  const figure = made(context)
  return {
    check: understood.id,
    subject: context.place.place,
    condition: figure.condition,
    state: 'fails',
    says: 'This line does not understand dial pulses, however good they are.',
    figure,
    limit: null,
    margin: null,
    path: [],
    ...converterMend(context, figure),
  }
}

function converterMend(context: CheckContext, figure: Figure): Mended {
  const installation = withConverter(context.installation, context.place.place)
  if (installation === undefined) return { mend: 'dial from another set' }
  const trial = context.trial(installation)
  const { line } = trial.net
  const mended = made(trial)
  const open = line && broken(trial, line)
  const least = limitOf(context.limits, 'loop-make').value
  const most = limitOf(context.limits, 'break-current').value
  if (trial.place.socket?.pulsesEnd !== true || amountOf(mended) < least) {
    return {
      mend: `dial from another set, or by a converter that takes less; one with ${SERIES_RESISTANCE.text} in series was tried and leaves too little current`,
      consequences: [{ figure, mended }],
    }
  }
  if (open?.value == null || open.value > most) {
    return {
      mend: `look first for what keeps the line closed while the contact is open (\`line.leakage\`, \`wiring.bell-return\`): a converter with ${SERIES_RESISTANCE.text} in series was tried, and heard no break`,
      consequences: open === undefined ? [] : [{ figure: open }],
    }
  }
  return {
    mend: `put a converter from pulses to tones between socket and set; with ${SERIES_RESISTANCE.text} in series, the most that such apparatus may have, the loop still has enough`,
    consequences: [{ figure, mended }],
  }
}

/** Current while the contact is closed and while it is open, whichever is nearer to its limit. */
function pulsesJudged(context: CheckContext, line: NetLine, how: string): Verdict {
  const make = made(context)
  const open = broken(context, line)
  // what bells carry comes from the line
  const others = amountOf(open) > TELLING ? bridged(context) : { says: '', consequences: [] }
  const most = limitOf(context.limits, 'break-current')
  const good = `${how}: the loop is closed and open as it should be.${others.says}`
  const evidence = (figure: Figure, limit: Limit, bad: string, tight: string) => ({
    check: understood.id,
    subject: context.place.place,
    figure,
    limit,
    path: [],
    says: { good, bad },
    tight,
    consequences: [...resistance(context), ...others.consequences],
  })
  const closed = judgeAndMend(
    evidence(
      make,
      limitOf(context.limits, 'loop-make'),
      `With the pulse contact closed too little current flows to be counted.${others.says}`,
      'little is left over while the contact is closed: clean it',
    ),
    () => ({
      mend: 'look for resistance in the loop of the set, then at the current of this line (`line.current`)',
    }),
  )
  const engaged = liftedOthers(context)
  const hungUp = (): Mended | undefined => {
    if (engaged.length === 0) return undefined
    const mended = context.figure(
      leakageOpen(context.net, context.place, line, whenHungUp(context, 'off-hook/break')),
    )
    return amountOf(mended) <= most.value
      ? {
          mend: `hang up ${namesOf(engaged)}, which keeps the line closed`,
          consequences: [{ figure: open, mended }],
        }
      : undefined
  }
  const opened = judgeAndMend(
    evidence(
      open,
      most,
      `With the pulse contact open the line still carries too much current for a break.${others.says}`,
      'little more, and a break is no break: look for what leaks beside the contact',
    ),
    () =>
      hungUp() ??
      culpritMend(
        context,
        open,
        (of, changes) =>
          of.net.line && leakageOpen(of.net, of.place, of.net.line, when(of, 'off-hook/break'), changes),
        most.value,
        'look for what bridges the open contact in the set: its quench, damp, a strap',
      ),
  )
  const [worse = closed] = [closed, opened].sort(graver)
  return worse
}

function resistance(context: CheckContext): readonly Consequence[] {
  const plan = resistanceMade(context.net, context.place, when(context, 'off-hook/make'))
  return plan === undefined ? [] : [{ figure: context.figure(plan) }]
}

/** A direct current in a bell that is worth a word, A. */
const TELLING = 1e-4

/** Bells through which direct current flows while the contact is open: they keep the loop closed. */
function bridged(context: CheckContext): {
  readonly says: string
  readonly consequences: readonly Consequence[]
} {
  const condition = when(context, 'off-hook/break')
  const carrying = soundersOf(context.net)
    .map((bell) => context.figure(directCurrent('bell.direct-current', bell, condition)))
    .filter((one) => amountOf(one) > TELLING)
  if (carrying.length === 0) return { says: '', consequences: [] }
  const names = carrying.map(({ subject }) => subject).join(', ')
  return {
    says: ` While the contact is open direct current flows through ${names}.`,
    consequences: carrying.map((figure) => ({ figure })),
  }
}
