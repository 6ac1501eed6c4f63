/** Figures by which faults show what follows from them, of any context, so that before and after are the same question. */
import { type CheckContext, roleBranches, when } from '../checks/context.ts'
import type { Consequence } from '../checks/rule.ts'
import { leakageOpen } from '../figures/dial.ts'
import type { Changes, Figure } from '../figures/figure.ts'
import { directCurrent, loopCurrent, onHookLeakage } from '../figures/loop.ts'
import { ringingCurrent } from '../figures/ringing.ts'
import type { Branch, Netlist } from '../netlist/netlist.ts'

/** A bell that gets less than this is silent, A: it leaks through open contacts. */
export const SILENT = 1e-6

/** The branch of the same id in another netlist. */
export function sameBranch(net: Netlist, { id }: Branch): Branch | undefined {
  const index = net.branchIndex.get(id)
  return index === undefined ? undefined : net.branches[index]
}

/** A figure and what becomes of it; nothing where there is none. */
export function become(now: Figure | undefined, then?: Figure): readonly Consequence[] {
  if (now === undefined) return []
  return [then === undefined ? { figure: now } : { figure: now, mended: then }]
}

/** Figures by pairs, in their order. */
export function becomeAll(now: readonly Figure[], then: readonly Figure[] = []): readonly Consequence[] {
  return now.flatMap((figure, k) => become(figure, then[k]))
}

/** Whether there is something to see in a consequence: nothing that stays nothing tells nothing. */
export function tells({ figure, mended }: Consequence): boolean {
  return [figure, mended].some((one) => one !== undefined && (one.value ?? NOUGHT) >= NOUGHT)
}

/** A current of less than this is none, A. */
const NOUGHT = 1e-12

/** Ringing current of a bell, or of another branch of the set, where the line rings. */
export function bellCurrent(context: CheckContext, bell: Branch, changes: Changes = {}): Figure | undefined {
  const { line } = context.net
  const here = sameBranch(context.net, bell)
  if (line?.ringingFrequency === undefined || context.place.socket === undefined || here === undefined)
    return undefined
  const condition = when(context, 'on-hook/ringing')
  return context.figure(
    ringingCurrent(here, condition, line.ringingFrequency, line.ringingHarmonics, changes),
  )
}

/** The ringing current of the examined set's own bells. */
export function ownBellCurrents(context: CheckContext): readonly Figure[] {
  return roleBranches(context, 'sounder')
    .map((bell) => bellCurrent(context, bell))
    .filter((one) => one !== undefined)
}

/** Direct current through a bell, in a condition of the examined set. */
export function bellDirect(context: CheckContext, bell: Branch, written: string): Figure | undefined {
  const here = sameBranch(context.net, bell)
  return here === undefined
    ? undefined
    : context.figure(directCurrent('bell.direct-current', here, when(context, written)))
}

/** Loop current in a condition. */
export function loopNow(context: CheckContext, written = 'off-hook'): Figure {
  return context.figure(loopCurrent(context.net, context.place, when(context, written)))
}

/** Direct current on-hook. */
export function leakageNow(context: CheckContext): Figure {
  return context.figure(onHookLeakage(context.net, context.place, when(context, 'on-hook')))
}

/** Least current that rings a bell, A; undefined where its part does not tell or nothing rings it. */
export function ringsFrom({ part }: Branch): number | undefined {
  const sounds = part.law.sounds?.(part.spec)
  return sounds === undefined || sounds.never !== undefined ? undefined : sounds.current
}

/** Current in words, with as many digits as a person reads. */
export function milliamps(figure: Figure | undefined): string {
  const value = figure?.value ?? undefined
  if (value === undefined) return 'an unknown current'
  if (value < SILENT) return 'no current'
  const size = value * 1e3
  return `${size >= 1 ? size.toFixed(1) : size.toPrecision(1)} mA`
}

/** Direct current that the whole line still carries while the pulse contact of the set is open, on a line. */
export function whileBroken(context: CheckContext): Figure | undefined {
  const { net, place } = context
  return net.line && context.figure(leakageOpen(net, place, net.line, when(context, 'off-hook/break')))
}
