/** `identify` at the command line: one answer, or question by question. */
import {
  diagnosisRefused,
  type Identifier,
  type IdentifyAnswer,
  type IdentifyNext,
  type IdentifyRequest,
  identifier,
  identifyAnswers,
  identifyQuestion,
  identifyReasons,
  identifySoFar,
  type Page,
  type Problem,
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

/** What is said to the program rather than in answer; an answer that begins so goes first. */
const STOPS = new Set(['end', 'quit', 'exit', 'stop', 'q'])
const BACKS = new Set(['back', 'undo', 'b'])
const SKIPS = new Set(['skip', 'not looked', ''])
const WHYS = new Set(['?', 'help', 'why'])

const GREETING =
  'Answer each question by its number or word, or with what the meter shows. `?` says how and why, `back` takes the ' +
  'last answer back, `skip` or an empty line passes over what you have not looked at or cannot read. `stop` or ctrl-D ' +
  'ends with what is known by then.'

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

/** A question that was answered or passed over: what was found before it, and the answer that it stood in. */
interface Step {
  readonly found: Found
  readonly answer: IdentifyAnswer
}

/** Asks until one leads, nothing informs, the person stops or the input ends. */
async function inTurn(
  { io, options }: Asked,
  by: Identifier,
  first: IdentifyAnswer,
  start: Found,
): Promise<IdentifyAnswer> {
  const { ask } = io
  if (ask === undefined)
    requestWrong('`--ask` where nobody can be asked', 'a terminal, or answers line by line on standard input')
  // with --json the questions must not stand in the answer
  const isJson = options.json === true
  const say = (text: string): void => (isJson ? io.err : io.out)(text)
  const isPainted = (isJson ? io.colour.err : io.colour.out) && options.colour !== false
  const page: Page = { width: widthOf(options.width, io.columns), paint: colours(isPainted) }
  const steps: Step[] = []
  let now: Step = { found: start, answer: first }
  say(prose(GREETING, page.width))
  for (const caution of first.cautions) say(prose(`Caution: ${caution}`, page.width))
  for (let { next } = now.answer; next !== undefined; { next } = now.answer) {
    say(`\n${identifyQuestion(next, page, steps.length + 1)}`)
    const line = (await ask('> '))?.trim()
    if (line === undefined || isSaid(STOPS, line, next)) break
    if (isSaid(WHYS, line, next)) say(identifyReasons(next, page))
    else if (isSaid(BACKS, line, next)) {
      if (steps.length === 0) say('There is no answer to take back.\n')
      now = steps.pop() ?? now
    } else {
      const after = stepAfter(by, now.found, next, line, (problems) => say(diagnosisRefused(problems, page)))
      if (after === undefined) continue
      steps.push(now)
      now = after
      if (!isSaid(SKIPS, line, next)) say(identifySoFar(now.answer, page, { id: next.id, written: line }))
    }
  }
  say('\n')
  // what stands above on the same page is not said twice
  return isJson ? now.answer : { ...now.answer, cautions: [] }
}

/** Whether a line is one of these words, and no answer to the question begins with it. */
function isSaid(words: ReadonlySet<string>, line: string, { answers }: IdentifyNext): boolean {
  const said = line.toLowerCase()
  return words.has(said) && (said === '' || !answers.some((one) => one.toLowerCase().startsWith(said)))
}

/** What is found with a line; undefined, told why, where the line cannot be understood. */
function stepAfter(
  by: Identifier,
  found: Found,
  next: IdentifyNext,
  line: string,
  refused: (problems: readonly Problem[]) => void,
): Step | undefined {
  const written = writtenFor(next, line)
  const after: Found = isSaid(SKIPS, line, next)
    ? { ...found, skipped: [...found.skipped, next.id] }
    : next.ask === 'sighting'
      ? { ...found, seen: [...found.seen, written] }
      : { ...found, readings: [...found.readings, written] }
  try {
    return { found: after, answer: by(after) }
  } catch (error) {
    if (!(error instanceof ProblemError)) throw error
    // whoever was just asked has not written its id
    refused(error.problems.map((one) => ({ ...one, found: one.found.replace(written, () => line) })))
    return undefined
  }
}

/** The finding as it is written without a question: an answer by its number is its word, a bare number is ohms. */
function writtenFor(next: IdentifyNext, line: string): string {
  const { id, ask } = next
  if (ask === 'reading') return `${id} ${line}${/^(\d+\.?\d*|\.\d+)$/.test(line) ? ' Ω' : ''}`
  return `${id}=${(/^\d+$/.test(line) ? identifyAnswers(next)[Number(line) - 1] : undefined) ?? line}`
}
