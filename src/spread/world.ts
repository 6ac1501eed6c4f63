/** An installation whose values may be anything within their limits: one netlist for each choice of factors. */
import { quantitiesIn, scaled, withChanges, withSpecs } from '../meter/vary.ts'
import { compile, type Installation } from '../netlist/compile.ts'
import type { Netlist, Sort } from '../netlist/netlist.ts'
import type { PartSpec } from '../parts/kind.ts'
import type { Quantity } from '../quantities/quantity.ts'
import type { LineSheet, PremisesSheet } from '../sheet/model.ts'

/** Where a loose value stands: in the spec of a part, or in a sheet from which several parts are made. */
export type Site =
  | { readonly part: number; readonly path: readonly string[] }
  | { readonly sheet: 'line' | 'premises'; readonly path: readonly string[] }

/** A value that is known within limits. */
export interface LooseValue {
  /** Unique: `fescue/balance-r resistance`, `valley-exchange feed voltage`. */
  readonly id: string
  /** The part, line or socket that it belongs to. */
  readonly part: string
  /** As its sheet says, aged where age was asked for, in `unit`. */
  readonly value: number
  readonly unit: Quantity['unit']
  /** Factors from that value to its least and its most. */
  readonly least: number
  readonly most: number
  /** Limits that are a factor up and down, as those of a habit, are drawn by their logarithm. */
  readonly byRatio: boolean
  readonly site: Site
}

/** A part with other values. */
export interface Refit {
  readonly part: number
  readonly spec: PartSpec
}

/** A world of loose values. */
export interface World {
  /** Every value as stated. */
  readonly net: Netlist
  readonly loose: readonly LooseValue[]
  /** Values of parts, line and sockets for which no tolerance is stated. */
  readonly unstated: number
  /** The netlist with every value multiplied by its factor, in the order of `loose`. Nodes and branches stay. */
  at(factors: ArrayLike<number>): Netlist
}

/** What a world is made from. */
export interface WorldOf {
  readonly net: Netlist
  /** Absent for a free circuit. */
  readonly installation?: Installation
  /** Factor up and down within which a carbon transmitter may be found; 1 for none. */
  readonly transmitterSpread: number
  /** Parts with other values than their sheets say, and factors by which a value is less sure for it. */
  readonly aged?: Aged
}

/** What age has made of an installation's parts. */
export interface Aged {
  readonly refits: readonly Refit[]
  /** Factor up and down around the aged value, besides the tolerance, by part and path (`siteKey`). */
  readonly spreads: ReadonlyMap<string, number>
}

/** A key of a value in the spec of a part. */
export function siteKey(part: number, path: readonly string[]): string {
  return `${part} ${path.join(' ')}`
}

/** Parts whose values stand in the sheet of the line or the premises. */
const OF_SHEETS: ReadonlySet<Sort> = new Set(['exchange', 'cable', 'socket', 'plug'])

/** Lays an installation out with its loose values. */
export function worldOf({ net: stated, installation, transmitterSpread, aged }: WorldOf): World {
  const refits = new Map((aged?.refits ?? []).map(({ part, spec }) => [part, spec]))
  const net = refits.size === 0 ? stated : withSpecs(stated, refits)
  const loose: LooseValue[] = []
  let unstated = 0
  const add = (
    found: readonly { readonly path: readonly string[]; readonly quantity: Quantity }[],
    of: (path: readonly string[]) => { readonly part: string; readonly name: string; readonly site: Site },
    habit: (quantity: Quantity) => number,
  ): void => {
    for (const { path, quantity } of found) {
      const { part, name, site } = of(path)
      const more = 'part' in site ? (aged?.spreads.get(siteKey(site.part, path)) ?? 1) : 1
      const limits = limitsOf(quantity, habit(quantity), more)
      if (limits === undefined) {
        unstated += 1
        continue
      }
      const { value, unit } = quantity
      loose.push({ id: `${part} ${name}`, part, value, unit, ...limits, site })
    }
  }
  net.parts.forEach(({ spec, id, role, sort }, index) => {
    // what came of the sheets and has aged stands in no sheet as it is now
    if (installation !== undefined && OF_SHEETS.has(sort) && !refits.has(index)) return
    const isShaken = (quantity: Quantity): boolean => role === 'sender' && quantity.unit === 'Ω'
    add(
      quantitiesIn(spec, []),
      (path) => ({ part: id, name: nameOf(path), site: { part: index, path } }),
      (quantity) => (isShaken(quantity) ? transmitterSpread : 1),
    )
  })
  for (const { sheet, head, data, part } of sheetsOf(installation)) {
    add(
      quantitiesIn(data, head),
      (path) => ({ part: part(path), name: nameOf(path, sheet), site: { sheet, path } }),
      () => 1,
    )
  }
  return { net, loose, unstated, at: (factors) => netAt(net, installation, refits, loose, factors) }
}

