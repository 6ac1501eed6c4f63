/** The completion script for fish. */
import type { Grammar, GrammarOption } from './grammar.ts'

const quoted = (text: string): string => `'${text.replaceAll('\\', '\\\\').replaceAll("'", "\\'")}'`

function optionLine(command: string, { flag, says, takesValue, from }: GrammarOption): string {
  const seen = `complete -c ringproof -n '__fish_seen_subcommand_from ${command}' -l ${flag.slice(2)}`
  const value = !takesValue
    ? ''
    : from === 'folders'
      ? " -x -a '(__fish_complete_directories)'"
      : from === undefined
        ? ' -r'
        : ` -r -a '(__ringproof_names ${from})'`
  return `${seen}${value} -d ${quoted(says)}`
}

/** Lines of `complete`, one for each command, option and list of words. */
export function fishScript(grammar: Grammar): string {
  const lines = grammar.flatMap(({ name, says, options, words }) => {
    const lists = [...new Set(words.filter((word) => word !== undefined))]
    return [
      `complete -c ringproof -n __fish_use_subcommand -f -a ${name} -d ${quoted(says)}`,
      ...options.map((option) => optionLine(name, option)),
      ...lists.map(
        (word) =>
          `complete -c ringproof -n '__fish_seen_subcommand_from ${name}' -a '(__ringproof_names ${word})'`,
      ),
    ]
  })
  return `# Completion of ringproof for fish. To have it in this shell: ringproof completion fish | source

function __ringproof_names
    ringproof complete $argv 2>/dev/null
end

${lines.join('\n')}
`
}
