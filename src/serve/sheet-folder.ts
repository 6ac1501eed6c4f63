/** The folder of sheets as the server sees it; a test hands in its own. */
import type { Problem } from '../problem.ts'

/** A sheet with what tells it from any other text under the same name. */
export interface MarkedSheet {
  /** Its path from the folder, `/` between its parts. */
  readonly file: string
  readonly text: string
  /** SHA-256 of its bytes, in hexadecimal. */
  readonly mark: string
}

/** What a save came to. */
export type Saved =
  | { readonly mark: string }
  /** The file is another than the writer had read; undefined where it is gone. */
  | { readonly now: MarkedSheet | undefined }

/** All that the server can do with files. */
export interface SheetFolder {
  /** The folder's own name. */
  readonly name: string
  /** Every sheet, and problems of those that were passed over. */
  list(): { readonly sheets: readonly MarkedSheet[]; readonly problems: readonly Problem[] }
  /** @throws Refusal 403, 404 */
  read(file: string): MarkedSheet
  /**
   * Puts a text in the place of the one whose mark is given; of none, where `mark` is null.
   * @throws Refusal 403, 404
   */
  save(file: string, text: string, mark: string | null): Saved
}
