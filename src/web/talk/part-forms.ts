/** What a kind of part asks for when it is fitted. */
export interface PartForm {
  /** The kind as sheets name it. */
  readonly part: string
  readonly fields: readonly PartField[]
}

export interface PartField {
  readonly key: string
  readonly says: string
  readonly needed: boolean
  /** An end is a terminal; a quantity has its unit; a number has none; a word is one of several. */
  readonly sort: 'end' | 'quantity' | 'number' | 'word'
  readonly example?: string
  readonly words?: readonly string[]
}
