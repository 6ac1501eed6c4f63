/** What a shell must know of the commands to complete them. */
import type { WordList } from '../word-lists.ts'

/** An option with the flag that it is written with. */
export interface GrammarOption {
  readonly flag: string
  readonly says: string
  readonly takesValue: boolean
  /** Words that its value may be; any, or a file, when absent. */
  readonly from?: WordList | 'folders'
}

/** A command, its options, and the words that stand behind it in their order. */
export interface GrammarCommand {
  readonly name: string
  readonly says: string
  readonly options: readonly GrammarOption[]
  readonly words: readonly (WordList | undefined)[]
}

/** All commands that are shown. */
export type Grammar = readonly GrammarCommand[]

/** Every option that takes a value, each once. */
export function valuedOptions(grammar: Grammar): readonly GrammarOption[] {
  const all = grammar.flatMap(({ options }) => options.filter(({ takesValue }) => takesValue))
  return all.filter(({ flag }, k) => all.findIndex((one) => one.flag === flag) === k)
}
