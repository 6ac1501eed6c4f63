/** The completion script for zsh. */
import { type Grammar, valuedOptions } from './grammar.ts'

/** A word with what it says, as `_describe` wants it. */
const described = (word: string, says: string): string =>
  `'${`${word}:${says}`.replaceAll("'", '’').replaceAll('\n', ' ')}'`

/** The same reading of the line as for bash, in the words of zsh. */
export function zshScript(grammar: Grammar): string {
  const valued = valuedOptions(grammar)
  const byValue = valued.map(({ flag, from }) => {
    const offer =
      from === 'folders' ? '_files -/' : from === undefined ? '_files' : `_ringproof_names ${from}; _files`
    return `    ${flag}) ${offer}; return ;;`
  })
  const byCommand = grammar.map(({ name, options, words }) => {
    const flags = options.map(({ flag, says }) => described(flag, says)).join(' ')
    return `    ${name}) options=(${flags}); lists=(${words.map((word) => word ?? '-').join(' ')}) ;;`
  })
  const commands = grammar.map(({ name, says }) => described(name, says)).join(' ')
  return `#compdef ringproof
# Completion of ringproof for zsh. To have it in this shell: source <(ringproof completion zsh)

_ringproof_names() {
  local -a sheets names
  local k
  for ((k = 2; k < CURRENT; k++)); do
    [[ $words[k] == --sheets ]] && sheets+=(--sheets $words[k+1])
  done
  names=(\${(f)"$($words[1] complete $1 $sheets 2>/dev/null)"})
  compadd -a names
}

_ringproof() {
  local command='' k
  local -i at=1
  local -a options lists commands
  commands=(${commands} 'help:show the help of a command')
  for ((k = 2; k < CURRENT; k++)); do
    case $words[k] in
    ${valued.map(({ flag }) => flag).join('|')}) ((k++)) ;;
    -*) ;;
    *) if [[ -z $command ]]; then command=$words[k]; else ((at++)); fi ;;
    esac
  done
  case $words[CURRENT-1] in
${byValue.join('\n')}
  esac
  case $command in
    '') _describe command commands; return ;;
    help) _describe command commands; return ;;
${byCommand.join('\n')}
    *) _files; return ;;
  esac
  if [[ $words[CURRENT] == -* ]]; then
    _describe option options
  else
    [[ -n $lists[at] && $lists[at] != - ]] && _ringproof_names $lists[at]
    _files
  fi
}

compdef _ringproof ringproof
`
}
