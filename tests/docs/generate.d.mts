import type { PARTS } from 'ringproof/parts/index'
import type { DIMENSIONS } from 'ringproof/quantities/units'
import type { ANSWER_SCHEMAS, answerJsonSchema } from 'ringproof/report/json-answers'
import type { sheetJsonSchema } from 'ringproof/sheet/json-schema'
import type { SHEET_KINDS } from 'ringproof/sheet/schema'

/** The tables of the library from which the documents are made. */
export interface Tables {
  readonly sheetJsonSchema: typeof sheetJsonSchema
  readonly SHEET_KINDS: typeof SHEET_KINDS
  readonly answerJsonSchema: typeof answerJsonSchema
  readonly ANSWER_SCHEMAS: typeof ANSWER_SCHEMAS
  readonly PARTS: typeof PARTS
  readonly DIMENSIONS: typeof DIMENSIONS
}

/** Texts by their path from the root; `read` gives the text of a file of the repository. */
export function generate(library: Tables, read: (path: string) => string): Record<string, string>
