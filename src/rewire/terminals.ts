/** The terminals of a set, and the one that somebody most likely meant. */

import { editDistance, nearest } from '../quantities/nearest.ts'
import type { SetSheet } from '../sheet/model.ts'
import { oneOf, ticked, write } from '../sheet/wording.ts'
import type { Outcome } from './outcome.ts'
import { refused } from './outcome.ts'

/** Whether the strips have a terminal of this name. */
export function hasTerminal({ strips }: SetSheet, name: string): boolean {
  const [, letters = '', number = ''] = /^([A-Z]+)([1-9][0-9]*)$/.exec(name) ?? []
  return Object.hasOwn(strips, letters) && Number(number) <= (strips[letters] ?? 0)
}

/** The refusal of a move that names a terminal which the set does not have. */
export function unknownTerminal(set: SetSheet, name: string): Outcome {
  const terminals = Object.entries(set.strips).flatMap(([strip, length]) =>
    Array.from({ length }, (_, k) => `${strip}${k + 1}`),
  )
  const [, letters = ''] = /^([A-Z]+)[0-9]+$/.exec(name) ?? []
  const own = terminals.filter((one) => one.replace(/[0-9]+$/, '') === letters)
  const meant = hasTerminal(set, name.toUpperCase()) ? name.toUpperCase() : nearest(name, terminals)
  return refused(
    `the terminal ${ticked(name)}, which ${ticked(set.name)} does not have`,
    `a terminal: ${oneOf(own.length > 0 ? own : terminals, 'the set has none')}`,
    write(nearestOf(name, own) ?? meant),
  )
}

/** The terminal of a strip that differs by one sign; where none or all do, the last, which says where the strip ends. */
function nearestOf(name: string, own: readonly string[]): string | undefined {
  const near = own.filter((one) => editDistance(name, one) === 1)
  return near.length < own.length ? (near[0] ?? own.at(-1)) : own.at(-1)
}
