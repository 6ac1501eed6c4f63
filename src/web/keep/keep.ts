/** Where the user's own sheets are kept: one interface for a folder behind the local server and the browser's store. */
import type { SheetText } from '../../index.ts'

/** A sheet as it was read, with the mark of exactly that text. */
export interface Kept extends SheetText {
  readonly mark: string
}

/** What came of saving. */
export type Saved =
  | { readonly done: 'saved'; readonly mark: string }
  /** The file has become another since it was read; `now` is undefined when it is gone. Nothing was written. */
  | { readonly done: 'conflict'; readonly now: Kept | undefined }

/** Everything within reach. */
export interface KeptAll {
  /** Where they are, in words: `the folder my-sheets`, `this browser`. */
  readonly where: string
  readonly sheets: readonly Kept[]
  /** What was passed over, in plain words. */
  readonly words: readonly string[]
}

/** Keeps sheets. @throws KeepError with a plain sentence where it cannot */
export interface Keep {
  readonly sort: 'folder' | 'browser'
  all(): Promise<KeptAll>
  /** @param mark of the text that the new one began from; null for a new file */
  save(file: string, text: string, mark: string | null): Promise<Saved>
  /** Takes a sheet away; only a store of the browser can. */
  remove?(file: string, mark: string): Promise<Saved>
}

/** Keeping went wrong: a sentence for the reader, with what to do. */
export class KeepError extends Error {}

/** What a file of a sheet may be called: the same rule in the folder and in the browser. */
export function fileFault(file: string): string | undefined {
  if (!/\.yaml$/i.test(file)) return 'The name must end in .yaml.'
  if (file.length > 200) return 'The name is longer than 200 characters.'
  if (!/^[^/\\\p{C}:*?"<>|]+(\/[^/\\\p{C}:*?"<>|]+)*$/u.test(file))
    return 'The name holds a character that no file can have.'
  if (file.split('/').some((part) => part.startsWith('.'))) return 'No part of the name may begin with a dot.'
  return undefined
}
