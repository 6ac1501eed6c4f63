/** One command: what it is called, what it takes, and how it is run. */
import type { Shelf } from '../index.ts'
import type { Rerun } from './demo.ts'
import type { Io } from './io.ts'
import type { Given, OPTIONS } from './options.ts'
import type { Reply } from './reply.ts'
import type { WordList } from './word-lists.ts'

/** What a command is asked. */
export interface Asked {
  readonly words: readonly string[]
  readonly options: Given
  readonly io: Io
  readonly shelf: Shelf
  readonly rerun: Rerun
}

/** One row of the table. */
export interface CommandRow {
  readonly name: string
  readonly summary: string
  /** `<must>` and `[may]` be given, with what they are. */
  readonly words: readonly (readonly [name: string, says: string, from?: WordList])[]
  readonly options: readonly (keyof typeof OPTIONS)[]
  readonly examples: readonly string[]
  /** Asked by scripts, not by people. */
  readonly hidden?: true
  /** Leads hands to wires: its help ends with the cautions. */
  readonly nearWires?: true
  /** A reply, or the exit code of a command that prints by itself. */
  run(asked: Asked): Reply | Promise<Reply | number>
}
