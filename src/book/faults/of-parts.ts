/** Faults of parts, straps, cores, contacts, units, sockets and cables: the modes that each kind has of itself. */

import type { Change } from '../../figures/variants.ts'
import type { NetPart } from '../../netlist/netlist.ts'
import { branchAt } from '../../netlist/netlist.ts'
import type { FaultMode } from '../../parts/kind.ts'
import type { BookFault } from '../fault.ts'
import type { Ground } from './ground.ts'
import { mendOf } from './mends.ts'
import { calledOf } from './names.ts'
import { servingParts } from './serving.ts'

/** Every mode of every part of the set, and of what brings the line to it. */
export function partFaults(ground: Ground): readonly BookFault[] {
  const { net, place, odds } = ground
  const serving = servingParts(net, place)
  const faults = net.parts.flatMap((part, index) =>
    part.place === place.place || serving.has(part)
      ? (part.law.modes?.(part.spec) ?? []).map((mode) => ({
          part,
          mode,
          fault: faultOf(ground, index, mode),
        }))
      : [],
  )
  // how often a wire in the wall breaks is said once, for all wires of the way to the set
  const isBreak = ({ part, mode }: (typeof faults)[number]): boolean =>
    part.sort === 'cable' && mode.family === 'open'
  const breaks = faults.filter(isBreak).length
  const { weight, source } = odds.faults['wire-broken']
  return faults.map((one) => (isBreak(one) ? { ...one.fault, weight: weight / breaks, source } : one.fault))
}

function faultOf({ net }: Ground, index: number, mode: FaultMode): BookFault {
  const part = net.parts[index]
  if (part === undefined) throw new RangeError(`no part has the index ${index}`)
  const called = calledOf(part)
  return {
    id: `${part.id} ${mode.mode}`,
    subjects: [part.id],
    family: mode.family,
    says: `${mode.of === undefined ? called : `${mode.of} of ${called}`} ${mode.says}`,
    sign: mode.sign,
    mend: mendOf(part.sort, mode),
    weight: mode.weight,
    source: mode.source,
    changes: changesOf({ net }, part, index, mode),
  }
}

/** A mode as changes of the network: of the one branch that it befalls, or of all that the part has. */
function changesOf(
  { net }: Pick<Ground, 'net'>,
  part: NetPart,
  index: number,
  { branch, change }: FaultMode,
): readonly Change[] {
  if ('instead' in change) return [{ instead: { part: index, spec: change.instead } }]
  const ordinals = branch === undefined ? Array.from({ length: part.count }, (_, k) => k) : [branch]
  return ordinals.map((ordinal): Change => {
    const k = part.first + ordinal
    if ('open' in change) return { lifted: k }
    if ('within' in change) return { within: { branch: k, ohms: change.within } }
    const { from, to } = branchAt(net, k)
    return { bridge: { from, to, ohms: change.across } }
  })
}
