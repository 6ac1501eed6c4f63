/** A group of marks that stands for a thing: its states as classes and, where it can be operated, as words. */
import { type Mark, mark } from '../mark.ts'
import type { Thing } from '../thing.ts'
import type { Change } from './board.ts'
import type { DrawBoardOptions } from './options.ts'

export interface Told {
  readonly thing: Thing
  readonly look: string
  readonly says: string
  readonly change?: Change
  readonly fixed?: string
  /** The terminal at which it lies. */
  readonly at?: string
  /** A second mark of a thing that has one to operate already. */
  readonly beside?: true
  readonly states?: readonly string[]
}

/** The group; its title says what it is, which a pointer shows. */
export function thingMark(told: Told, options: DrawBoardOptions, ...children: readonly Mark[]): Mark {
  const { thing, look, says, at } = told
  const selected = options.selected === thing
  const offered = options.offered?.has(thing) ?? false
  const refused = options.refused?.has(thing) ?? false
  const states = [
    look,
    ...(told.states ?? []),
    ...(selected ? ['selected'] : []),
    ...(offered ? ['offered'] : []),
    ...(refused ? ['refused'] : []),
    ...(told.fixed === undefined ? [] : ['fixed']),
    ...(told.change === undefined ? [] : [CHANGED[told.change]]),
  ]
  const words = [says, ...(offered ? ['it can go here'] : []), ...(refused ? ['refused'] : [])].join(', ')
  const operable = options.live && !told.beside
  return mark(
    'g',
    {
      class: states.join(' '),
      'data-thing': thing,
      'data-at': at,
      ...(operable
        ? { role: 'button', tabindex: 0, 'aria-label': words, 'aria-pressed': String(selected) }
        : {}),
    },
    mark('title', {}, words),
    ...children,
  )
}

const CHANGED: Readonly<Record<Change, string>> = {
  fitted: 'changed',
  moved: 'changed',
  'taken out': 'changed taken-out',
}
