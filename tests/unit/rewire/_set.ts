import { applyMoves, type Rewired } from 'ringproof/rewire/moves'
import type { PlacedMove, SetSheet } from 'ringproof/sheet/model'
import { readSheet } from 'ringproof/sheet/read'
import { shelfOf } from '../../support/sheets.ts'

const UNITS = [
  `ringproof: 1
sheet: unit
name: link
pins: [p1, p2]
parts: {r: {kind: resistor, from: p1, to: p2, resistance: 20 Ω}}
`,
  `ringproof: 1
sheet: unit
name: pad
pins: [p1, p2, p3]
parts: {r: {kind: resistor, from: p1, to: p2, resistance: 20 Ω}, s: {kind: resistor, from: p2, to: p3, resistance: 1 kΩ}}
`,
]

const SET = `ringproof: 1
sheet: set
name: trial
strips: {A: 3, B: 4}
straps:
  A1-A2: {hold: screw}
  B1-B2: {hold: solder}
  B2-B3: {hold: board}
contacts: {hook: {from: A1, to: A3, closed when: off-hook}}
parts:
  shunt: {kind: resistor, from: A2, to: joint-1, resistance: 1 kΩ}
  block: {kind: capacitor, from: joint-1, to: B4, capacitance: 1 µF}
  coil: {kind: induction-coil, windings: {a: {from: A1, to: A2, resistance: 1 Ω, inductance: 1 H}, b: {from: B1, to: B2, resistance: 1 Ω, inductance: 1 H}}, coupling: 0.5}
joints: [joint-1]
slots:
  bay: {sockets: {p1: A2, p2: A3}, fitted: link}
  gap: {sockets: {p1: B1, p2: B2}, fitted: none}
cords:
  line: {ends in: plug, cores: {a: {lands: A1}, b: {lands: B1, colour: grey}}}
  handset: {ends in: handset, cores: {r1: {lands: B3}, r2: {lands: parked}}}
handset: {receiver: {kind: receiver, from: r1, to: r2, resistance: 150 Ω, inductance: 20 mH}}
`

const shelf = shelfOf(UNITS.map((text, k) => ({ file: `unit-${k}.yaml`, text })))

/** A small set with one of everything. */
export function trialSet(): SetSheet {
  const { sheet, problems } = readSheet({ file: 'trial.yaml', text: SET }, shelf, 'set')
  if (sheet === undefined) throw new Error(JSON.stringify(problems))
  return sheet
}

/** The moves of a rewire as the reader reads them, places and all. */
export function movesOf(...lines: readonly string[]): readonly PlacedMove[] {
  const text = `ringproof: 1\nsheet: rewire\nname: trial-move\nset: trial\nmoves:\n${lines.map((line) => `  - {${line}}\n`).join('')}`
  const all = shelfOf([{ file: 'trial.yaml', text: SET }])
  const { sheet, problems } = readSheet({ file: 'moves.yaml', text }, all, 'rewire')
  if (sheet === undefined) throw new Error(JSON.stringify(problems))
  return sheet.moves
}

/** The trial set after these moves. */
export function moved(...lines: readonly string[]): Rewired {
  return applyMoves(trialSet(), movesOf(...lines), unitOf)
}

/** A unit of the trial shelf. */
export function unitOf(name: string): ReturnType<Parameters<typeof applyMoves>[2]> {
  const text = shelf.find('unit', name)
  return text === undefined ? undefined : readSheet(text, shelf, 'unit').sheet
}
