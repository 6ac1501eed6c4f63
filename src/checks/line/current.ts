/** Is the loop current within what this line allows, neither too little nor too much? */

import type { Figure } from '../../figures/figure.ts'
import { amountOf } from '../../figures/figure.ts'
import { loopCurrent, plugBranch } from '../../figures/loop.ts'
import type { Installation } from '../../netlist/compile.ts'
import { type CheckContext, hasHook, liftedOthers, type Rule, when, whenHungUp } from '../context.ts'
import { graver } from '../judge.ts'
import { type Limit, limitOf } from '../limits.ts'
import { judgeAndMend, type Mended, namesOf, withSocket } from '../mends.ts'
import type { VerdictLimit } from '../rule.ts'
import { ofLine } from '../sheet-limit.ts'
import { unanswered } from '../unanswered.ts'
import { noHook } from '../wiring/loop.ts'

export const current: Rule = {
  id: 'line.current',
  asks: 'Is the loop current within what this line allows?',
  run(context) {
    const { net, place } = context
    if (net.line === undefined || place.socket === undefined)
      return [unanswered(context, current.id, 'no-line', 'The set stands on no line.')]
    if (!hasHook(context)) return [noHook(context, current.id)]
    const figure = context.figure(loopCurrent(net, place, when(context, 'off-hook')))
    const { least, most } = limitsOf(context)
    const base = { check: current.id, subject: place.place, figure, path: [] }
    const good = 'The loop current is within what this line works with.'
    const low = judgeAndMend(
      {
        ...base,
        limit: least,
        says: { good, bad: 'The loop current is too small for this line.' },
        tight: 'little is left over: a worn transmitter or a longer cable will take it',
      },
      () => moreMend(context, figure, least.value),
    )
    const high = judgeAndMend(
      {
        ...base,
        limit: most,
        says: { good, bad: 'The loop current is larger than this line allows.' },
        tight: 'little is left over: a shorter cable would bring too much',
      },
      () => lessMend(context, figure, least.value, most.value),
    )
    return [low, high].sort(graver).slice(0, 1)
  },
}

interface Limits {
  readonly least: Limit | VerdictLimit
  readonly most: Limit | VerdictLimit
}

/** The span of the line's sheet, or what law asks of lines in common. */
function limitsOf({ net, limits }: CheckContext): Limits {
  const span = net.line?.sheet.limits['loop current']
  if (span === undefined)
    return { least: limitOf(limits, 'loop-current-least'), most: limitOf(limits, 'loop-current-most') }
  return {
    least: ofLine(span.least.value, 'at-least', 'A', 'limits: loop current'),
    most: ofLine(span.most.value, 'at-most', 'A', 'limits: loop current'),
  }
}

/** Looks for what takes the current: apparatus and cable in the house, then the cable of the line. */
function moreMend(context: CheckContext, figure: Figure, least: number): Mended {
  const { installation, place } = context
  const engaged = liftedOthers(context)
  if (engaged.length > 0) {
    const mended = context.figure(loopCurrent(context.net, place, whenHungUp(context, 'off-hook')))
    if (amountOf(mended) >= least)
      return { mend: `hang up ${namesOf(engaged)}, which takes the rest`, consequences: [{ figure, mended }] }
  }
  const { premises, line } = installation
  const first = Object.entries(premises?.sockets ?? {}).find(([, one]) => one['fed from'] === undefined)?.[0]
  if (first !== undefined && first !== place.socket?.name) {
    const mended = tried(context, withSocket(installation, place.place, first))
    if (amountOf(mended) >= least && mended !== undefined)
      return {
        mend: `plug the set into ${first}, where the line comes in`,
        consequences: [{ figure, mended }],
      }
  }
  if (line?.cable !== undefined) {
    const { cable, ...rest } = line
    const mended = tried(context, { ...installation, line: rest })
    if (amountOf(mended) >= least && mended !== undefined) {
      return {
        mend: `the ${cable.length.text} of cable take it: only thicker cores or a stronger feed give this set more; beside the exchange it would have enough`,
        consequences: [{ figure, mended }],
      }
    }
  }
  return {
    mend: 'neither house nor cable takes it: look for resistance in the loop of the set (`wiring.loop-closed-off-hook`), then at the feed of this line',
  }
}

function tried(context: CheckContext, installation: Installation | undefined): Figure | undefined {
  if (installation === undefined) return undefined
  const trial = context.trial(installation)
  return trial.figure(loopCurrent(trial.net, trial.place, when(trial, 'off-hook')))
}

/** A resistor that is put into a wire is a multiple of this, ohms. */
const STEP = 50

/** A resistor in a line wire, as large as it must be. */
function lessMend(context: CheckContext, figure: Figure, least: number, most: number): Mended {
  const { net, place } = context
  const wire = plugBranch(net, place, 5)
  const volts = net.line?.feedVoltage ?? 0
  const missing = volts / most - volts / (figure.value ?? most)
  const ohms = STEP * Math.ceil(Math.max(missing, STEP) / STEP)
  const fallback = {
    mend: 'this line asks for a set of more resistance, or for a feed that limits its current',
  }
  if (wire === undefined) return fallback
  const within = [{ branch: wire.index, ohms }]
  const mended = context.figure(
    loopCurrent(net, place, when(context, 'off-hook'), 'loop.current', { within }),
  )
  const value = amountOf(mended)
  if (value > most || value < least) return fallback
  return {
    mend: `put ${ohms} Ω (common practice, no source) into one of the line wires, or use a feed that limits its current`,
    consequences: [{ figure, mended }],
  }
}