/** What of the sheets of line and premises has values that make parts. */
function sheetsOf(installation: Installation | undefined): readonly {
  readonly sheet: 'line' | 'premises'
  readonly head: readonly string[]
  readonly data: unknown
  readonly part: (path: readonly string[]) => string
}[] {
  const { line, premises } = installation ?? {}
  const ofLine = line === undefined ? [] : (['feed', 'ringing', 'cable', 'speech', 'trip'] as const)
  return [
    ...ofLine.map((key) => ({
      sheet: 'line' as const,
      head: [key],
      data: line?.[key],
      part: () => line?.name ?? '',
    })),
    ...(premises === undefined
      ? []
      : [
          {
            sheet: 'premises' as const,
            head: ['sockets'],
            data: premises.sockets,
            part: (path: readonly string[]) => path[1] ?? '',
          },
        ]),
  ]
}

/** `feed voltage`; of a socket, whose name the part is, without it. */
function nameOf(path: readonly string[], sheet?: 'line' | 'premises'): string {
  const words = sheet === 'premises' ? path.slice(2) : path
  const said = words.filter((word) => word !== 'value')
  return said.join(' ')
}

/** Factors to both ends; undefined where nothing says that there are any. */
function limitsOf(
  { tolerance = 0, value }: Quantity,
  habit: number,
  more: number,
): Pick<LooseValue, 'least' | 'most' | 'byRatio'> | undefined {
  if (value === 0) return undefined
  if (habit !== 1) return { least: 1 / (habit * more), most: habit * more, byRatio: true }
  if (tolerance === 0 && more === 1) return undefined
  const least = Math.max(0, 1 - tolerance) / more
  return { least, most: (1 + tolerance) * more, byRatio: tolerance === 0 }
}

function netAt(
  net: Netlist,
  installation: Installation | undefined,
  refits: ReadonlyMap<number, PartSpec>,
  loose: readonly LooseValue[],
  factors: ArrayLike<number>,
): Netlist {
  let sheets = installation
  const changes = []
  for (const [k, { site, unit, least, most }] of loose.entries()) {
    const factor = factors[k] ?? 1
    if (factor === 1) continue
    if ('part' in site) changes.push({ loose: { ...site, unit, least, most }, factor })
    else if (sheets !== undefined) sheets = withSheet(sheets, site, factor)
  }
  const base = sheets === installation || sheets === undefined ? net : withSpecs(compile(sheets), refits)
  return changes.length === 0 ? base : withChanges(base, changes)
}

function withSheet(
  installation: Installation,
  { sheet, path }: Extract<Site, { sheet: string }>,
  factor: number,
): Installation {
  const before = installation[sheet]
  return { ...installation, [sheet]: scaled(before, path, factor) as LineSheet & PremisesSheet }
}

/** Parts whose specs differ between two netlists of one world; `what` is where they may. */
export function refitsBetween(p: Netlist, q: Netlist): readonly Refit[] {
  if (p.parts.length !== q.parts.length) throw new RangeError('the parts of one world are the same')
  return q.parts.flatMap(({ spec }, part) => {
    const before = p.parts[part]?.spec
    const same = before === spec || JSON.stringify(before) === JSON.stringify(spec)
    return same ? [] : [{ part, spec }]
  })
}
