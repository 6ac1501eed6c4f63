/** The group of marks that a hand can point at, with its states, and what it is in words. */
import { type Mark, mark } from '../../mark.ts'
import { type Thing, thingParts } from '../../thing.ts'
import type { Flow } from '../circuit.ts'
import { flowText } from '../words.ts'
import type { DrawCircuitOptions } from './options.ts'

/** A thing in words: `core handset.r2`. */
export function thingWords(thing: Thing): string {
  const { sort, name } = thingParts(thing)
  return sort === 'branch' || sort === 'part' ? name : `${sort} ${name}`
}

/** Words, and what flows where that is known and drawn. */
export function toldWith(says: string, flow: Flow | undefined, { flows }: DrawCircuitOptions): string {
  return flows === false || flow === undefined ? says : `${says}, ${flowText(flow)}`
}

/** The class of a line that carries a current. */
export function weightClass(flow: Flow | undefined, { flows }: DrawCircuitOptions): string {
  return flows === false || flow === undefined ? '' : ` flow-${flow.weight}`
}

/** Everything of the options that a thing's group hangs on, in short. */
export function stateOf(thing: Thing | undefined, onPath: boolean, options: DrawCircuitOptions): string {
  const { live, selected, offered, flows } = options
  const isChosen = thing !== undefined && thing === selected
  const isOffered = thing !== undefined && offered?.includes(thing) === true
  return [live === true, isChosen, isOffered, flows !== false, onPath].map(Number).join('')
}

/** The group; its title says what it is, which a pointer shows. */
export function thingGroup(
  look: string,
  thing: Thing | undefined,
  says: string,
  { live, selected, offered }: DrawCircuitOptions,
  ...children: readonly Mark[]
): Mark {
  const title = mark('title', {}, says)
  if (thing === undefined) return mark('g', { class: look }, title, ...children)
  const chosen = thing === selected
  const isOffered = offered?.includes(thing) === true
  const classes = `thing ${look}${chosen ? ' selected' : ''}${isOffered ? ' offered' : ''}`
  if (live !== true) return mark('g', { class: classes, 'data-thing': thing }, title, ...children)
  return mark(
    'g',
    {
      class: classes,
      'data-thing': thing,
      tabindex: 0,
      role: 'button',
      'aria-label': isOffered ? `${says}, can be chosen now` : says,
      'aria-pressed': chosen ? 'true' : 'false',
    },
    title,
    ...children,
  )
}
