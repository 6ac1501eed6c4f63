/** What is in the hand, and where it may go: the one way of mouse, taps and keys. */
import { computed, type ReadonlySignal, type Signal, signal } from '@preact/signals'
import { type Board, type Move, type Thing, thingParts } from '../../../../index.ts'
import { announce } from '../../../kit/index.ts'
import { selected, side } from '../../../state/work.ts'
import { attempt } from './attempt.ts'
import { board } from './judgement.ts'

export type Held =
  | { readonly what: 'core'; readonly core: string }
  /** A strap that begins at a terminal. */
  | { readonly what: 'strap'; readonly from: string }
  /** A test lead of the meter. */
  | { readonly what: 'lead'; readonly lead: Lead }

export type Lead = 'red' | 'black'

export const hand: Signal<Held | undefined> = signal(undefined)
/** Where the test leads are, as a person writes it: `B2`, `plug.a`, `handset.r2`. */
export const leads: Signal<Readonly<Partial<Record<Lead, string>>>> = signal({})

/** Everything on which what is in the hand may land. */
export const offered: ReadonlySignal<ReadonlySet<Thing>> = computed(() => {
  const held = hand.value
  const here = board.value
  return held === undefined || here === undefined ? new Set<Thing>() : new Set(landings(held, here))
})

function landings(held: Held, { strips, cores }: Board): readonly Thing[] {
  const terminals = strips.flatMap((strip) => strip.terminals.map(({ name }) => name))
  const things = terminals.map((name): Thing => `terminal:${name}`)
  switch (held.what) {
    case 'core':
      return things.filter(
        (one) => one !== `terminal:${cores.find(({ thing }) => thing === `core:${held.core}`)?.lands}`,
      )
    case 'strap':
      return things.filter((one) => one !== `terminal:${held.from}`)
    case 'lead':
      return [...things, ...cores.map(({ thing }) => thing)]
  }
}

/** What is in the hand, in words. */
export function heldWords(held: Held): string {
  switch (held.what) {
    case 'core':
      return `core ${held.core}`
    case 'strap':
      return `a strap that begins on ${held.from}`
    case 'lead':
      return `the ${held.lead} lead`
  }
}

export function pickUp(held: Held): void {
  hand.value = held
  const where = held.what === 'lead' ? 'a terminal, or a core for its far end' : 'a terminal'
  announce(`In hand: ${heldWords(held)}. Choose ${where}; Escape puts it down.`)
}

export function putDown(): void {
  const held = hand.peek()
  if (held === undefined) return
  hand.value = undefined
  announce(`Put down: ${heldWords(held)}.`)
}

/** The point of a meter at a thing; undefined where no lead can be held. A core is taken at its far end. */
function pointAt(thing: Thing): string | undefined {
  const { sort, name } = thingParts(thing)
  if (sort === 'terminal') return name
  const core = board.peek()?.cores.find((one) => one.thing === thing)
  return core === undefined ? undefined : `${core.endsIn === 'plug' ? 'plug' : core.cord}.${core.core}`
}

/** The move that lands what is in the hand on a terminal; a lead of the meter is no move. */
export function moveTo(held: Held, terminal: string): Move | undefined {
  switch (held.what) {
    case 'core':
      return { do: 'land core', what: held.core, onto: terminal }
    case 'strap':
      return { do: 'fit strap', what: `${held.from}-${terminal}` }
    case 'lead':
      return undefined
  }
}

/** Lands what is in the hand on a thing; false where it cannot go there. */
export function landOn(thing: Thing): boolean {
  const held = hand.peek()
  if (held === undefined || !offered.peek().has(thing)) return false
  const { name } = thingParts(thing)
  hand.value = undefined
  if (held.what === 'lead') {
    const point = pointAt(thing)
    if (point === undefined) return false
    leads.value = { ...leads.peek(), [held.lead]: point }
    announce(`The ${held.lead} lead is on ${point}.`)
    return true
  }
  const move = moveTo(held, name)
  if (move !== undefined) void attempt(move)
  return true
}

/** A tap, a click or Enter on a thing: lands what is in the hand, or takes up what was pointed at. */
export function pointAtThing(thing: Thing): void {
  if (landOn(thing)) return
  const { sort, name } = thingParts(thing)
  const held = hand.peek()
  selected.value = thing
  if (held?.what === 'core' && held.core === name) {
    putDown()
    return
  }
  if (sort === 'core' && side.peek() === 'proposed') pickUp({ what: 'core', core: name })
  else hand.value = undefined
}
