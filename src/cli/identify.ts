/** `identify` at the command line: one answer, or question by question. */
import {
  type Identifier,
  type IdentifyAnswer,
  type IdentifyRequest,
  identifier,
  identifyQuestion,
  identifyVerdict,
  problemsText,
} from '../index.ts'
import { ProblemError } from '../problem.ts'
import { colours } from './colours.ts'
import type { Asked } from './command.ts'
import { instrumentOf } from './instrument-of.ts'
import { requestWrong, widthOf } from './options.ts'
import { watched } from './progress.ts'
import { prose } from './prose.ts'
import { type Reply, replyOf } from './reply.ts'
import { given } from './target.ts'

/** Ends the questions. */
const STOPS = new Set(['stop', 'quit', 'end'])
/** Nobody looked, nobody can read it. */
const SKIPS = new Set(['', '?', 'skip', 'not looked'])

/** What was found so far. */
interface Found {
  readonly readings: readonly string[]
  readonly seen: readonly string[]
  readonly skipped: readonly string[]
}

/** Identifies the set on the bench. */
export async function identifyReply(asked: Asked): Promise<Reply> {
  const { io, options, shelf } = asked
  const request: IdentifyRequest = {
    ...given('rewires', options.rewires),
    ...instrumentOf(options.instrument, io),
  }
  const found: Found = { readings: options.reading ?? [], seen: options.seen ?? [], skipped: [] }
  const [by, answer] = watched(io, (tell) => {
    const made = identifier(request, shelf, tell)
    return [made, made(found)] as const
  })
  return replyOf(options.ask === true ? await inTurn(asked, by, answer, found) : answer)
}

/** Asks until one leads, nothing informs, or the person stops. */
async function inTurn(
  { io, options }: Asked,
  by: Identifier,
  first: IdentifyAnswer,
  start: Found,
): Promise<IdentifyAnswer> {
  const { ask } = io
  if (ask === undefined)
    requestWrong('`--ask` where nobody can be asked', 'a terminal, or answers line by line on standard input')
  const width = widthOf(options.width, io.columns)
  // with --json the questions must not stand in the answer
  const say = (text: string): void => (options.json === true ? io.err : io.out)(text)
  let [answer, found] = [first, start]
  say(prose('Answer each question, or leave it empty if you have not looked; `stop` ends it.', width))
  for (const caution of answer.cautions) say(`${prose(`Caution: ${caution}`, width)}\n`)
  while (answer.next !== undefined) {
    say(
      `\n${identifyQuestion(answer.next, { width, paint: colours(io.colour.out && options.colour !== false) })}`,
    )
    const line = await ask('> ')
    if (line === undefined || STOPS.has(line.trim().toLowerCase())) break
    const more = withAnswer(found, answer.next, line.trim())
    try {
      answer = by(more)
      found = more
    } catch (error) {
      if (!(error instanceof ProblemError)) throw error
      io.err(
        problemsText(error.problems, { width, paint: colours(io.colour.err && options.colour !== false) }),
      )
      continue
    }
    say(`${prose(identifyVerdict(answer), width)}\n`)
  }
  say('\n')
  return answer
}

function withAnswer(found: Found, { id, ask }: NonNullable<IdentifyAnswer['next']>, line: string): Found {
  if (SKIPS.has(line.toLowerCase())) return { ...found, skipped: [...found.skipped, id] }
  return ask === 'sighting'
    ? { ...found, seen: [...found.seen, `${id}=${line}`] }
    : { ...found, readings: [...found.readings, `${id} ${line}`] }
}
