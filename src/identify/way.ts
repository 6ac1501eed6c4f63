/** The way that a reading takes through a known set. */
import { conditionOf, readCondition } from '../netlist/condition.ts'
import { conducting } from '../netlist/conduct.ts'
import { pathBetween } from '../netlist/paths.ts'
import type { Pair } from './expected.ts'
import { type KnownSet, PLACE } from './known.ts'

/** Ways found so far; they hang on the wiring alone, and each finding is asked of every set again. */
const kept = new WeakMap<KnownSet['net'], Map<string, readonly number[]>>()

/** The branches through which a reading of this pair leads, as the set's sheet has it. */
export function wayIn({ net }: KnownSet, { red, black, condition }: Pair): readonly number[] {
  const ways = kept.get(net) ?? new Map<string, readonly number[]>()
  kept.set(net, ways)
  const key = `${red} ${black} ${condition}`
  const way = ways.get(key) ?? wayAfresh(net, red, black, condition)
  ways.set(key, way)
  return way
}

function wayAfresh(net: KnownSet['net'], red: string, black: string, words: string): readonly number[] {
  const [from, to] = [red, black].map((one) => net.nodeIndex.get(`${PLACE}/${one}`))
  const read = readCondition(words)
  if (from === undefined || to === undefined || read === undefined) return []
  return pathBetween(net, conducting(net, conditionOf(PLACE, read), 'direct'), from, to)?.branches ?? []
}
