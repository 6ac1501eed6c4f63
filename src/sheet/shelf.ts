/** Where sheets are found by kind and name. The host hands one in; nothing below `host/` touches a file. */
import type { SheetKind } from './model.ts'

/** The text of a sheet and the name of the file it came from. */
export interface SheetText {
  readonly file: string
  readonly text: string
}

/** A source of sheets. Nearest first: the folder of the asking sheet, its neighbours, then the demo. */
export interface Shelf {
  /** The sheet of this kind and name, as seen from the file `from`. */
  find(kind: SheetKind, name: string, from?: string): SheetText | undefined
  /** Files of all sheets that are equally near to be this one, the one that `find` takes first; for warnings. */
  twins?(kind: SheetKind, name: string, from?: string): readonly string[]
  /** All names of this kind in reach, sorted; for lists and nearest names. */
  names(kind: SheetKind, from?: string): readonly string[]
}
