import { fileURLToPath } from 'node:url'
import { folderShelf } from 'ringproof/host/shelf'
import { compile, compileCircuit, type Installation } from 'ringproof/netlist/compile'
import type { Netlist } from 'ringproof/netlist/netlist'
import { type Problem, ProblemError } from 'ringproof/problem'
import type { LineSheet, PremisesSheet, SetSheet, SheetKind } from 'ringproof/sheet/model'
import { readSheet } from 'ringproof/sheet/read'
import type { Shelf } from 'ringproof/sheet/shelf'
import { shelfOf, skeletonShelf } from '../../support/sheets.ts'

/** The demo sheets of the package, as its host finds them. */
export const DEMO: Shelf = folderShelf([], fileURLToPath(new URL('../../../netlists', import.meta.url)))
/** The skeletons of the format. */
export const SKELETONS: Shelf = skeletonShelf()

/** A sheet of a shelf by kind and name, perhaps with its text changed on the way. */
export function sheetOf<K extends SheetKind>(
  shelf: Shelf,
  kind: K,
  name: string,
  change = (text: string): string => text,
) {
  const found = shelf.find(kind, name, undefined)
  if (found === undefined) throw new Error(`no ${kind} ${name}`)
  const text = change(found.text)
  const { sheet, problems } = readSheet({ file: found.file, text }, shelf, kind)
  if (sheet === undefined) throw new Error(JSON.stringify(problems))
  return sheet
}

/** Replaces one passage; a passage that is not there is an error. */
export function replacing(...changes: readonly (readonly [string, string])[]): (text: string) => string {
  return (text) =>
    changes.reduce((now, [old, fresh]) => {
      if (!now.includes(old)) throw new Error(`no ${old}`)
      return now.replace(old, fresh)
    }, text)
}

export const set = (name: string, shelf: Shelf = DEMO, change?: (text: string) => string): SetSheet =>
  sheetOf(shelf, 'set', name, change) as SetSheet
export const line = (change?: (text: string) => string): LineSheet =>
  sheetOf(SKELETONS, 'line', 'depot-exchange', change) as LineSheet
export const premises = (change?: (text: string) => string): PremisesSheet =>
  sheetOf(SKELETONS, 'premises', 'station-house', change) as PremisesSheet

/** The station house of the skeletons: fescue at the office, sedge as found in the kitchen. */
export function stationHouse(more: Partial<Installation> = {}): Netlist {
  return compile({
    name: 'station-house',
    line: line(),
    premises: premises(),
    sets: {
      office: { set: set('fescue'), in: 'front' },
      kitchen: { set: set('sedge-as-found'), in: 'hall' },
    },
    ...more,
  })
}

/** A free circuit of these parts. */
export function circuit(parts: string, name = 'net'): Netlist {
  const text = `ringproof: 1\nsheet: circuit\nname: ${name}\nparts:\n${parts
    .trim()
    .split('\n')
    .map((one) => `  ${one.trim()}\n`)
    .join('')}`
  const { sheet, problems } = readSheet({ file: `${name}.yaml`, text }, shelfOf([]), 'circuit')
  if (sheet === undefined) throw new Error(JSON.stringify(problems))
  return compileCircuit(sheet)
}

/** The ends of a branch by their ids. */
export function endsOf(net: Netlist, id: string): readonly [string | undefined, string | undefined] {
  const branch = net.branches[net.branchIndex.get(id) ?? -1]
  if (branch === undefined) throw new Error(`no branch ${id}`)
  return [net.nodes[branch.from], net.nodes[branch.to]]
}

/** The spec of a branch's part. */
export function specOf(net: Netlist, id: string): unknown {
  return net.branches[net.branchIndex.get(id) ?? -1]?.part.spec
}

/** The problems that a call is refused with. */
export function problemsOf(call: () => unknown): readonly Problem[] {
  try {
    call()
  } catch (thrown) {
    if (thrown instanceof ProblemError) return thrown.problems
    throw thrown
  }
  throw new Error('was not refused')
}

/** The ids of fescue's branches, by its sheet and by design 3b. */
export const FESCUE: readonly string[] = [
  'B2-B3',
  'B4-B5',
  'C3-A1',
  'hook',
  'impulse',
  'mute-ear',
  'mute-speech',
  'hush',
  'impulse-quench',
  'coil.a',
  'coil.b',
  'coil.c',
  'balance-c',
  'balance-r',
  'balance-r2',
  'balance-c2',
  'click',
  'hush-r',
  'bell-resistor',
  'bell',
  'regulator.series',
  'regulator.clamp',
  'line.a',
  'line.b',
  'line.ringing',
  'line.spare',
  'handset.t1',
  'handset.t2',
  'handset.r1',
  'handset.r2',
  'transmitter',
  'receiver',
]
