/** The command line's grammar, from the table of commands; commander's errors in words of our own. */
import { Command, CommanderError } from 'commander'
import { nearest, VERSION } from '../index.ts'
import { COMMANDS, type CommandRow } from './commands.ts'
import { type Given, OPTIONS, type OptionRow, requestWrong } from './options.ts'

/** What the arguments say: a command to run, or a text to print (help, version). */
export type Parsed =
  | { readonly row: CommandRow; readonly words: readonly string[]; readonly options: Given }
  | { readonly print: string }

const ABOUT = `Ringproof judges the ringer and line paths of old telephone sets from sheets that say how they are wired.

It reads sheets and computes; it touches no line. Unplug a set before you open it; local codes and
licensed practice decide what may be done to a line.`

const FIRST_STEPS = `
Examples:
  ringproof demo                      a conversion that fails, and the one that is right
  ringproof list sets                 which sets there are
  ringproof help check                what a command takes

Exit codes: 0 answered and nothing fails, 1 a check fails, 2 the request or a sheet is wrong,
3 could not compute, 130 stopped by hand.`

function examples({ examples }: CommandRow): string {
  return `\nExamples:\n${examples.map((one) => `  ${one}`).join('\n')}`
}

const collect = (one: string, before: readonly string[] = []): readonly string[] => [...before, one]

/** Adds one command of the table; `found` is told what was asked. */
function addCommand(program: Command, row: CommandRow, found: (parsed: Parsed) => void): void {
  const command = program.command(row.name).description(row.summary).addHelpText('after', examples(row))
  for (const [name, says] of row.words) command.argument(name, says)
  for (const name of row.options) {
    const { flags, says, repeatable }: OptionRow = OPTIONS[name]
    if (repeatable) command.option(flags, says, collect)
    else command.option(flags, says)
  }
  command.action(() => {
    const words = command.processedArgs.filter((word): word is string => typeof word === 'string')
    found({ row, words, options: command.opts() })
  })
}

/** Names and flags that may have been meant. */
function flagsOf(argv: readonly string[]): string[] {
  const row = COMMANDS.find(({ name }) => argv.includes(name))
  const names = row?.options ?? (Object.keys(OPTIONS) as (keyof typeof OPTIONS)[])
  return [...names.map((name) => OPTIONS[name].flags.split(' ')[0] ?? ''), '--help', '--version']
}

/** One sentence of ours for each of commander's errors. */
function refusal({ code, message }: CommanderError, argv: readonly string[]): never {
  const [, quoted = ''] = /'([^']*)'/.exec(message) ?? []
  const help = 'see `ringproof --help`'
  const perhaps = (near: string | undefined): string =>
    near === undefined ? help : `perhaps \`${near}\` is meant`
  const names = COMMANDS.map(({ name }) => name)
  switch (code) {
    case 'commander.unknownCommand':
      requestWrong(`the command \`${quoted}\``, `one of ${names.join(', ')}`, perhaps(nearest(quoted, names)))
      break
    case 'commander.unknownOption': {
      const row = names.find((name) => argv.includes(name))
      const flags = flagsOf(argv)
      const misplaced = row !== undefined && flags.includes(quoted)
      const mend = misplaced
        ? `options stand behind the command: \`ringproof ${row} … ${quoted}\``
        : perhaps(nearest(quoted, flags))
      requestWrong(
        `the option \`${quoted}\``,
        `an option of \`ringproof ${row ?? ''}\``.replace(' `', '`'),
        mend,
      )
      break
    }
    case 'commander.missingArgument':
      requestWrong('too few arguments', `the argument <${quoted}>`, help)
      break
    case 'commander.excessArguments':
      requestWrong(
        'too many arguments',
        `those of \`ringproof help ${quoted}\``,
        'quote a value that has blanks in it',
      )
      break
    case 'commander.optionMissingArgument':
      requestWrong(`the option \`${quoted.split(' ')[0]}\` alone`, `\`${quoted}\``, help)
      break
    default:
      requestWrong(`\`${argv.join(' ')}\``, 'a command with its arguments', help)
  }
}

/**
 * Reads arguments (without node and file).
 * @throws ProblemError `request-wrong`
 */
export function parseArguments(argv: readonly string[], width: number): Parsed {
  let parsed: Parsed | undefined
  let printed = ''
  const program = new Command('ringproof').description(ABOUT).addHelpText('after', FIRST_STEPS)
  program.exitOverride().showSuggestionAfterError(false).version(VERSION, '--version', 'print the version')
  program.helpOption('--help', 'show this help').helpCommand('help [command]', 'show the help of a command')
  program.configureOutput({
    writeOut: (text) => {
      printed += text
    },
    writeErr: () => {},
    getOutHelpWidth: () => width,
    getOutHasColors: () => false,
  })
  for (const row of COMMANDS) {
    addCommand(program, row, (one) => {
      parsed = one
    })
  }
  try {
    if (argv.length === 0) program.outputHelp()
    else program.parse([...argv], { from: 'user' })
  } catch (error) {
    if (!(error instanceof CommanderError)) throw error
    if (error.exitCode !== 0) refusal(error, argv)
  }
  return parsed ?? { print: printed }
}
