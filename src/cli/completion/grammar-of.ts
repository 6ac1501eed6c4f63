/** The table of commands as shells need it. */
import type { CommandRow } from '../command.ts'
import { OPTIONS, type OptionRow } from '../options.ts'
import { given } from '../target.ts'
import type { Grammar } from './grammar.ts'

/** All commands but those that only scripts ask. */
export function grammarOf(rows: readonly CommandRow[]): Grammar {
  return rows
    .filter(({ hidden }) => hidden !== true)
    .map(({ name, summary, words, options }) => ({
      name,
      says: summary,
      words: words.map(([, , from]) => from),
      options: options.map((key) => {
        const { flags, says, from }: OptionRow = OPTIONS[key]
        const flag = flags.split(' ')[0] ?? ''
        return { flag, says, takesValue: flags.includes('<'), ...given('from', from) }
      }),
    }))
}
