import type { ContactNumbers } from '../netlist/plug-numbers.ts'

/** How words are set off on a terminal. Whoever prints decides; texts here carry no colour of their own. */
export interface Paint {
  bold(text: string): string
  dim(text: string): string
  good(text: string): string
  bad(text: string): string
  warn(text: string): string
}

const same = (text: string): string => text

/** No colour at all: for files, pipes and tests. */
export const PLAIN: Paint = Object.freeze({ bold: same, dim: same, good: same, bad: same, warn: same })

/** What a text is laid out for. */
export interface Page {
  /** Columns, 60 or more. */
  readonly width: number
  readonly paint: Paint
  /** Both numbers of plug contacts, by the id of the core's end there. */
  readonly plugs?: ReadonlyMap<string, ContactNumbers>
}

/** Narrower pages are laid out for this many columns. */
export const NARROWEST = 60
