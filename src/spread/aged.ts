/** What so many years make of the parts of an installation's sets. */
import { quantitiesIn, scaled } from '../meter/vary.ts'
import type { Netlist, NetPart } from '../netlist/netlist.ts'
import type { PartSpec } from '../parts/kind.ts'
import { formatQuantity } from '../quantities/format.ts'
import type { Quantity } from '../quantities/quantity.ts'
import type { Ageing, AgeingRow } from './ageing.ts'
import { type Aged, siteKey } from './world.ts'

/** What one row of the table came to. */
export interface AgedRow {
  /** Kind of part and which of its values. */
  readonly part: string
  readonly value: string
  /** Parts that it changed. */
  readonly parts: number
  /** By how much each was multiplied; absent where a leakage was added. */
  readonly factor?: number
  /** Resistance times capacitance of the added leakage, s. */
  readonly seconds?: number
  readonly source: string
}

/** The aged parts, and what was done to them. */
export interface AgedParts extends Aged {
  readonly rows: readonly AgedRow[]
}

/** Ages the parts of the sets; what belongs to no set stays. `years` above 0. */
export function agedParts(net: Netlist, table: Ageing, years: number): AgedParts {
  const share = years / table.years
  const specs = new Map<number, PartSpec>()
  const spreads = new Map<string, number>()
  const rows = table.changes.map((row): AgedRow => {
    const ages = agerOf(row, share)
    let parts = 0
    net.parts.forEach((part, index) => {
      if (part.place === '' || part.law.kind !== row.part) return
      const changed = ages(specs.get(index) ?? part.spec)
      if (changed === undefined) return
      parts += 1
      specs.set(index, changed.spec)
      spreads.set(siteKey(index, changed.path), row.spread ** share)
    })
    return {
      part: row.part,
      value: row.value,
      parts,
      ...(row.factor === undefined ? {} : { factor: row.factor ** share }),
      ...(row.seconds === undefined ? {} : { seconds: row.seconds / share }),
      source: row.source,
    }
  })
  return { refits: [...specs].map(([part, spec]) => ({ part, spec })), spreads, rows }
}

type Ager = (
  spec: NetPart['spec'],
) => { readonly spec: PartSpec; readonly path: readonly string[] } | undefined

function agerOf(row: AgeingRow, share: number): Ager {
  const { value: key, factor, seconds, usual } = row
  return (spec) => {
    const own: unknown = Object.hasOwn(spec, key) ? spec[key as keyof PartSpec] : undefined
    if (seconds !== undefined) return leaking(spec, key, seconds / share)
    if (factor === undefined) return undefined
    const [found] = quantitiesIn(own ?? usual, [key])
    if (found === undefined) return undefined
    const stated = own === undefined ? { ...spec, [key]: usual } : spec
    return { spec: scaled(stated, found.path, factor ** share) as PartSpec, path: found.path }
  }
}

/** A leakage that grew beside what a capacitor leaks by its sheet. */
function leaking(spec: PartSpec, key: string, seconds: number): ReturnType<Ager> {
  const farads = quantitiesIn(spec, []).find(({ quantity }) => quantity.unit === 'F')?.quantity.value ?? 0
  if (farads === 0) return undefined
  const [before] = quantitiesIn(spec, []).filter(({ path }) => path.join() === key)
  const siemens = farads / seconds + (before === undefined ? 0 : 1 / before.quantity.value)
  const value = 1 / siemens
  const leak: Quantity = { ...before?.quantity, value, unit: 'Ω', text: formatQuantity(value, 'Ω', 3) }
  return { spec: { ...spec, [key]: leak } as PartSpec, path: [key] }
}
