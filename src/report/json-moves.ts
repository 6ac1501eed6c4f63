/** Moves at the bench as JSON, in the words of a rewire sheet. */
import type { PartSpec } from '../parts/kind.ts'
import type { Move } from '../sheet/model.ts'
import { type Fields, pick } from './pick.ts'

export function moveJson(move: Move): Fields {
  const own = 'with' in move ? { with: partJson(move.with) } : {}
  return pick(move, ['do', 'what', 'onto', 'in', 'hold', 'with'], own)
}

/** A part that is fitted, its quantities as they are written. */
function partJson(part: PartSpec): Fields {
  const said = Object.entries(part).filter(([, value]) => value !== undefined)
  return Object.fromEntries(said.map(([key, value]) => [key, writtenText(value)]))
}

function writtenText(value: unknown): string {
  const isQuantity = typeof value === 'object' && value !== null && 'text' in value
  return String(isQuantity ? value.text : value)
}
