/**
 * Which core of a cord is which, with the colours unknown: the readings between all pairs of its cores, and what
 * they tell apart. A cord that ends in a plug is read at its plug, through the set. One that ends in the handset is
 * read at its loose ends, off their terminals, through the handset.
 */
import type { NetCore, NetPlace } from '../netlist/netlist.ts'
import { nodeName } from '../netlist/netlist.ts'
import type { Bench } from './bench.ts'
import { readBetween } from './read.ts'
import type { MeterReading } from './reading.ts'
import { conditionIn, differs } from './table.ts'

/** What a meter tells of one cord. */
export interface CordTable {
  readonly cord: string
  /** Node ids of the cores' far ends. */
  readonly cores: readonly string[]
  /** Whether the cores are off their terminals while they are read. */
  readonly loose: boolean
  readonly readings: readonly MeterReading[]
  /** Groups of cores that no reading here tells from each other; a group of one core is known. */
  readonly groups: readonly (readonly string[])[]
  /** Groups of pairs (two core names each) that read alike in every condition. */
  readonly alike: readonly (readonly (readonly [string, string])[])[]
}

/** Cords with more cores than this are read, but not told apart: the orders to be tried would be too many. */
const MOST_CORES = 7

const THROUGH_SET = ['on-hook', 'off-hook'] as const
const THROUGH_HANDSET = ['on-hook'] as const

/** The table of every cord with at least two cores. */
export function cordTables(bench: Bench, place: NetPlace): readonly CordTable[] {
  const cords = [...new Set(place.cores.map(({ cord }) => cord))]
  return cords.flatMap((cord) => {
    const cores = place.cores.filter((core) => core.cord === cord)
    return cores.length < 2 ? [] : [cordTable(bench, place, cord, cores)]
  })
}

function cordTable(bench: Bench, place: NetPlace, cord: string, cores: readonly NetCore[]): CordTable {
  const loose = isLoose(cores)
  const lifted = loose ? branchesOf(cores) : []
  const seen = new Map<string, readonly MeterReading[]>()
  const readings: MeterReading[] = []
  for (const [i, j] of pairsOf(cores.length)) {
    const here = (loose ? THROUGH_HANDSET : THROUGH_SET).map((words) => {
      const condition = conditionIn(bench.net, place, words)
      const leads = { red: farOf(cores, i), black: farOf(cores, j), condition, lifted }
      return readBetween(bench, leads, { shows: 'ohms' })
    })
    seen.set(`${i} ${j}`, here)
    readings.push(...here)
  }
  const name = (k: number): string => cores[k]?.name ?? ''
  return {
    cord,
    cores: cores.map(({ far }) => nodeName(bench.net, far)),
    loose,
    readings,
    groups: groupsOf(cores.length, seen).map((group) => group.map(name)),
    alike: alikeOf(cores.length, seen).map((all) => all.map(([i, j]) => [name(i), name(j)] as const)),
  }
}

/** Whether a cord is read off its terminals: one that ends in a handset. */
function isLoose(cores: readonly NetCore[]): boolean {
  return cores.every(({ endsIn }) => endsIn === 'handset')
}

function branchesOf(cores: readonly NetCore[]): readonly number[] {
  return cores.flatMap(({ branch }) => (branch === undefined ? [] : [branch]))
}

/** The branches that are off while a cord is read. */
export function liftedFor(place: NetPlace, { cord, loose }: CordTable): readonly number[] {
  return loose ? branchesOf(place.cores.filter((core) => core.cord === cord)) : []
}

function farOf(cores: readonly NetCore[], k: number): number {
  const core = cores[k]
  if (core === undefined) throw new RangeError(`no core ${k}`)
  return core.far
}

function pairsOf(count: number): readonly (readonly [number, number])[] {
  return Array.from({ length: count }, (_, i) => i).flatMap((i) =>
    Array.from({ length: count - i - 1 }, (_, k) => [i, i + 1 + k] as const),
  )
}

type Seen = ReadonlyMap<string, readonly MeterReading[]>

/** Whether two pairs cannot be told apart: in every condition their bands meet and the ear hears the same. */
function looksLike(seen: Seen, p: readonly [number, number], q: readonly [number, number]): boolean {
  const one = seen.get(`${Math.min(...p)} ${Math.max(...p)}`) ?? []
  const other = seen.get(`${Math.min(...q)} ${Math.max(...q)}`) ?? []
  return one.every((reading, k) => {
    const against = other[k]
    return against !== undefined && sameSound(reading, against) && bandsMeet(reading, against)
  })
}

function bandsMeet(p: MeterReading, q: MeterReading): boolean {
  if (p.value === null || q.value === null || p.band === undefined || q.band === undefined)
    return !differs(p, q)
  const under = (least: number, most: number | null): boolean => most === null || least <= most
  return under(p.band.least, q.band.most) && under(q.band.least, p.band.most)
}

function sameSound(p: MeterReading, q: MeterReading): boolean {
  const said = ({ heard }: MeterReading): string => [...new Set(heard.map(({ says }) => says))].sort().join()
  return said(p) === said(q)
}

/** Cores that some renaming of all cores exchanges without any reading changing. */
function groupsOf(count: number, seen: Seen): readonly (readonly number[])[] {
  const all = Array.from({ length: count }, (_, k) => k)
  if (count > MOST_CORES) return [all]
  const group = all.slice()
  for (const order of orders(all)) {
    const keeps = pairsOf(count).every(([i, j]) => looksLike(seen, [i, j], [order[i] ?? i, order[j] ?? j]))
    if (!keeps) continue
    for (const k of all) join(group, k, order[k] ?? k)
  }
  const roots = [...new Set(group)]
  return roots.map((root) => all.filter((k) => group[k] === root))
}

function join(group: number[], p: number, q: number): void {
  const [from, to] = [Math.max(group[p] ?? p, group[q] ?? q), Math.min(group[p] ?? p, group[q] ?? q)]
  group.forEach((root, k) => {
    if (root === from) group[k] = to
  })
}

function* orders(rest: readonly number[]): Generator<readonly number[]> {
  if (rest.length === 0) yield []
  for (const first of rest) {
    for (const others of orders(rest.filter((one) => one !== first))) yield [first, ...others]
  }
}

function alikeOf(count: number, seen: Seen): readonly (readonly (readonly [number, number])[])[] {
  const groups: (readonly [number, number])[][] = []
  for (const pair of pairsOf(count)) {
    const group = groups.find(([first]) => first !== undefined && looksLike(seen, first, pair))
    if (group === undefined) groups.push([pair])
    else group.push(pair)
  }
  return groups.filter((group) => group.length > 1)
}
