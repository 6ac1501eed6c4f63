/** A bell whose two coils work against each other: no current rings it, and no meter on ohms sees it. */
import { type CheckContext, roleBranches, when } from '../checks/context.ts'
import type { Figure } from '../figures/figure.ts'
import { ringingVoltage } from '../figures/ringing.ts'
import type { Branch } from '../netlist/netlist.ts'
import type { PartSpec } from '../parts/kind.ts'
import { becomeAll, bellCurrent, milliamps, ringsFrom, sameBranch } from './measure.ts'
import type { FaultRule, Finding } from './named-fault.ts'
import { moved } from './try-mend.ts'
import { ids } from './wires.ts'

/** The link between the coils of a bell is on the wrong end of one of them. */
export const bellCoilsTurned: FaultRule = {
  id: 'bell-coils-turned',
  title: 'bell coils linked the wrong way',
  explains: ['wiring.ringing-lead-to-bell', 'bell.rings-alone', 'bell.rings-with-all'],
  find: (context) =>
    roleBranches(context, 'sounder').flatMap((bell) => {
      const never = bell.part.law.sounds?.(bell.part.spec)?.never
      const right = never === undefined ? undefined : linkedRightly(bell)
      return never === undefined || right === undefined ? [] : [turned(context, bell, right, never)]
    }),
}

/** The same bell with its coils the other way round, where it says which way they are and would sound. */
function linkedRightly({ part }: Branch): PartSpec | undefined {
  const { coils } = part.spec as { readonly coils?: { readonly turned?: boolean } }
  if (coils === undefined) return undefined
  const spec: PartSpec = Object.assign({}, part.spec, { coils: { ...coils, turned: coils.turned !== true } })
  return part.law.sounds?.(spec)?.never === undefined ? spec : undefined
}

function turned(
  context: CheckContext,
  bell: Branch,
  right: PartSpec,
  never: { readonly because: string; readonly mend: string },
): Finding {
  const { name } = bell.part
  const after = moved(context, [
    { do: 'lift part', what: name },
    { do: 'fit part', what: name, with: right },
  ])?.after
  const mended = after && sameBranch(after.net, bell)
  const now = bellCurrent(context, bell)
  const needs = mended && ringsFrom(mended)
  const least =
    needs === undefined ? '' : `, though ${(needs * 1e3).toFixed(1)} mA would ring it linked rightly`
  return {
    subject: bell.id,
    condition: when(context, 'on-hook/ringing'),
    says: `No current rings the ${name}: ${never.because}. It carries ${milliamps(now)}${least}. A meter on ohms reads the same either way.`,
    path: ids(context, [bell.from, bell.to]),
    consequences: becomeAll(figuresOf(context, bell), after && figuresOf(after, bell)),
    mend: `with the set unplugged, ${never.mend}`,
  }
}

function figuresOf(context: CheckContext, bell: Branch): readonly Figure[] {
  const here = sameBranch(context.net, bell)
  const current = bellCurrent(context, bell)
  const { line } = context.net
  if (here === undefined || current === undefined || line?.ringingFrequency === undefined) return []
  const plan = ringingVoltage(here, current.condition, line.ringingFrequency, line.ringingHarmonics)
  return [current, context.figure(plan)]
}
