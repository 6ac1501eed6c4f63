/** `list`: what there is, by name. */
import { CHECKS } from '../checks/catalogue.ts'
import { FAULT_RULES } from '../faults/catalogue.ts'
import { REFERENCE_NETWORKS } from '../figures/reference-networks.ts'
import { LOAD_DEFINITIONS, LOAD_NAMES } from '../figures/ringing-definitions.ts'
import { rangesFor, SHOWN } from '../meter/instrument.ts'
import { CONDITION_WORDS } from '../netlist/condition.ts'
import { NUMBERED_WIRES } from '../netlist/plug-numbers.ts'
import { PARTS } from '../parts/index.ts'
import { PROBLEM_CODES, refuse } from '../problem.ts'
import { nearest } from '../quantities/nearest.ts'
import type { SheetKind } from '../sheet/model.ts'
import { readSheet } from '../sheet/read.ts'
import { SHEET_KINDS } from '../sheet/schema.ts'
import type { Shelf } from '../sheet/shelf.ts'
import type { ListAnswer } from './answer.ts'
import { envelope } from './envelope.ts'
import { FIGURE_MEANINGS } from './figure-meanings.ts'
import { deliveredInstruments } from './instruments-table.ts'
import { deliveredLimits } from './limits-table.ts'

type Rows = ListAnswer['rows']

/** A source with its clause, where it has one. */
function sourceText(source: string, clause: string): string {
  return clause === '-' ? source : `${source}, ${clause}`
}

/** `sets`, `premises`: the plural of each kind of sheet. */
function plural(kind: SheetKind): string {
  return kind.endsWith('s') ? kind : `${kind}s`
}

const FIXED: Readonly<Record<string, () => Rows>> = {
  checks: () => CHECKS.map(({ id, asks }) => ({ check: id, asks })),
  limits: () =>
    [...deliveredLimits().values()].map(({ id, value, side, unit, says, source, clause, grade }) => ({
      limit: id,
      side,
      value,
      unit,
      says,
      source: sourceText(source, clause),
      grade,
    })),
  faults: () =>
    FAULT_RULES.map(({ id, title, explains }) => ({
      fault: id,
      title,
      'may show in': explains.length === 0 ? 'no check' : explains.join(', '),
    })),
  'reference-networks': () =>
    REFERENCE_NETWORKS.map(({ name, words, source, clause, grade }) => ({
      network: name,
      'made of': words,
      source: sourceText(source, clause),
      grade,
    })),
  'ringing-loads': () =>
    LOAD_NAMES.map((name) => {
      const { source, clause, grade } = LOAD_DEFINITIONS[name]
      return {
        load: name,
        figure: `ringing.load.${name}`,
        says: FIGURE_MEANINGS[`ringing.load.${name}`],
        source: sourceText(source, clause),
        grade,
      }
    }),
  figures: () => Object.entries(FIGURE_MEANINGS).map(([figure, says]) => ({ figure, says })),
  parts: () => [...PARTS.values()].map(({ kind, says }) => ({ part: kind, says })),
  problems: () => Object.entries(PROBLEM_CODES).map(([code, says]) => ({ problem: code, says })),
  instruments: () =>
    [...deliveredInstruments().instruments.values()].map(({ name, says, source, ranges }) => ({
      instrument: name,
      says,
      ranges: Object.keys(ranges).join(', '),
      source,
    })),
  ranges: () => {
    const all = [...deliveredInstruments().instruments.values()]
    const names = [...new Set([...SHOWN, ...all.flatMap(({ ranges }) => Object.keys(ranges))])]
    return names.map((range) => ({
      range,
      of: all
        .filter(
          (one) =>
            Object.hasOwn(one.ranges, range) ||
            SHOWN.some((shows) => shows === range && rangesFor(one, shows).length > 0),
        )
        .map(({ name }) => name)
        .join(', '),
    }))
  },
  'plug-contacts': () =>
    NUMBERED_WIRES.map(({ wire, wiring, contact }) => ({
      wire,
      'wiring terminal': wiring,
      contact,
    })),
  conditions: () => CONDITION_WORDS.map((word) => ({ word })),
}

/** Everything that can be listed. */
export const LISTS: readonly string[] = [...SHEET_KINDS.map(plural), ...Object.keys(FIXED)]

/** Lists sheets by kind, or what the program knows. */
export function list(request: { readonly what: string }, shelf: Shelf): ListAnswer {
  const { what } = request
  const kind = SHEET_KINDS.find((one) => plural(one) === what || one === what)
  const rows =
    kind === undefined ? (Object.hasOwn(FIXED, what) ? FIXED[what]?.() : undefined) : sheetRows(kind, shelf)
  if (rows !== undefined) return { ...envelope('list', { list: what }), outcome: 'answered', what, rows }
  const known = LISTS
  const near = nearest(what, known)
  refuse({
    code: 'request-wrong',
    found: `\`${what}\``,
    expected: known.join(', '),
    ...(near === undefined ? {} : { mend: `perhaps \`${near}\`` }),
  })
}

function sheetRows(kind: SheetKind, shelf: Shelf): Rows {
  return shelf.names(kind).map((name) => {
    const text = shelf.find(kind, name)
    const sheet = text === undefined ? undefined : readSheet(text, shelf, kind).sheet
    return {
      name,
      title: sheet?.title ?? (sheet === undefined ? 'cannot be read' : ''),
      file: text?.file ?? '',
    }
  })
}
