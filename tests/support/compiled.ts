import { compileCircuit } from 'ringproof/netlist/compile'
import type { Netlist } from 'ringproof/netlist/netlist'
import { readSheet } from 'ringproof/sheet/read'
import { shelfOf } from './sheets.ts'

/** The netlist of a circuit called `trial`, its parts as lines of a sheet. */
export function compiled(...parts: readonly string[]): Netlist {
  const text = `ringproof: 1\nsheet: circuit\nname: trial\nparts:\n${parts.map((part) => `  ${part}\n`).join('')}`
  const { sheet, problems } = readSheet({ file: 'trial.yaml', text }, shelfOf([]), 'circuit')
  if (sheet === undefined) throw new Error(JSON.stringify(problems))
  return compileCircuit(sheet)
}
