/** What the ear adds to a reading: the click of a receiver, the waver of a transmitter that is blown into. */
import type { Netlist } from '../netlist/netlist.ts'
import { currentIn, type Solution, sizeOf } from '../solver/solution.ts'
import type { Kit } from './instrument.ts'

/** A part that answers to the instrument's current. */
export interface Heard {
  readonly branch: string
  /** A */
  readonly current: number
  /** `click`: heard in the receiver; `scrape`: the reading wavers while the transmitter is blown into or tapped. */
  readonly says: 'click' | 'scrape'
  /** So much current through a receiver that it is kept away from the ear. */
  readonly loud?: true
}

/** Parts that the instrument's own current makes speak. Steady current only; a pulse by way of a coil may click too. */
export function heard(net: Netlist, kit: Kit, solution: Solution | undefined): readonly Heard[] {
  if (solution === undefined) return []
  return net.branches.flatMap((branch): Heard[] => {
    const { role } = branch.part
    if (role !== 'receiver' && role !== 'sender') return []
    const says = role === 'receiver' ? 'click' : 'scrape'
    const current = sizeOf(currentIn(solution, branch.index))
    if (current < kit.habits[says].value) return []
    const loud = says === 'click' && current >= kit.habits.loud.value
    return [{ branch: branch.id, current, says, ...(loud ? { loud } : {}) }]
  })
}
