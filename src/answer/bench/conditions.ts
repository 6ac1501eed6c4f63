/** The conditions that a set can be in: words that nothing answers to are left out. */
import { readCondition } from '../../netlist/condition.ts'
import type { Netlist, NetPlace } from '../../netlist/netlist.ts'
import { USUAL_CONDITIONS } from '../condition-of-request.ts'

/** Those of the usual conditions that this set and its line know. */
export function conditionsOf(net: Netlist, { place }: NetPlace): readonly string[] {
  const words = new Set<string>(
    net.parts.filter((part) => part.place === place).flatMap(({ gate }) => gate?.word ?? []),
  )
  const { line } = net
  return USUAL_CONDITIONS.filter((written) => {
    const one = readCondition(written)
    if (one === undefined) return false
    if (one.line !== 'idle' && line === undefined) return false
    if (one.line === 'ringing' && line?.ringingFrequency === undefined) return false
    if (one.hook === 'off-hook' && !words.has('off-hook')) return false
    if (one.dial !== 'rest' && !words.has('make') && !words.has('break')) return false
    return one.key === 'up' || words.has('key')
  })
}
