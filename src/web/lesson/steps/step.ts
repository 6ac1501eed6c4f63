/** A step of the lesson, as data and pure functions: a house, what may be done to it, and what the solved figures say. */
import type { Caution } from '../../../index.ts'
import type { House } from '../rig/house.ts'
import type { HouseReading } from '../rig/reading.ts'

/** What the learner has set, by control. */
export type State = Readonly<Record<string, string>>

export interface Option {
  readonly value: string
  readonly says: string
}

/** One thing to operate: one of a few, or a count that goes up and down. */
export type Control =
  | {
      readonly id: string
      readonly sort: 'choice'
      readonly says: string
      readonly options: readonly Option[]
    }
  | {
      readonly id: string
      readonly sort: 'count'
      readonly says: string
      readonly least: number
      readonly most: number
    }

/** Houses solved for a step, by the name that the step gave them. */
export type Found = Readonly<Record<string, HouseReading>>

export interface Step {
  readonly id: string
  readonly title: string
  /** Two to four sentences. */
  readonly text: readonly string[]
  readonly question: string
  /** What may be expected. Of a path: what may be pointed at, in order. */
  readonly choices: readonly Option[]
  readonly asks: 'one' | 'path'
  readonly controls: readonly Control[]
  readonly begin: State
  /** What `Show me` does; where the figures decide it, told when they are solved. */
  readonly shown: State | ((found: Found) => State)
  readonly care: readonly Caution['about'][]
  house(state: State): House
  /** States whose houses decide the question. */
  readonly needs: Readonly<Record<string, State>>
  /** The choice that the figures bear out; of a path, its elements joined by blanks. */
  answer(found: Found): string
  /** Why, with the solved numbers. */
  why(found: Found): readonly string[]
  /** The line that stays. */
  learned(found: Found): string
}

/** A house of a step. @throws Error where it was not solved */
export function foundOf(found: Found, name: string): HouseReading {
  const one = found[name]
  if (one === undefined) throw new Error(`the house ${name} was not solved`)
  return one
}

/** The state to which `Show me` leads. */
export function shownState({ shown }: Step, found: Found): State {
  return typeof shown === 'function' ? shown(found) : shown
}
