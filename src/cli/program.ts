/** The command line's grammar, from the table of commands; commander's errors in words of our own. */
import { Command, CommanderError } from 'commander'
import { cautionText, nearest, VERSION } from '../index.ts'
import type { CommandRow } from './command.ts'
import { COMMANDS } from './commands.ts'
import { type Given, OPTIONS, type OptionRow, requestWrong, widthOf } from './options.ts'
import { prose } from './prose.ts'

/** What the arguments say: a command to run, or a text to print (help, version). */
export type Parsed =
  | { readonly row: CommandRow; readonly words: readonly string[]; readonly options: Given }
  | { readonly print: string }

const HELP = 'see `ringproof --help`'

const ABOUT = `Ringproof judges the ringer and line paths of old telephone sets from sheets that say how they are wired.

It reads sheets and computes; it touches no line.`

const FIRST_STEPS = `
Examples:
  ringproof demo        a conversion that fails, and the right one
  ringproof list sets   which sets there are
  ringproof help check  what a command takes

Exit codes:
  0    answered, nothing fails and no fault is named
  1    a check fails or a fault is named
  2    the request or a sheet is wrong
  3    could not compute
  130  stopped by hand`

/** What every help ends with that may lead a hand to wires. */
const cautions = (width: number): string => `\n${prose(`Caution: ${cautionText()}`, width).trimEnd()}`

function ending({ examples, nearWires }: CommandRow, width: number): string {
  const all = `\nExamples:\n${examples.map((one) => `  ${one}`).join('\n')}`
  return nearWires === true ? `${all}\n${cautions(width)}` : all
}

/** Takes an option's value, one of several where it is repeatable; another option is no value. */
function optionValue({ flags, repeatable }: OptionRow): (one: string, before: unknown) => unknown {
  return (one, before) => {
    if (one.startsWith('--'))
      requestWrong(`the option \`${flags.split(' ')[0]}\` alone`, `\`${flags}\``, HELP)
    return repeatable ? [...(Array.isArray(before) ? before : []), one] : one
  }
}

/** Adds one command of the table; `found` is told what was asked. */
function addCommand(program: Command, row: CommandRow, width: number, found: (parsed: Parsed) => void): void {
  const command = program.command(row.name, { hidden: row.hidden === true })
  command.description(row.summary).addHelpText('after', ending(row, width))
  for (const [name, says] of row.words) command.argument(name, says)
  for (const name of row.options) {
    const option: OptionRow = OPTIONS[name]
    if (option.flags.includes('<')) command.option(option.flags, option.says, optionValue(option))
    else command.option(option.flags, option.says)
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
  const perhaps = (near: string | undefined): string =>
    near === undefined ? HELP : `perhaps \`${near}\` is meant`
  const names = COMMANDS.filter(({ hidden }) => hidden !== true).map(({ name }) => name)
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
        row === undefined ? 'an option of `ringproof`' : `an option of \`ringproof ${row}\``,
        mend,
      )
      break
    }
    case 'commander.missingArgument':
      requestWrong('too few arguments', `the argument <${quoted}>`, HELP)
      break
    case 'commander.excessArguments':
      requestWrong(
        'too many arguments',
        `those of \`ringproof help ${quoted}\``,
        'quote a value that has blanks in it',
      )
      break
    case 'commander.optionMissingArgument':
      requestWrong(`the option \`${quoted.split(' ')[0]}\` alone`, `\`${quoted}\``, HELP)
      break
    default:
      requestWrong(`\`${argv.join(' ')}\``, 'a command with its arguments', HELP)
  }
}

/** Help takes a width like every command; commander knows of none there. */
function helpOf(
  argv: readonly string[],
): { readonly rest: readonly string[]; readonly width?: string } | undefined {
  const at = argv.findIndex((one) => one === '--width' || one.startsWith('--width='))
  const isJoined = at >= 0 && argv[at] !== '--width'
  const width = at < 0 ? undefined : isJoined ? argv[at]?.slice('--width='.length) : argv[at + 1]
  const rest = at < 0 ? argv : [...argv.slice(0, at), ...argv.slice(at + (isJoined ? 1 : 2))]
  const asksHelp = rest.length === 0 || rest[0] === 'help' || rest.includes('--help')
  if (!asksHelp) return undefined
  return width === undefined ? { rest } : { rest, width }
}

/**
 * Reads arguments (without node and file); `columns` are the terminal's, if there is one.
 * @throws ProblemError `request-wrong`
 */
export function parseArguments(given: readonly string[], columns: number | undefined): Parsed {
  const help = helpOf(given)
  const argv = help?.rest ?? given
  const width = widthOf(help?.width, columns)
  let parsed: Parsed | undefined
  let printed = ''
  const program = new Command('ringproof')
    .description(ABOUT)
    .addHelpText('after', `${FIRST_STEPS}\n${cautions(width)}`)
  program.exitOverride().showSuggestionAfterError(false).version(VERSION, '--version', 'print the version')
  program.helpOption('--help', 'show this help').helpCommand('help [command]', 'show the help of a command')
  program.configureHelp({ minWidthToWrap: 20 })
  program.configureOutput({
    writeOut: (text) => {
      printed += text
    },
    writeErr: () => {},
    getOutHelpWidth: () => width,
    getOutHasColors: () => false,
  })
  for (const row of COMMANDS) {
    addCommand(program, row, width, (one) => {
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
