/** The completion script for bash. */
import { type Grammar, valuedOptions } from './grammar.ts'

/** Reads the words before the cursor, then offers commands, options, or what the program itself lists. */
export function bashScript(grammar: Grammar): string {
  const valued = valuedOptions(grammar)
  const byValue = valued.map(({ flag, from }) => {
    const offer =
      from === 'folders'
        ? 'COMPREPLY=($(compgen -d -- "$current"))'
        : from === undefined
          ? ':'
          : `_ringproof_offer "$(_ringproof_names ${from})"`
    return `    ${flag}) ${offer}; return ;;`
  })
  const byCommand = grammar.map(({ name, options, words }) => {
    const flags = [...options.map(({ flag }) => flag), '--help'].join(' ')
    return `    ${name}) options='${flags}'; lists=(${words.map((word) => word ?? '-').join(' ')}) ;;`
  })
  return `# Completion of ringproof for bash. To have it in this shell: source <(ringproof completion bash)

_ringproof_names() {
  local k sheets=()
  for ((k = 1; k < COMP_CWORD; k++)); do
    [[ \${COMP_WORDS[k]} == --sheets ]] && sheets+=(--sheets "\${COMP_WORDS[k + 1]}")
  done
  "\${COMP_WORDS[0]}" complete "$1" \${sheets[@]+"\${sheets[@]}"} 2>/dev/null
}

_ringproof_offer() {
  local IFS=$' \\n'
  COMPREPLY=($(compgen -W "$1" -- "$current"))
}

_ringproof() {
  local current=\${COMP_WORDS[COMP_CWORD]} before=\${COMP_WORDS[COMP_CWORD - 1]}
  local command='' options='' lists=() at=0 k
  COMPREPLY=()
  for ((k = 1; k < COMP_CWORD; k++)); do
    case \${COMP_WORDS[k]} in
    ${valued.map(({ flag }) => flag).join(' | ')}) ((k++)) ;;
    -*) ;;
    *) if [[ -z $command ]]; then command=\${COMP_WORDS[k]}; else ((at++)); fi ;;
    esac
  done
  case $before in
${byValue.join('\n')}
  esac
  case $command in
    '') _ringproof_offer '${[...grammar.map(({ name }) => name), 'help', '--help', '--version'].join(' ')}'; return ;;
    help) ((at == 0)) && _ringproof_offer '${grammar.map(({ name }) => name).join(' ')}'; return ;;
${byCommand.join('\n')}
    *) return ;;
  esac
  if [[ $current == -* ]]; then
    _ringproof_offer "$options"
  elif [[ -n \${lists[at]:-} && \${lists[at]} != - && $current != */* ]]; then
    _ringproof_offer "$(_ringproof_names "\${lists[at]}")"
  fi
}

complete -o bashdefault -o default -F _ringproof ringproof
`
}
