/** What the command line needs of the world around it; a test hands in its own. */
import type { BookMeans, SheetText, Shelf } from '../index.ts'

/** Streams, files and the terminal. */
export interface Io {
  /** Results. */
  out(text: string): void
  /** All the rest. */
  err(text: string): void
  /** Shows what is going on in a line that goes away again; no text takes it away. Only where errors go to a terminal. */
  readonly status?: (text: string) => void
  /** Columns of the terminal, undefined when the output is none. */
  readonly columns: number | undefined
  /** Whether each stream is a terminal that wants colour. */
  readonly colour: { readonly out: boolean; readonly err: boolean }
  /** Sheets in these folders, then those that come with the program. */
  shelf(folders: readonly string[]): Shelf
  /** By what fault books are worked out and kept; in this thread, and kept nowhere, when absent. */
  readonly books?: (keeps: boolean) => BookMeans
  /** Asks the person at the terminal: the next line, undefined where the input has ended. Absent where nobody is there. */
  readonly ask?: (prompt: string) => Promise<string | undefined>
  /** Whether a person sits there: input and output are a terminal. */
  readonly person?: boolean
  /** Waits until a person or the system stops the program. Absent where nobody can: what would stay open closes at once. */
  readonly stopped?: () => Promise<void>
  isFile(path: string): boolean
  /** @throws ProblemError `file-missing`, `too-big` */
  readSheet(path: string): SheetText
}
