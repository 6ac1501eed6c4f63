/** `diagnose` at the command line: one answer, or question by question. */
import {
  type DiagnoseAnswer,
  type DiagnoseRequest,
  type Diagnosis,
  type DiagnosisState,
  diagnosisQuestion,
  diagnosisReasons,
  type NextQuestion,
  openDiagnosis,
  type Page,
  problemsText,
} from '../index.ts'
import { ProblemError } from '../problem.ts'
import { withBookMeans } from './book-means.ts'
import { colours } from './colours.ts'
import type { Asked } from './command.ts'
import { instrumentOf } from './instrument-of.ts'
import { requestWrong, widthOf } from './options.ts'
import { prose } from './prose.ts'
import { type Reply, replyOf } from './reply.ts'
import { fileOf, given } from './target.ts'

const STOPS = new Set(['stop', 'quit', 'end'])
const BACKS = new Set(['back', 'undo'])
const SKIPS = new Set(['skip', ''])

/** Diagnoses a set. */
export async function diagnoseReply(asked: Asked): Promise<Reply> {
  const request = requestOf(asked)
  const diagnosis = await withBookMeans(asked, (means) => openDiagnosis(request, asked.shelf, means))
  const first = diagnosis.result(diagnosis.begin)
  const { options, io } = asked
  const isAsked = options.ask ?? (io.person === true && options.json !== true && first.decided === 'asking')
  return replyOf(isAsked ? await inTurn(asked, diagnosis, first) : first)
}

function requestOf({ words, options, io }: Asked): DiagnoseRequest {
  const [target = ''] = words
  const { at, in: socket, on, observed, outside, live, pairs, reading, symptom } = options
  return {
    target,
    ...given('text', fileOf(target, io)),
    ...given('on', on),
    ...given('onText', fileOf(on, io)),
    ...given('at', at),
    ...given('in', socket),
    ...given('symptoms', symptom),
    ...given('observed', observed),
    ...given('readings', reading),
    ...given('pairs', pairs),
    ...(outside === true ? { inside: false } : {}),
    ...(live === false ? { live } : {}),
    ...instrumentOf(options.instrument, io),
  }
}

const GREETING =
  'Answer each question by its number or word, or with what the meter shows. `?` says how and why, `back` takes the ' +
  'last answer back, `skip` passes over what cannot or will not be done, `stop` ends.'

/** Asks until a group is sure, nothing tells more, the person stops or the input ends. */
async function inTurn(
  { io, options }: Asked,
  diagnosis: Diagnosis,
  first: DiagnoseAnswer,
): Promise<DiagnoseAnswer> {
  const { ask } = io
  if (ask === undefined)
    requestWrong('`--ask` where nobody can be asked', 'a terminal, or answers line by line on standard input')
  const width = widthOf(options.width, io.columns)
  const page = (wanted: boolean): Page => ({ width, paint: colours(wanted && options.colour !== false) })
  // with --json the questions must not stand in the answer
  const say = (text: string): void => (options.json === true ? io.err : io.out)(text)
  const { place } = first
  let state = diagnosis.begin
  say(prose(GREETING, width))
  const told = new Set(first.cautions)
  for (const caution of told) say(prose(`Caution: ${caution}`, width))
  for (let question = diagnosis.next(state); question !== undefined; question = diagnosis.next(state)) {
    say(`\n${diagnosisQuestion(withoutTold(question, told), place, page(io.colour.out))}`)
    const line = (await ask('> '))?.trim()
    if (line === undefined || STOPS.has(line.toLowerCase())) break
    if (line === '?') say(diagnosisReasons(question, place, page(io.colour.out)))
    else state = stateAfter(diagnosis, state, question.test, line, (text) => say(text), page(io.colour.err))
  }
  say('\n')
  return diagnosis.result(state)
}

/** What was said at the beginning is not said again, but on a live line all is. */
function withoutTold(question: NextQuestion, told: ReadonlySet<string>): NextQuestion {
  return question.live
    ? question
    : { ...question, cautions: question.cautions.filter((one) => !told.has(one)) }
}

/** The state after a line; the same one, told why, where the line cannot be understood. */
function stateAfter(
  diagnosis: Diagnosis,
  state: DiagnosisState,
  test: string,
  line: string,
  say: (text: string) => void,
  page: Page,
): DiagnosisState {
  const word = line.toLowerCase()
  if (SKIPS.has(word)) return diagnosis.skip(state, test)
  if (BACKS.has(word)) {
    const before = diagnosis.undo(state)
    if (before === state) say('There is no answer to take back.\n')
    return before
  }
  try {
    return diagnosis.answer(state, test, line)
  } catch (error) {
    if (!(error instanceof ProblemError)) throw error
    say(problemsText(error.problems, page))
    return state
  }
}
