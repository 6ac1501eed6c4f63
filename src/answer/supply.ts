/** Who solves what an answer asks. */
import type { Supplier } from '../figures/read.ts'
import type { Netlist } from '../netlist/netlist.ts'

/** Gives the supplier of a network's solutions; a fresh solver where an answer is given none. */
export type Supply = (net: Netlist) => Supplier
