/** Values within their tolerances: which ones a netlist states, and the same netlist with some of them changed. */
import type { Branch, Netlist, NetPart } from '../netlist/netlist.ts'
import type { PartSpec } from '../parts/kind.ts'
import type { Quantity } from '../quantities/quantity.ts'

/** A value that a sheet states within limits. */
export interface Loose {
  /** Index of the part in the netlist. */
  readonly part: number
  /** Where in the part's spec the value stands. */
  readonly path: readonly string[]
  readonly unit: Quantity['unit']
  /** Factors from the stated value to its least and most. */
  readonly least: number
  readonly most: number
}

/** A value and the factor by which it is changed. */
export interface Change {
  readonly loose: Loose
  readonly factor: number
}

/**
 * Every value with a tolerance, in the order of the parts. A carbon transmitter reads within `spread` up and down,
 * whatever its sheet says.
 */
export function looseValues(net: Netlist, spread: number): readonly Loose[] {
  return net.parts.flatMap((part, index) =>
    quantitiesIn(part.spec, []).flatMap(({ path, quantity }): Loose[] => {
      const shaken = part.role === 'sender' && quantity.unit === 'Ω'
      const wide = shaken ? { least: 1 / spread, most: spread } : within(quantity)
      return wide === undefined ? [] : [{ part: index, path, unit: quantity.unit, ...wide }]
    }),
  )
}

/** Every value of one part, whatever its tolerance. */
export function valuesOf({ spec }: NetPart, part: number): readonly Loose[] {
  return quantitiesIn(spec, []).map(({ path, quantity: { unit } }) => ({
    part,
    path,
    unit,
    least: 1,
    most: 1,
  }))
}

function within({ tolerance }: Quantity): { least: number; most: number } | undefined {
  return tolerance === undefined || tolerance === 0
    ? undefined
    : { least: Math.max(0, 1 - tolerance), most: 1 + tolerance }
}

/** The same netlist with some values changed. Nodes, branches and their order stay. */
export function withChanges(net: Netlist, changes: readonly Change[]): Netlist {
  const specs = new Map<number, PartSpec>()
  for (const { loose, factor } of changes) {
    const spec = specs.get(loose.part) ?? net.parts[loose.part]?.spec
    if (spec !== undefined) specs.set(loose.part, scaled(spec, loose.path, factor) as PartSpec)
  }
  return withSpecs(net, specs)
}

/** The same netlist with other specs for some of its parts, by their index; the forms of their branches follow. */
export function withSpecs(net: Netlist, specs: ReadonlyMap<number, PartSpec>): Netlist {
  const fresh = new Map<NetPart, NetPart>()
  const parts = net.parts.map((part, index) => {
    const spec = specs.get(index)
    if (spec === undefined) return part
    const changed = { ...part, spec }
    fresh.set(part, changed)
    return changed
  })
  const branches = net.branches.map((branch): Branch => {
    const part = fresh.get(branch.part)
    if (part === undefined) return branch
    return { ...branch, part, form: part.law.branches(part.spec)[branch.ordinal]?.form ?? branch.form }
  })
  return { ...net, parts, branches }
}

/** A quantity that a spec or a sheet states, and where. */
export interface Stated {
  readonly path: readonly string[]
  readonly quantity: Quantity
}

/** Every quantity in data, however deep. */
export function quantitiesIn(value: unknown, path: readonly string[]): readonly Stated[] {
  if (typeof value !== 'object' || value === null) return []
  if (isQuantity(value)) return [{ path, quantity: value }]
  return Object.entries(value).flatMap(([key, inner]) => quantitiesIn(inner, [...path, key]))
}

function isQuantity(value: object): value is Quantity {
  return 'value' in value && typeof value.value === 'number' && 'unit' in value && 'text' in value
}

/** A spec with the value at this path so many times as large; the same where it has no such value. */
export function specScaled(spec: PartSpec, path: readonly string[], factor: number): PartSpec {
  return scaled(spec, path, factor) as PartSpec
}

/** The same data with one quantity multiplied. */
export function scaled(value: unknown, [key, ...rest]: readonly string[], factor: number): unknown {
  if (typeof value !== 'object' || value === null) return value
  if (key === undefined) return isQuantity(value) ? { ...value, value: value.value * factor } : value
  return { ...value, [key]: scaled((value as Record<string, unknown>)[key], rest, factor) }
}
