/** The command line as a function of its arguments, streams and files. */
import { jsonText, type Page, type Problem, problemsEnvelope, problemsText, VERSION } from '../index.ts'
import { ProblemError } from '../problem.ts'
import { colours } from './colours.ts'
import { codeOfProblems, EXIT } from './exit-code.ts'
import type { Io } from './io.ts'
import { widthOf } from './options.ts'
import { type Parsed, parseArguments } from './program.ts'

type Command = Extract<Parsed, { row: unknown }>

/** Whatever was thrown, as problems; what is none of ours to expect is a mistake of this program. */
function problemsOf(error: unknown): readonly Problem[] {
  if (error instanceof ProblemError) return error.problems
  const says = error instanceof Error ? `${error.name}: ${error.message}` : String(error)
  return [
    {
      code: 'ours',
      severity: 'error',
      found: `\`${(says.split('\n')[0] ?? '').slice(0, 200)}\``,
      expected: 'an answer',
      mend: 'this is a mistake of the program: please report it with the command and its sheets',
    },
  ]
}

/** Prints problems where they belong and says how the command ends. */
function refuse(error: unknown, argv: readonly string[], io: Io): number {
  const problems = problemsOf(error)
  if (argv.includes('--json')) io.out(jsonText(problemsEnvelope(problems, { arguments: argv }, VERSION)))
  else {
    const paint = colours(io.colour.err && !argv.includes('--no-colour'))
    io.err(problemsText(problems, { width: widthOf(undefined, io.columns), paint }))
  }
  return codeOfProblems(problems)
}

async function answer({ row, words, options }: Command, io: Io): Promise<number> {
  const width = widthOf(options.width, io.columns)
  const page = (wanted: boolean): Page => ({ width, paint: colours(wanted && options.colour !== false) })
  const rerun = (argv: readonly string[]): Promise<number> => run(argv, io)
  const reply = await row.run({ words, options, io, shelf: io.shelf(options.sheets ?? []), rerun })
  if (typeof reply === 'number') return reply
  io.out(options.json === true ? jsonText(reply.json()) : reply.text(page(io.colour.out)))
  if (options.json !== true && reply.problems.length > 0)
    io.err(problemsText(reply.problems, page(io.colour.err)))
  return reply.code
}

/**
 * Runs one command line. Results go to `io.out`, all the rest to `io.err`; with `--json` problems are results too.
 *
 * @param argv without node and file
 * @returns the exit code: 0 answered and nothing fails, 1 a check fails or a fault is named, 2 request or sheet wrong, 3 could not compute
 */
export async function run(argv: readonly string[], io: Io): Promise<number> {
  try {
    const parsed = parseArguments(argv, io.columns)
    if ('row' in parsed) return await answer(parsed, io)
    io.out(parsed.print)
    return EXIT.answered
  } catch (error) {
    return refuse(error, argv, io)
  }
}
