/** Reference impedances that a set is compared with: what they are made of, and where that is from. */
import { type ImpedanceItem, impedanceOf } from '../parts/exchange.ts'
import { formatExactly } from '../quantities/format.ts'
import type { Quantity } from '../quantities/quantity.ts'

/** Names of the published networks. */
export type ReferenceName = 'european-harmonised' | 'british' | 'australian' | 'six-hundred-ohm'

/** One network. Its impedance is computed from its items, never recited. */
export interface ReferenceNetwork {
  /** `own-line` is the termination of the line that the set stands on. */
  readonly name: ReferenceName | 'own-line'
  /** What it is made of, as people write it. */
  readonly words: string
  readonly items: readonly ImpedanceItem[]
  readonly source: string
  readonly clause: string
  readonly grade: 'SEEN-P' | 'MEMORY' | 'SHEET'
}

function quantity(value: number, unit: 'Ω' | 'F'): Quantity {
  return { value, unit, text: formatExactly(value, unit) }
}

/** R in series with R₂ beside C: the shape of all networks that stand for a length of cable. */
function network(ohms: number, besideOhms: number, farads: number): readonly ImpedanceItem[] {
  return [quantity(ohms, 'Ω'), { beside: [quantity(besideOhms, 'Ω'), quantity(farads, 'F')] }]
}

/** The published networks, in the order of reports. */
export const REFERENCE_NETWORKS: readonly ReferenceNetwork[] = [
  {
    name: 'european-harmonised',
    words: '270 Ω + 750 Ω ∥ 150 nF',
    items: network(270, 750, 150e-9),
    source: 'TBR 21 and ETSI ES 203 021-2, from memory',
    clause: 'ZR',
    grade: 'MEMORY',
  },
  {
    name: 'british',
    words: '370 Ω + 620 Ω ∥ 310 nF',
    items: network(370, 620, 310e-9),
    source: 'practice of the United Kingdom, from memory',
    clause: '-',
    grade: 'MEMORY',
  },
  {
    name: 'australian',
    words: '220 Ω + 820 Ω ∥ 120 nF',
    items: network(220, 820, 120e-9),
    source: 'AS/CA S002:2010, the values of its figure from memory',
    clause: 'figure 5',
    grade: 'MEMORY',
  },
  {
    name: 'six-hundred-ohm',
    words: '600 Ω',
    items: [quantity(600, 'Ω')],
    source: 'AS/CA S002:2010',
    clause: '5.5.1.9 (f)',
    grade: 'SEEN-P',
  },
]

/** The termination that a line's own sheet gives it, as a reference. */
export function ownTermination(items: readonly ImpedanceItem[]): ReferenceNetwork {
  return {
    name: 'own-line',
    words: 'this line',
    items,
    source: 'sheet of this line',
    clause: 'speech: impedance',
    grade: 'SHEET',
  }
}

/** The impedance of a network at a frequency, Hz; ohms. Not finite where nothing passes. */
export function referenceImpedance(
  { items }: Pick<ReferenceNetwork, 'items'>,
  frequency: number,
): { readonly re: number; readonly im: number } {
  return impedanceOf(items, 2 * Math.PI * frequency)
}
