/** The completion script of each shell, and the words that the scripts ask for. */
import type { Shelf } from '../../index.ts'
import { nearest } from '../../index.ts'
import { requestWrong } from '../options.ts'
import { SHELLS, type Shell, WORD_LISTS, type WordList } from '../word-lists.ts'
import { bashScript } from './bash.ts'
import { fishScript } from './fish.ts'
import type { Grammar } from './grammar.ts'
import { zshScript } from './zsh.ts'

const SCRIPTS: Readonly<Record<Shell, (grammar: Grammar) => string>> = {
  bash: bashScript,
  zsh: zshScript,
  fish: fishScript,
}

/** The script for a shell. @throws ProblemError for a shell that is not known */
export function completionScript(shell: string, grammar: Grammar): string {
  const known = SHELLS.find((one) => one === shell)
  if (known !== undefined) return SCRIPTS[known](grammar)
  const near = nearest(shell, SHELLS)
  requestWrong(
    `the shell \`${shell}\``,
    `one of ${SHELLS.join(', ')}`,
    near === undefined ? undefined : `write \`ringproof completion ${near}\``,
  )
}

/** Words of a list, one a line; none for a list that is not known, since a shell is no place for complaints. */
export function completionWords(name: string, shelf: Shelf): string {
  if (!Object.hasOwn(WORD_LISTS, name)) return ''
  return WORD_LISTS[name as WordList](shelf)
    .map((word) => `${word}\n`)
    .join('')
}
