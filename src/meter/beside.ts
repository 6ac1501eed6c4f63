/** What lies beside a capacitor and makes its reading another one. */
import type { Branch, Netlist } from '../netlist/netlist.ts'
import { currentIn, sizeOf } from '../solver/solution.ts'
import { widened } from './accuracy.ts'
import type { Chosen } from './choose.ts'
import type { Leads } from './leads.ts'
import type { Meaning } from './meaning.ts'
import { type Setting, show } from './show.ts'

/** The parts beside a reading's way that matter to it, and what would be shown without them. */
export interface BesideIt {
  readonly branches: readonly Branch[]
  /** Absent where nothing is left to be shown. */
  readonly without?: number
}

/** What carries less than this share of the current moves no reading of two digits. */
const LITTLE = 0.005

/** The parts that move a capacitance, taken off one by one, further than the instrument itself may be off. */
export function besideIt(
  net: Netlist,
  leads: Leads,
  { range, shown }: Chosen,
  way: Meaning,
  setting: Setting,
): BesideIt {
  const { solution, value } = shown
  if (solution === undefined || typeof value !== 'number') return { branches: [] }
  const on = new Set([...way.parts, ...way.contacts])
  const carried = ({ index }: Branch): number => sizeOf(currentIn(solution, index))
  const most = Math.max(0, ...way.parts.map(carried))
  const off = (branches: readonly Branch[]): number | undefined => {
    const lifted = [...(leads.lifted ?? []), ...branches.map(({ index }) => index)]
    const left = show(net, { ...leads, lifted }, range, setting).value
    return typeof left === 'number' ? left : undefined
  }
  const moves = (left: number | undefined): boolean => {
    const own = left === undefined ? undefined : widened(range, { least: left, most: left })
    return own === undefined || value < own.least || value > (own.most ?? value)
  }
  const branches = net.branches.filter(
    (branch) =>
      !on.has(branch) &&
      branch.part.role !== 'link' &&
      carried(branch) > LITTLE * most &&
      moves(off([branch])),
  )
  const without = branches.length === 0 ? undefined : off(branches)
  return { branches, ...(without === undefined ? {} : { without }) }
}
